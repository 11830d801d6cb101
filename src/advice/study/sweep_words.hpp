#pragma once

#include "fluewright/advice/study/sweep.hpp"

namespace fluewright {

/// Where there is no figure and why; a value that a whole row shares is named alone.
[[nodiscard]] std::vector<SweepBlank> blanks_of(const Sweep& made);

/// The answer of a sweep in one or two sentences.
[[nodiscard]] std::string sweep_sentence(const Sweep& made);

} // namespace fluewright
