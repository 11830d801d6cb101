#pragma once

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/case.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <limits>
#include <string_view>

/// How wide a flue may be over the outlet of its heater.
namespace fluewright {

struct GreatestFlueArea {
    double over_outlet{};    ///< flue area over outlet area
    std::string_view reason; ///< "for a flue indoors"
};

/// The greatest that the trade allows; without end for an open front, which has its own rule, the
/// flue against the opening. Behind a draft hood it counts from the outlet of the hood.
[[nodiscard]] inline GreatestFlueArea greatest_flue_area(const Case& c) {
    if (has_open_front(c.appliance)) {
        return {std::numeric_limits<double>::infinity(), "for an open front"};
    }
    const auto most = [](DefaultId id) { return catalog::default_of(id).value; };
    if (c.appliance.type == ApplianceType::draft_hood) {
        return {most(DefaultId::flue_area_most_hood), "behind a draft hood"};
    }
    return c.walls_outdoors
               ? GreatestFlueArea{most(DefaultId::flue_area_most_outside), "with the flue outdoors"}
               : GreatestFlueArea{most(DefaultId::flue_area_most_inside), "for a flue indoors"};
}

} // namespace fluewright
