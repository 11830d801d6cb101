#pragma once

#include "fluewright/advice/diagnosis/diagnosis.hpp"

#include <vector>

/// Where no cause explains what was seen, a figure of the file may be the fault.
namespace fluewright::diagnosis {

/// Figures with which, each written as people slip, the run without a hidden cause would show all
/// that was seen; the best fits first, at most three. A slip is a decimal point, a unit taken for
/// another, a sign, or moisture on the dry basis.
[[nodiscard]] std::vector<WrongFigure> wrong_figures(const Installation& written);

} // namespace fluewright::diagnosis
