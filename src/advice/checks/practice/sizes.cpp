#include "advice/checks/same_trade_size.hpp"
#include "advice/checks/subject.hpp"
#include "advice/greatest_flue_area.hpp"
#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <limits>

namespace fluewright::checking {
namespace {

void smaller_than_outlet(Subject& s) {
    const double outlet_m2 = s.resolved.appliance.outlet_area_m2;
    const Section* least = nullptr;
    for (const Section& section : s.resolved.sections) {
        const bool is_pipe = section.kind != PartKind::collar;
        if (is_pipe && (least == nullptr || section.built_area_m2 < least->built_area_m2)) {
            least = &section;
        }
    }
    if (least == nullptr) {
        return;
    }
    const double ratio = least->built_area_m2 / outlet_m2;
    CheckResult* f =
        s.hold(own("flue-smaller-than-outlet"),
               !is_narrower(least->built_area_m2, outlet_m2),
               {.kind = Kind::fraction, .figure = ratio, .limit = 1.0, .weight = 1.0 - ratio},
               {.section = least});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "From " + f->place + " on the flue has " + s.show(ratio, Kind::fraction)
                 + " of the outlet's area ("
                 + s.show(s.resolved.appliance.outlet_diameter_m, Kind::length) + " outlet, "
                 + s.show(circle_diameter_m(least->built_area_m2), Kind::length) + " flue).";
}

void reduced(Subject& s) {
    const Section* widest = nullptr;
    const Section* worst = nullptr;
    double worst_ratio = std::numeric_limits<double>::infinity();
    for (const Section& section : s.resolved.sections) {
        if (section.kind == PartKind::collar) {
            continue;
        }
        if (widest != nullptr) {
            const double ratio = section.built_area_m2 / widest->built_area_m2;
            if (ratio < worst_ratio) {
                worst_ratio = ratio;
                worst = &section;
            }
        }
        if (widest == nullptr || section.built_area_m2 > widest->built_area_m2) {
            widest = &section;
        }
    }
    if (worst == nullptr) {
        return;
    }
    CheckResult* f = s.hold(
        own("reduced-on-the-way"),
        !is_narrower(worst->built_area_m2, worst->built_area_m2 / worst_ratio),
        {.kind = Kind::fraction, .figure = worst_ratio, .limit = 1.0, .weight = 1.0 - worst_ratio},
        {.section = worst});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "At " + f->place + " the flue narrows to " + s.show(worst_ratio, Kind::fraction)
                 + " of the area it had before.";
}

void far_larger(Subject& s) {
    const double outlet_m2 = s.resolved.appliance.outlet_area_m2;
    const auto largest = std::max_element(
        s.resolved.sections.begin(),
        s.resolved.sections.end(),
        [](const Section& a, const Section& b) { return a.built_area_m2 < b.built_area_m2; });
    const double ratio = largest->built_area_m2 / outlet_m2;
    // An insert is set on a liner of its outlet's size, common practice: the flue of a hearth is
    // made for the air of its opening.
    const bool insert = s.view.written.appliance.insert.value_or(false)
                        && s.resolved.walls[largest->wall].kind == WallKind::masonry;
    const GreatestFlueArea allowed = greatest_flue_area(s.resolved);
    const double most = insert ? 1.0 : allowed.over_outlet;
    // An open fireplace has its own rule, the flue against the opening.
    if (s.resolved.appliance.type == ApplianceType::fireplace) {
        return;
    }
    CheckResult* f =
        s.hold(own("flue-far-larger-than-outlet"),
               !is_smaller_size(most, ratio),
               {.kind = Kind::number, .figure = ratio, .limit = most, .weight = ratio / most - 1.0},
               {.section = &*largest});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "The flue has " + format_number(ratio, 2) + " times the outlet's area; "
                 + format_number(most, 2) + " times is the most "
                 + (insert ? "for an insert, which wants a liner up to the top"
                           : std::string{allowed.reason})
                 + '.';
}

/// What held a hearth's cooled smoke for years does not hold that of a closed heater.
void unlined_behind_insert(Subject& s) {
    if (!s.view.written.appliance.insert.value_or(false)) {
        return;
    }
    const auto unlined = std::find_if(
        s.view.pieces.begin(), s.view.pieces.end(), [](const Piece& p) { return p.is_unlined(); });
    const bool all_lined = unlined == s.view.pieces.end();
    CheckResult* f =
        s.hold(own("insert-without-liner"),
               all_lined,
               {.kind = Kind::number, .figure = all_lined ? 0.0 : 1.0, .weight = 1.0},
               {.section = all_lined ? &s.resolved.sections.back() : unlined->section});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "The insert's gas goes through masonry without a liner at " + f->place + ".";
}

} // namespace

void sizes(Subject& s) {
    if (s.resolved.sections.empty()) {
        return;
    }
    unlined_behind_insert(s);
    smaller_than_outlet(s);
    reduced(s);
    far_larger(s);
}

} // namespace fluewright::checking
