#pragma once

#include "fluewright/advice/study/compare.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace fluewright {

/// A value the files do not share.
struct FileDifference {
    std::string pointer;             ///< "/appliance/fuel/moisture", or "/run/3" for a whole part
    std::vector<std::string> values; ///< of each layout, as written; empty where it has none
};

/// What differs between the files, in the order of the format; titles and what was seen do not
/// count.
[[nodiscard]] std::vector<FileDifference> file_differences(const Comparison& comparison);

/// Which and why, then one column a layout with the lines that differ marked.
[[nodiscard]] std::string comparison_text(const Comparison& comparison, const Style& style);

/// The answer in its envelope, the files of `input` in the order of the layouts; docs/output.md,
/// compare_answer.
[[nodiscard]] std::string comparison_json(const Comparison& comparison, const AnswerInput& input);

/// One line for each layout and state, with a heading line (RFC 4180); SI.
[[nodiscard]] std::string comparison_csv(const Comparison& comparison);

/// A chart that stands alone: the draft over the need in every condition, and how far the door may
/// be opened, layout by layout.
[[nodiscard]] std::string comparison_svg(const Comparison& comparison);

} // namespace fluewright
