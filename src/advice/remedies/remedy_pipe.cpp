#include "remedy_changes.hpp"
#include "run_edit.hpp"

#include <algorithm>

namespace fluewright::changes {
namespace {

using namespace run_edit;

bool same_section(const Part& a, const Part& b) {
    return a.diameter_m == b.diameter_m && a.width_m == b.width_m && a.depth_m == b.depth_m
           && a.liner == b.liner;
}

void resize(Installation& in, std::size_t begin, std::size_t end, double diameter_m) {
    for (std::size_t i = begin; i < end; ++i) {
        if (is_resizable(in, in.run[i])) {
            set_diameter(in.run[i], diameter_m);
        }
    }
}

bool is_outside_room(const Part& part) {
    return part.zone && *part.zone != Zone::room;
}

/// What stays above a chase: the length of pipe a roof and its flashing need.
constexpr double above_chase_m = 0.6;

} // namespace

void connector_wall(Installation& in, const std::string& wall) {
    const std::size_t end = chimney_start(in);
    for (std::size_t i = 0; i < end; ++i) {
        if (wall_kind(in, in.run[i]) == WallKind::single && !is_outside_room(in.run[i])) {
            in.run[i].wall = wall;
        }
    }
}

void remove_reducer(Installation& in) {
    for (std::size_t i = 0; i < in.run.size();) {
        const double before_m2 = i == 0 ? outlet_area_m2(in) : area_m2(in, in.run[i - 1]);
        if (!changes_size(in.run[i]) || area_m2(in, in.run[i]) >= before_m2) {
            ++i;
            continue;
        }
        Part wide;
        if (i > 0) {
            wide = in.run[i - 1];
        } else {
            wide.diameter_m = in.appliance.outlet.diameter_m;
            wide.width_m = in.appliance.outlet.width_m;
            wide.depth_m = in.appliance.outlet.depth_m;
        }
        const Part narrow = in.run[i];
        in.run.erase(in.run.begin() + static_cast<std::ptrdiff_t>(i));
        for (std::size_t j = i; j < in.run.size() && same_section(in.run[j], narrow); ++j) {
            in.run[j].diameter_m = wide.diameter_m;
            in.run[j].width_m = wide.width_m;
            in.run[j].depth_m = wide.depth_m;
            in.run[j].liner = wide.liner;
        }
    }
}

void connector_size(Installation& in, double diameter_m) {
    resize(in, 0, chimney_start(in), diameter_m);
}

void chimney_size(Installation& in, double diameter_m) {
    resize(in, chimney_start(in), in.run.size(), diameter_m);
}

void pipe_size(Installation& in, double diameter_m) {
    resize(in, 0, in.run.size(), diameter_m);
}

void insulate_outside(Installation& in, const std::string& wall) {
    for (Part& part : in.run) {
        const WallKind kind = wall_kind(in, part);
        const bool thicker =
            kind == WallKind::insulated && part.wall && *part.wall == "insulated 25 mm";
        if (is_outside_room(part)
            && (kind == WallKind::single || kind == WallKind::double_wall || thicker)) {
            part.wall = wall;
        }
    }
}

void enclose_outside(Installation& in) {
    const auto outdoors = [](const Part& part) {
        return part.zone && *part.zone == Zone::outdoors;
    };
    const auto last = std::find_if(in.run.rbegin(), in.run.rend(), [&](const Part& part) {
        return is_upright(part) && outdoors(part);
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
    for (Part& part : in.run) {
        if (wall_kind(in, part) == WallKind::masonry) {
            set_diameter(part, diameter_m);
            part.wall = wall;
            part.deposit_m.reset();
            part.deposit.reset();
        }
    }
}

} // namespace fluewright::changes
