#include "advice/checks/label.hpp"
#include "advice/checks/subject.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::checking {
namespace {

void level_run(Subject& s) {
    const auto& sections = s.resolved.sections;
    double level_m = 0.0;
    double height_above_m = 0.0;
    const Section* first = nullptr;
    const Section* flattest = nullptr;
    bool insulated = true;
    for (const Section& section : sections) {
        if (section.lie == Lie::level && section.length_m > 0.0) {
            level_m +=
                std::sqrt(section.length_m * section.length_m - section.rise_m * section.rise_m);
            height_above_m = 0.0;
            first = first == nullptr ? &section : first;
            insulated = insulated && s.resolved.walls[section.wall].kind != WallKind::single;
            const double slope = section.rise_m / section.length_m;
            constexpr double led_down = -0.1; // no level pipe that sags, but a way down on purpose
            if (slope < led_down) {
                continue;
            }
            if (flattest == nullptr || slope < flattest->rise_m / flattest->length_m) {
                flattest = &section;
            }
        } else {
            height_above_m += section.rise_m;
        }
    }
    if (first == nullptr || s.resolved.appliance.pushed_by_fan) {
        return; // what a fan pushes needs no height over it
    }
    const double share = catalog::default_of(insulated ? DefaultId::level_run_share_insulated
                                                       : DefaultId::level_run_share_single)
                             .value;
    CheckResult* f =
        s.hold(own("level-run-too-long"),
               s.view.reaches(share * height_above_m, level_m, Kind::length),
               {.kind = Kind::length,
                .figure = level_m,
                .limit = share * height_above_m,
                .weight = height_above_m > 0.0 ? level_m / (share * height_above_m) - 1.0 : 1.0},
               {.section = first});
    if (f != nullptr && s.with_words()) {
        f->message = "The horizontal run is " + s.show(level_m, Kind::length) + " under "
                     + s.show(std::max(0.0, height_above_m), Kind::length) + " of height; "
                     + s.show(std::max(0.0, share * height_above_m), Kind::length)
                     + " is the most.";
    }
    if (flattest == nullptr) {
        return;
    }
    const double least = catalog::default_of(DefaultId::level_run_slope).value;
    const double slope = flattest->rise_m / flattest->length_m;
    f = s.hold(
        own("level-run-too-flat"),
        slope >= least - 1e-3,
        {.kind = Kind::slope, .figure = slope, .limit = least, .weight = 1.0 - slope / least},
        {.section = flattest});
    if (f != nullptr && s.with_words()) {
        f->message =
            f->place + (slope < 0.0 ? " falls " : " rises ") + s.show(std::abs(slope), Kind::slope)
            + " towards the " + std::string{way_out(kind_of(s.resolved.appliance))} + "; "
            + s.show(least, Kind::slope) + " is the least. Raise its chimney end by another "
            + s.show((least - slope) * flattest->length_m, Kind::length) + ".";
    }
}

/// Pipe that loses height on the way to the chimney top, part by part.
void falling_pipe(Subject& s) {
    constexpr double level_within = 1e-3; // what a file of whole millimeters rounds away
    if (s.resolved.appliance.pushed_by_fan) {
        return;
    }
    for (const Section& section : s.resolved.sections) {
        if (section.length_m <= 0.0) {
            continue;
        }
        const double slope = section.rise_m / section.length_m;
        CheckResult* f =
            s.hold(own("run-falls"),
                   slope >= -level_within,
                   {.kind = Kind::slope, .figure = slope, .limit = 0.0, .weight = -slope},
                   {.section = &section});
        if (f != nullptr && s.with_words()) {
            f->message = f->place + " falls by " + s.show(-section.rise_m, Kind::length)
                         + " on its way to the "
                         + std::string{way_out(kind_of(s.resolved.appliance))} + ".";
        }
    }
}

void turns(Subject& s) {
    const Run::Turns turns = s.resolved.run.turns(Stretch::connector);
    const double most = catalog::default_of(DefaultId::turns_most_rad).value;
    constexpr double tolerance_rad = 0.02;
    if (turns.last == nullptr) {
        return;
    }
    CheckResult* f = s.hold(own("too-many-turns"),
                            turns.sum_rad <= most + tolerance_rad,
                            {.kind = Kind::angle,
                             .figure = turns.sum_rad,
                             .limit = most,
                             .weight = turns.sum_rad / most - 1.0},
                            {.section = &s.resolved.sections[turns.last->section]});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "The gas turns " + std::to_string(turns.count) + " times before the "
                 + std::string{way_out(kind_of(s.resolved.appliance))} + ", by "
                 + s.show(turns.sum_rad, Kind::angle) + " together.";
}

/// A turn that leads from a level stretch into an upright one.
void cleanout(Subject& s) {
    const FuelGroup fuel = s.resolved.appliance.fuel_group;
    if (fuel == FuelGroup::gas || fuel == FuelGroup::oil) {
        return; // next to nothing falls
    }
    const auto& sections = s.resolved.sections;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        if (sections[i].turn_rad < 1.0) {
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
        if (before == nullptr || after == nullptr || before->lie != Lie::level
            || after->lie == Lie::level || after->rise_m < 0.0) {
            continue;
        }
        CheckResult* f = s.hold(
            own("no-cleanout-at-turn-up"), sections[i].cleanout, {}, {.section = &sections[i]});
        if (f == nullptr || !s.with_words()) {
            continue;
        }
        f->message = "The flue turns up at " + f->place + " and has no cleanout there.";
        if (sections[i].kind == PartKind::tee) {
            f->remedy = "Fit the tee with a removable cap, and set `cleanout` to true.";
        }
    }
}

void height(Subject& s) {
    const ApplianceCase& a = s.resolved.appliance;
    if (a.pushed_by_fan || a.fuel_group == FuelGroup::gas || a.fuel_group == FuelGroup::oil
        || a.fuel_group == FuelGroup::pellets) {
        return; // the tables of such vents begin at 6 ft, and a fan asks for no height
    }
    const double over_floor_m = s.resolved.total_rise_m() + s.resolved.appliance.outlet_height_m;
    const double usual_m = catalog::default_of(DefaultId::usual_chimney_height_m).value;
    CheckResult* f = s.hold(own("chimney-below-usual-height"),
                            s.view.reaches(over_floor_m, usual_m, Kind::length),
                            {.kind = Kind::length,
                             .figure = over_floor_m,
                             .limit = usual_m,
                             .weight = 1.0 - over_floor_m / usual_m},
                            {.section = nullptr, .place = "the chimney top"});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "The chimney top is " + s.show(over_floor_m, Kind::length) + " above the floor; "
                 + s.show(usual_m, Kind::length) + " is the usual least.";
}

bool is_stovepipe(const Subject& s, const Section& section) {
    const WallBuild& wall = s.resolved.walls[section.wall];
    return section.length_m > 0.0 && !is_chimney_wall(wall.kind)
           && !wall.is_vent_for(s.resolved.appliance.fuel_group);
}

/// An elbow of the connector whose wall is that of bare pipe.
bool is_bare_elbow(const Subject& s, const Section& section) {
    const RunPart* part = s.resolved.run.part(section.part);
    return section.kind == PartKind::elbow && part != nullptr && !part->in_chimney()
           && s.resolved.walls[section.wall].kind == WallKind::single;
}

std::string bare_pipe(const Subject& s, double length_m, const Section& first) {
    const bool bare = s.resolved.walls[first.wall].kind == WallKind::single;
    return s.show(length_m, Kind::length)
           + (bare ? " of single-wall pipe" : " of double-wall stovepipe");
}

/// Outdoors and up to the chimney top, or said by the file to be it: what stands there is all the
/// chimney there is.
void pipe_for_chimney(Subject& s) {
    const auto& sections = s.resolved.sections;
    const FuelGroup group = s.resolved.appliance.fuel_group;
    if (s.resolved.run.last_straight() == nullptr
        || (group != FuelGroup::wood && group != FuelGroup::coal)
        || s.resolved.shelter == Shelter::outdoors) {
        return; // a heater in the open air has no house beside its pipe
    }
    const Section* first = nullptr;
    double length_m = 0.0;
    const auto below =
        std::find_if(sections.rbegin(), sections.rend(), [&](const Section& section) {
            return section.length_m > 0.0
                   && (section.zone != Zone::outdoors || !is_stovepipe(s, section));
        });
    for (auto section = below.base(); section != sections.end(); ++section) {
        if (section->length_m > 0.0) {
            first = first == nullptr ? &*section : first;
            length_m += section->length_m;
        }
    }
    for (const Section& section : sections) {
        const RunPart* part = s.resolved.run.part(section.part);
        if (first == nullptr && part != nullptr && part->in_chimney() && is_stovepipe(s, section)) {
            first = &section;
            length_m = section.length_m;
        }
    }
    CheckResult* f =
        s.hold(own("stovepipe-for-chimney"),
               first == nullptr,
               {.kind = Kind::length, .figure = length_m, .limit = 0.0, .weight = length_m / 5.0},
               {.section = first});
    if (f != nullptr && first != nullptr && s.with_words()) {
        f->message = bare_pipe(s, length_m, *first) + " stands for the chimney.";
    }
}

void bare_pipe_outdoors(Subject& s) {
    double length_m = 0.0;
    const Section* first = nullptr;
    bool any = false;
    for (const Section& section : s.resolved.sections) {
        if (!is_stovepipe(s, section) && !is_bare_elbow(s, section)) {
            continue;
        }
        any = true;
        if (section.zone == Zone::outdoors) {
            length_m += section.length_m;
            first = first == nullptr ? &section : first;
        }
    }
    if (!any || s.resolved.appliance.fuel_group == FuelGroup::gas) {
        return;
    }
    CheckResult* f =
        s.hold(own("single-wall-outdoors"),
               first == nullptr,
               {.kind = Kind::length, .figure = length_m, .limit = 0.0, .weight = length_m / 5.0},
               {.section = first});
    if (f == nullptr || first == nullptr || !s.with_words()) {
        return;
    }
    f->message = (length_m > 0.0 ? bare_pipe(s, length_m, *first) : "An elbow of single-wall pipe")
                 + " is outdoors.";
}

void damper_on_gas(Subject& s) {
    if (s.resolved.appliance.fuel_group != FuelGroup::gas) {
        return;
    }
    for (const Section& section : s.resolved.sections) {
        if (section.kind != PartKind::damper) {
            continue;
        }
        CheckResult* f =
            s.hold(own("damper-on-gas"), false, {.weight = 1.0}, {.section = &section});
        if (f != nullptr && s.with_words()) {
            f->message = "The vent of a gas burner has a damper, " + f->place + ".";
        }
    }
}

} // namespace

void shape(Subject& s) {
    damper_on_gas(s);
    level_run(s);
    falling_pipe(s);
    turns(s);
    cleanout(s);
    height(s);
    bare_pipe_outdoors(s);
    pipe_for_chimney(s);
}

} // namespace fluewright::checking
