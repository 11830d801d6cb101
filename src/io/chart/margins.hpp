#pragma once

#include "fluewright/advice/score.hpp"
#include "panel.hpp"

#include <string>
#include <vector>

/// Margins of several runs side by side: sizes, or layouts.
namespace fluewright::chart {

/// One run of several.
struct MarginColumn {
    std::string name;
    const Case* installation{};
    const Score* score{}; ///< null where it was not computed
    bool works{};
    bool chosen{};    ///< the one suggested
    bool ruled_out{}; ///< something stands against it by itself
};

/// Panels of the draft over the need in every condition that counts, and of how far a door may be
/// opened where any of the heaters has one. `title` is told beside the axis.
[[nodiscard]] std::vector<Panel> margin_panels(const std::vector<MarginColumn>& columns,
                                               std::string_view x_title,
                                               std::string_view chosen_word,
                                               UnitSystem units);

} // namespace fluewright::chart
