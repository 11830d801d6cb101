#pragma once

#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"
#include "fluewright/model/warmup/warmup.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The warm-up for people and for programs.
namespace fluewright {

/// The warm-up in one weather of the case.
struct WarmupInWeather {
    std::size_t weather{};
    Warmup course;
};

struct WarmupReportOptions {
    Style style;
    std::vector<PresentDanger> dangers; ///< of the run, told before anything is lit
    std::string not_decided;            ///< fire_not_decided() of the run
    AnswerInput input;
};

/// Whether the draft needed at high fire is met in every weather.
[[nodiscard]] bool draws_in_time(std::span<const WarmupInWeather> courses);

/// What must be put right before a fire; for each weather: what a person wants to know, the parts
/// of the run, the course of the fire; then assumptions, notes and cautions.
[[nodiscard]] std::string warmup_text(const Case& resolved,
                                      std::span<const WarmupInWeather> courses,
                                      const WarmupReportOptions& options);

/// The answer in its envelope, what did not happen within the time null; docs/output.md,
/// warmup_answer.
[[nodiscard]] std::string warmup_json(const Case& resolved,
                                      std::span<const WarmupInWeather> courses,
                                      const WarmupReportOptions& options);

/// RFC 4180: one line for each moment kept, with the same keys as JSON.
[[nodiscard]] std::string warmup_csv(const Case& resolved,
                                     std::span<const WarmupInWeather> courses);

/// A chart that stands alone: draft and temperatures over time in each weather, with the phases of
/// the fire; the dangers of the run first.
[[nodiscard]] std::string warmup_svg(const Case& resolved,
                                     std::span<const WarmupInWeather> courses,
                                     const WarmupReportOptions& options);

} // namespace fluewright
