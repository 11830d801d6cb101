#pragma once

#include "fluewright/advice/assessment.hpp"
#include "record.hpp"

#include <array>
#include <string_view>
#include <vector>

/// The answer by kind of harm, the same in every answer.
namespace fluewright::results {

inline constexpr std::array<std::string_view, harm_count> harm_words{
    "fire", "draft", "reloading", "upkeep"};
inline constexpr std::array<std::string_view, 4> harm_outcome_words{
    "passes", "falls short", "cannot tell", "does not apply"};

/// One line of a verdict.
struct HarmRow {
    const Assessment& of;
    const HarmVerdict& verdict;
};

template <>
const Record<HarmRow>& record_of<HarmRow>();

/// All four, in order of harm.
[[nodiscard]] std::vector<HarmRow> harm_rows(const Assessment& assessment);

/// Names of what is required; reloading as well where it counts without being asked for.
[[nodiscard]] std::vector<std::string_view> what_counts(const Assessment& assessment);

} // namespace fluewright::results
