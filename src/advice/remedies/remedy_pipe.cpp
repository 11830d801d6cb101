#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/core/same_name.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "remedy_changes.hpp"
#include "run_edit.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <vector>

namespace fluewright::changes {
namespace {

using namespace run_edit;

enum class Reach : std::uint8_t { connector, chimney, whole };

void resize(Installation& in, Reach reach, double diameter_m) {
    const std::optional<Run> run = run_of(in);
    if (!run) {
        return;
    }
    const std::size_t chimney = run->chimney_start();
    const std::size_t begin = reach == Reach::chimney ? chimney : 0;
    const std::size_t end = reach == Reach::connector ? chimney : in.run.size();
    for (std::size_t i = begin; i < end; ++i) {
        if (run->parts[i].has_choice_of_size()) {
            set_new_pipe(in.run[i], diameter_m);
        }
    }
}

/// What stays above a chase: the length of pipe a roof and its flashing need.
constexpr double above_chase_m = 0.6;

/// A reducer or increaser from the size of the pipe it is set beside to another.
Part size_change(const Part& pipe, double from_m2, double diameter_m) {
    Part change = like_pipe(pipe);
    const double to_m2 = circle_area_m2(diameter_m);
    change.part = to_m2 < from_m2 ? PartKind::reducer : PartKind::increaser;
    set_diameter(change, diameter_m);
    return change;
}

bool is_passed_by_chimney_alone(const Part& part) {
    return std::find(floors_and_roofs.begin(),
                     floors_and_roofs.end(),
                     part.passes.value_or(Passage::nothing))
           != floors_and_roofs.end();
}

} // namespace

void connector_wall(Installation& in, const std::string& wall) {
    const std::optional<Run> run = run_of(in);
    const std::size_t end = run ? run->chimney_start() : 0;
    for (std::size_t i = 0; i < end; ++i) {
        if (run->parts[i].wall_kind == WallKind::single && run->parts[i].zone.value == Zone::room) {
            set_wall(in.run[i], wall);
        }
    }
}

void black_pipe(Installation& in) {
    const std::optional<Run> run = run_of(in);
    const std::size_t end = run ? run->chimney_start() : 0;
    for (std::size_t i = 0; i < end; ++i) {
        const Word& wall = in.run[i].wall;
        const catalog::Wall* row = wall ? catalog::find_wall(*wall) : nullptr;
        if (row != nullptr && row->id == "single-wall galvanized") {
            set_wall(in.run[i], "single-wall steel");
        }
    }
}

void remove_reducer(Installation& in) {
    const std::optional<Run> run = run_of(in);
    if (!run) {
        return;
    }
    Part wide; // as wide as the flue is before the part looked at
    wide.diameter_m = in.appliance.outlet.diameter_m;
    wide.width_m = in.appliance.outlet.width_m;
    wide.depth_m = in.appliance.outlet.depth_m;
    wide.shape = in.appliance.outlet.shape;
    double wide_m2 = run->collar.bore.area_m2;
    std::optional<Part> narrow; // what a reducer that is gone led into
    std::vector<Part> kept;
    for (std::size_t i = 0; i < in.run.size(); ++i) {
        Part part = in.run[i];
        const double area_m2 = run->parts[i].bore.area_m2;
        if (narrow && same_section(part, *narrow)) {
            part.diameter_m = wide.diameter_m;
            part.width_m = wide.width_m;
            part.depth_m = wide.depth_m;
            part.shape = wide.shape;
            part.liner = wide.liner;
        } else if (changes_size(part) && area_m2 < wide_m2) {
            narrow = part;
            continue;
        } else {
            narrow.reset();
            wide = part;
            wide_m2 = area_m2;
        }
        kept.push_back(std::move(part));
    }
    in.run = std::move(kept);
}

void connector_size(Installation& in, double diameter_m) {
    resize(in, Reach::connector, diameter_m);
}

void chimney_size(Installation& in, double diameter_m) {
    resize(in, Reach::chimney, diameter_m);
}

void pipe_size(Installation& in, double diameter_m) {
    resize(in, Reach::whole, diameter_m);
}

/// Beside bare pipe that stands nearer to what burns than it may without a shield; so wide that
/// past its edge that distance is kept.
void fit_shield(Installation& in) {
    const double full_distance_m = catalog::find_rule("connector-clearance-single-wall")->figure;
    constexpr double off_the_wall_m = constants::inch_m;
    const std::optional<Run> run = run_of(in);
    for (std::size_t i = 0; run && i < in.run.size(); ++i) {
        const RunPart& was = run->parts[i];
        Part& part = in.run[i];
        if (was.in_chimney() || was.wall_kind != WallKind::single || part.shield
            || part.clearance_m.value_or(full_distance_m) >= full_distance_m) {
            continue;
        }
        part.shield = Shield::sheet_steel;
        part.shield_gap_m = off_the_wall_m;
        part.shield_reach_m = full_distance_m;
    }
}

namespace {

/// Chimney that begins outdoors over a level pipe stands on a tee of its own, with a cleanout; no
/// elbow of the pipe carries it.
void set_on_a_tee(Installation& in, std::size_t chimney, const Run& run) {
    constexpr double sharp_rad = 1.3; // an elbow that a tee can replace
    if (chimney < 2 || chimney >= in.run.size() || run.parts[chimney].zone.value != Zone::outdoors
        || !run_edit::goes_up(in.run[chimney]) || !run_edit::is_level(in.run[chimney - 2])) {
        return;
    }
    Part& elbow = in.run[chimney - 1];
    if (!is_a(elbow, PartKind::elbow) || elbow.angle_rad.value_or(sharp_rad) < sharp_rad) {
        return;
    }
    Part tee = run_edit::like_pipe(in.run[chimney]);
    tee.part = PartKind::tee;
    tee.flow = TeeFlow::side;
    tee.cleanout = true;
    elbow = std::move(tee);
}

} // namespace

void insulate_outside(Installation& in, const std::string& wall) {
    const std::optional<Run> run = run_of(in);
    if (!run) {
        return;
    }
    for (std::size_t i = 0; i < in.run.size(); ++i) {
        const RunPart& part = run->parts[i];
        const bool thicker = part.wall_kind == WallKind::insulated && in.run[i].wall
                             && is_same_name(*in.run[i].wall, "insulated 25 mm");
        if ((part.zone.value != Zone::room || is_passed_by_chimney_alone(in.run[i]))
            && (part.wall_kind == WallKind::single || part.wall_kind == WallKind::double_wall
                || thicker)) {
            set_wall(in.run[i], wall);
            set_on_a_tee(in, is_a(in.run[i], PartKind::elbow) ? i + 1 : i, *run);
        }
    }
}

void enclose_outside(Installation& in) {
    const auto outdoors = [](const Part& part) {
        return part.zone && *part.zone == Zone::outdoors;
    };
    const auto last = std::find_if(in.run.rbegin(), in.run.rend(), [&](const Part& part) {
        return goes_up(part) && outdoors(part);
    });
    if (last == in.run.rend() || *last->up_m <= 2.0 * above_chase_m) {
        return;
    }
    const auto at = std::distance(last, in.run.rend()) - 1;
    Part top = *last;
    top.up_m = above_chase_m;
    last->up_m = *last->up_m - above_chase_m;
    for (auto part = in.run.begin(); part <= in.run.begin() + at; ++part) {
        if (outdoors(*part)) {
            part->zone = Zone::chase;
        }
    }
    in.run.insert(in.run.begin() + at + 1, std::move(top));
}

void line_flue(Installation& in, double diameter_m, const std::string& wall) {
    const std::optional<Run> run = run_of(in);
    if (!run) {
        return;
    }
    const double liner_m2 = circle_area_m2(diameter_m);
    const auto meets = [&](const FlueBore& bore) {
        return !bore.round() || is_same_size(bore.area_m2, liner_m2);
    };
    const FlueBore* before = &run->collar.bore;
    bool lined_before = false;
    std::vector<Part> lined;
    for (std::size_t i = 0; i < in.run.size(); ++i) {
        const RunPart& was = run->parts[i];
        const bool masonry = was.wall_kind == WallKind::masonry;
        Part part = in.run[i];
        if (masonry) {
            set_diameter(part, diameter_m);
            set_wall(part, wall);
            part.deposit_m.reset();
            part.deposit.reset();
        }
        // Where pipe of another size comes in, or goes on, it takes a part that changes the size.
        if (masonry && !lined_before && !meets(*before) && !changes_size(part)) {
            if (i > 0 && changes_size(lined.back())) {
                set_diameter(lined.back(), diameter_m);
            } else {
                lined.push_back(
                    size_change(i > 0 ? in.run[i - 1] : part, before->area_m2, diameter_m));
            }
        } else if (!masonry && lined_before && !meets(was.bore) && !changes_size(part)
                   && part.part != PartKind::cap) {
            lined.push_back(size_change(part, liner_m2, was.bore.diameter_m));
        }
        lined.push_back(std::move(part));
        before = &was.bore;
        lined_before = masonry;
    }
    in.run = std::move(lined);
}

} // namespace fluewright::changes
