#include "finding_rules.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>

namespace fluewright::rules {
namespace {

/// Sizes within this share of each other count as equal: trade sizes are nominal.
constexpr double same_size = 0.02;

void smaller_than_outlet(const Subject& s) {
    const double outlet_m2 = s.installation.appliance.outlet_area_m2;
    const Section* least = nullptr;
    for (const Section& section : s.installation.sections) {
        const bool is_pipe = section.kind != PartKind::collar;
        if (is_pipe && (least == nullptr || section.area_m2 < least->area_m2)) {
            least = &section;
        }
    }
    if (least == nullptr || least->area_m2 >= (1.0 - same_size) * outlet_m2) {
        return;
    }
    const double ratio = least->area_m2 / outlet_m2;
    Finding& f = s.add("flue-smaller-than-outlet");
    f.place = s.place_of(*least);
    f.part = least->part;
    f.kind = Kind::fraction;
    f.figure = ratio;
    f.limit = 1.0;
    f.weight = 1.0 - ratio;
    f.message = "From " + f.place + " on the flue has " + s.show(ratio, Kind::fraction)
                + " of the outlet's area ("
                + s.show(s.installation.appliance.outlet_diameter_m, Kind::length) + " outlet, "
                + s.show(least->diameter_m, Kind::length) + " flue).";
}

void reduced(const Subject& s) {
    const Section* widest = nullptr;
    const Section* worst = nullptr;
    double worst_ratio = 1.0 - same_size;
    for (const Section& section : s.installation.sections) {
        if (section.kind == PartKind::collar) {
            continue;
        }
        if (widest != nullptr) {
            const double ratio = section.area_m2 / widest->area_m2;
            if (ratio < worst_ratio) {
                worst_ratio = ratio;
                worst = &section;
            }
        }
        if (widest == nullptr || section.area_m2 > widest->area_m2) {
            widest = &section;
        }
    }
    if (worst == nullptr) {
        return;
    }
    Finding& f = s.add("reduced-on-the-way");
    f.place = s.place_of(*worst);
    f.part = worst->part;
    f.kind = Kind::fraction;
    f.figure = worst_ratio;
    f.limit = 1.0;
    f.weight = 1.0 - worst_ratio;
    f.message = "At " + f.place + " the flue narrows to " + s.show(worst_ratio, Kind::fraction)
                + " of the area it had before.";
}

void far_larger(const Subject& s) {
    const double outlet_m2 = s.installation.appliance.outlet_area_m2;
    const bool outdoors = std::any_of(
        s.installation.sections.begin(), s.installation.sections.end(), [](const Section& section) {
            return section.zone == Zone::outdoors && section.length_m > 1.0;
        });
    const double most =
        catalog::default_of(outdoors ? "flue_area_most_outside" : "flue_area_most_inside").value;
    const auto largest =
        std::max_element(s.installation.sections.begin(),
                         s.installation.sections.end(),
                         [](const Section& a, const Section& b) { return a.area_m2 < b.area_m2; });
    const double ratio = largest->area_m2 / outlet_m2;
    // An open fireplace has its own rule, the flue against the opening.
    if (ratio <= most * (1.0 + same_size)
        || s.installation.appliance.type == ApplianceType::fireplace) {
        return;
    }
    Finding& f = s.add("flue-far-larger-than-outlet");
    f.place = s.place_of(*largest);
    f.part = largest->part;
    f.kind = Kind::number;
    f.figure = ratio;
    f.limit = most;
    f.weight = ratio / most - 1.0;
    f.message = "The flue has " + format_number(ratio, 2) + " times the outlet's area; "
                + format_number(most, 2) + " times is the most "
                + (outdoors ? "with the chimney outdoors." : "for a chimney indoors.");
}

} // namespace

void sizes(const Subject& s) {
    smaller_than_outlet(s);
    reduced(s);
    far_larger(s);
}

} // namespace fluewright::rules
