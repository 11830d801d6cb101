#pragma once

#include "fluewright/advice/study/sweep.hpp"

namespace fluewright {

/// The answer of a sweep in one or two sentences.
[[nodiscard]] std::string sweep_sentence(const Sweep& made);

} // namespace fluewright
