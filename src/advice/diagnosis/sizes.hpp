#pragma once

#include "engine.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"

/// The sizes of a row's causes, from the weights of its hypotheses.
namespace fluewright::diagnosis {

/// Median and 90 % range of each cause of the row, with its likeliest place.
[[nodiscard]] std::vector<SizedCause>
sized_causes(const Engine& engine, std::size_t row, UnitSystem units);

} // namespace fluewright::diagnosis
