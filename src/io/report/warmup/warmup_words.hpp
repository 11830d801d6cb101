#pragma once

#include "fluewright/io/report/report_warmup.hpp"

#include <string>
#include <vector>

/// Sentences of the warm-up: why a fire starves, and what shortens a slow one.
namespace fluewright::report {

inline constexpr double minute_s = 60.0;

/// To a tenth, without the unit.
[[nodiscard]] std::string minutes(double seconds);

/// How long the fire starves and why, by the figures of the worst moment; it must have one.
[[nodiscard]] std::string
starved_words(const Case& resolved, const Warmup& course, const Style& style);

/// What shortens a slow warm-up, a sentence each; none where it is not slow.
[[nodiscard]] std::vector<std::string>
quicker_words(const Case& resolved, const WarmupInWeather& in, const Style& style);

} // namespace fluewright::report
