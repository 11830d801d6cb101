#include "finding_rules.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::rules {
namespace {

bool is_level(const Section& s) {
    return s.length_m > 0.0 && s.rise_m < 0.5 * s.length_m;
}

bool is_upright(const Section& s) {
    return s.length_m > 0.0 && !is_level(s);
}

void level_run(const Subject& s) {
    const auto& sections = s.installation.sections;
    double level_m = 0.0;
    double height_above_m = 0.0;
    const Section* first = nullptr;
    const Section* flattest = nullptr;
    bool insulated = true;
    for (const Section& section : sections) {
        if (is_level(section)) {
            level_m += section.length_m;
            height_above_m = 0.0;
            first = first == nullptr ? &section : first;
            insulated = insulated && s.installation.walls[section.wall].kind != WallKind::single;
            const double slope = section.rise_m / section.length_m;
            if (flattest == nullptr || slope < flattest->rise_m / flattest->length_m) {
                flattest = &section;
            }
        } else {
            height_above_m += section.rise_m;
        }
    }
    if (first == nullptr) {
        return;
    }
    const double share =
        catalog::default_of(insulated ? "level_run_share_insulated" : "level_run_share_single")
            .value;
    if (level_m > share * height_above_m) {
        Finding& f = s.add("level-run-too-long");
        f.place = s.place_of(*first);
        f.part = first->part;
        f.kind = Kind::length;
        f.figure = level_m;
        f.limit = share * height_above_m;
        f.weight = height_above_m > 0.0 ? level_m / (share * height_above_m) - 1.0 : 1.0;
        f.message = "The run goes level for " + s.show(level_m, Kind::length) + " under "
                    + s.show(std::max(0.0, height_above_m), Kind::length) + " of height; "
                    + s.show(std::max(0.0, share * height_above_m), Kind::length) + " is the most.";
    }
    const double least = catalog::default_of("level_run_slope").value;
    const double slope = flattest->rise_m / flattest->length_m;
    if (slope < least - 1e-3) {
        Finding& f = s.add("level-run-too-flat");
        f.place = s.place_of(*flattest);
        f.part = flattest->part;
        f.kind = Kind::slope;
        f.figure = slope;
        f.limit = least;
        f.weight = 1.0 - slope / least;
        f.message = f.place + " rises " + s.show(slope, Kind::slope) + " towards the chimney; "
                    + s.show(least, Kind::slope) + " is the least. Lift its far end by another "
                    + s.show((least - slope) * flattest->length_m, Kind::length) + ".";
    }
}

void turns(const Subject& s, std::size_t chimney) {
    const auto& sections = s.installation.sections;
    double sum_rad = 0.0;
    const Section* last = nullptr;
    int count = 0;
    for (std::size_t i = 0; i < chimney; ++i) {
        if (sections[i].turn_rad > 0.0) {
            sum_rad += sections[i].turn_rad;
            last = &sections[i];
            ++count;
        }
    }
    const double most = catalog::default_of("turns_most_rad").value;
    constexpr double tolerance_rad = 0.02;
    if (last == nullptr || sum_rad <= most + tolerance_rad) {
        return;
    }
    Finding& f = s.add("too-many-turns");
    f.place = s.place_of(*last);
    f.part = last->part;
    f.kind = Kind::angle;
    f.figure = sum_rad;
    f.limit = most;
    f.weight = sum_rad / most - 1.0;
    f.message = "The gas turns " + std::to_string(count) + " times before the chimney, by "
                + s.show(sum_rad, Kind::angle) + " together.";
}

/// A turn that leads from a level stretch into an upright one.
void cleanout(const Subject& s) {
    const auto& sections = s.installation.sections;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        if (sections[i].turn_rad < 1.0 || sections[i].cleanout) {
            continue;
        }
        const Section* before = nullptr;
        const Section* after = nullptr;
        for (std::size_t j = 0; j < i; ++j) {
            before = sections[j].length_m > 0.0 ? &sections[j] : before;
        }
        for (std::size_t j = sections.size(); j-- > i + 1;) {
            after = sections[j].length_m > 0.0 ? &sections[j] : after;
        }
        if (before == nullptr || after == nullptr || !is_level(*before) || !is_upright(*after)
            || after->rise_m < 0.0) {
            continue;
        }
        Finding& f = s.add("no-cleanout-at-turn-up");
        f.place = s.place_of(sections[i]);
        f.part = sections[i].part;
        f.message = "The flue turns up at " + f.place + " and has no cleanout there.";
        if (sections[i].kind == PartKind::tee) {
            f.remedy = "Have the tee with a cap that can be taken off, and set `cleanout` to true.";
        }
    }
}

void height(const Subject& s) {
    const double over_floor_m =
        s.installation.total_rise_m() + s.installation.appliance.outlet_height_m;
    const double usual_m = catalog::default_of("usual_chimney_height_m").value;
    if (over_floor_m >= usual_m - 0.01) {
        return;
    }
    Finding& f = s.add("chimney-below-usual-height");
    f.place = "the mouth";
    f.kind = Kind::length;
    f.figure = over_floor_m;
    f.limit = usual_m;
    f.weight = 1.0 - over_floor_m / usual_m;
    f.message = "The mouth is " + s.show(over_floor_m, Kind::length) + " over the floor; "
                + s.show(usual_m, Kind::length) + " is the usual least.";
}

void bare_pipe_outdoors(const Subject& s) {
    double length_m = 0.0;
    const Section* first = nullptr;
    for (const Section& section : s.installation.sections) {
        if (section.zone == Zone::outdoors && section.length_m > 0.0
            && s.installation.walls[section.wall].kind == WallKind::single) {
            length_m += section.length_m;
            first = first == nullptr ? &section : first;
        }
    }
    if (first == nullptr || s.installation.appliance.fuel_group == FuelGroup::gas) {
        return;
    }
    Finding& f = s.add("single-wall-outdoors");
    f.place = s.place_of(*first);
    f.part = first->part;
    f.kind = Kind::length;
    f.figure = length_m;
    f.limit = 0.0;
    f.weight = length_m / 5.0;
    f.message = s.show(length_m, Kind::length) + " of single-wall pipe stand outdoors.";
}

} // namespace

std::size_t chimney_start(const Case& installation) {
    const auto& sections = installation.sections;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const bool chimney_wall = is_chimney_wall(installation.walls[sections[i].wall].kind);
        if (is_upright(sections[i]) && (chimney_wall || sections[i].zone != Zone::room)) {
            return i;
        }
    }
    return sections.size();
}

void shape(const Subject& s) {
    const std::size_t chimney = chimney_start(s.installation);
    level_run(s);
    turns(s, chimney);
    cleanout(s);
    height(s);
    bare_pipe_outdoors(s);
}

} // namespace fluewright::rules
