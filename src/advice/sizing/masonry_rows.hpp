#pragma once

#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/advice/trial/change.hpp"

#include <vector>

/// The sizes of a run that is all masonry: clay liners while it is still to be built, round liners
/// in the flue that stands.
namespace fluewright::sizing {

/// Whether the run has a masonry flue that could be of another size.
[[nodiscard]] bool has_masonry_flue(const Case& resolved);

/// Its area over the outlet's; has_masonry_flue() holds.
[[nodiscard]] double masonry_over_outlet(const Case& resolved);

/// Names the masonry flue, where there is one, as the chimney of a row that tries pipe before it:
/// by its size as the file has it, and its hydraulic diameter.
void lead_into_masonry(const Case& resolved, SizeRow& row);

/// "masonry flue of 260 mm by 260 mm"
[[nodiscard]] std::string masonry_words(const Case& resolved);

/// The flue as it stands, then every clay liner, then the round liners of a market that fit into
/// it, each by area, with the chimney top at that height over the outlet; not solved yet.
[[nodiscard]] std::vector<SizeRow>
masonry_rows(const Case& resolved, TradeSizes sizes, double height_m);

/// What makes the run that of a row, from one whose chimney top is at `present_height_m`.
[[nodiscard]] std::vector<Change> masonry_changes(const SizeRow& row, double present_height_m);

} // namespace fluewright::sizing
