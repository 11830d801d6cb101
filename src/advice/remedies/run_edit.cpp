#include "run_edit.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::run_edit {
namespace {

constexpr double same_size = 0.005;

/// The section is given in one of three ways and carries on as a whole; the rest key by key.
bool is_of_section(std::string_view key) {
    return key == "diameter" || key == "width" || key == "depth" || key == "liner";
}

/// The fit of a joint is given in one of two ways, too.
bool is_of_joint(std::string_view key) {
    return key == "joint" || key == "joint_gap";
}

bool has_joint(const Part& part) {
    return part.joint || part.joint_gap_m;
}

void copy_joint(const Part& from, Part& to) {
    to.joint = from.joint;
    to.joint_gap_m = from.joint_gap_m;
}

bool has_section(const Part& part) {
    return part.diameter_m || part.width_m || part.depth_m || part.liner;
}

bool same_section(const Part& a, const Part& b) {
    return a.diameter_m == b.diameter_m && a.width_m == b.width_m && a.depth_m == b.depth_m
           && a.liner == b.liner;
}

void copy_section(const Part& from, Part& to) {
    to.diameter_m = from.diameter_m;
    to.width_m = from.width_m;
    to.depth_m = from.depth_m;
    to.liner = from.liner;
}

/// Calls visit(member of `a`, member of `b`) for each key that carries on, but for section and
/// joint.
template <class Visit>
void for_each_carried(const Part& a, Part& b, const Visit& visit) {
    for (const Field<Part>& field : fields<Part>()) {
        if (!field.info.carries_on || is_of_section(field.info.key)
            || is_of_joint(field.info.key)) {
            continue;
        }
        if (const auto* given = std::get_if<Given Part::*>(&field.member)) {
            visit(a.**given, b.**given);
        } else if (const auto* word = std::get_if<Word Part::*>(&field.member)) {
            visit(a.**word, b.**word);
        } else if (const auto* choice = std::get_if<ChoiceMember<Part>>(&field.member)) {
            auto value = choice->get(b);
            visit(choice->get(a), value);
            choice->set(b, value);
        }
    }
}

double circle_m2(double diameter_m) {
    return constants::pi / 4.0 * diameter_m * diameter_m;
}

double area_before(const Installation& spelled, std::size_t index) {
    return index == 0 ? outlet_area_m2(spelled) : area_m2(spelled, spelled.run[index - 1]);
}

} // namespace

namespace {

/// The units of a file follow from those its quantities are typed in, unless it states them. Typed
/// anew, a quantity that is even in metric units only stands in these.
void state_units(Installation& in) {
    if (!in.units && in.us_quantities > in.metric_quantities) {
        in.units = FileUnits::us;
    }
}

} // namespace

Installation spelled_out(const Installation& written) {
    Installation spelled = written;
    Outlet& outlet = spelled.appliance.outlet;
    if (!outlet.diameter_m && !outlet.width_m && !spelled.run.empty()) {
        outlet.diameter_m = spelled.run.front().diameter_m;
    }
    Part before;
    before.diameter_m = outlet.diameter_m;
    before.width_m = outlet.width_m;
    before.depth_m = outlet.depth_m;
    for (Part& part : spelled.run) {
        if (!has_section(part)) {
            copy_section(before, part);
        }
        if (!has_joint(part)) {
            copy_joint(before, part);
        }
        for_each_carried(before, part, [](const auto& from, auto& to) {
            if (!to) {
                to = from;
            }
        });
        before = part;
    }
    return spelled;
}

void settle_size_changes(Installation& spelled) {
    for (std::size_t i = 0; i < spelled.run.size();) {
        Part& part = spelled.run[i];
        if (!changes_size(part)) {
            ++i;
            continue;
        }
        const double ratio = area_m2(spelled, part) / area_before(spelled, i);
        if (std::abs(ratio - 1.0) < same_size) {
            spelled.run.erase(spelled.run.begin() + static_cast<std::ptrdiff_t>(i));
            continue;
        }
        part.part = ratio < 1.0 ? PartKind::reducer : PartKind::increaser;
        ++i;
    }
}

Installation shortened(Installation spelled) {
    settle_size_changes(spelled);
    state_units(spelled);
    Part before;
    before.diameter_m = spelled.appliance.outlet.diameter_m;
    before.width_m = spelled.appliance.outlet.width_m;
    before.depth_m = spelled.appliance.outlet.depth_m;
    bool first = true;
    for (Part& part : spelled.run) {
        const Part whole = part;
        // The first part keeps its size: one wants to see it where the run begins.
        if (!first && !changes_size(part) && same_section(before, part)) {
            copy_section(Part{}, part);
        }
        if (before.joint == part.joint && before.joint_gap_m == part.joint_gap_m) {
            copy_joint(Part{}, part);
        }
        for_each_carried(before, part, [](const auto& from, auto& to) {
            if (to == from) {
                to.reset();
            }
        });
        before = whole;
        first = false;
    }
    return spelled;
}

bool is_a(const Part& part, PartKind kind) {
    return part.part == kind;
}

bool is_straight(const Part& part) {
    return is_a(part, PartKind::straight);
}

double rise_m(const Part& part) {
    if (!is_straight(part)) {
        return 0.0;
    }
    if (part.across_m) {
        return part.rise_m ? *part.rise_m : part.slope.value_or(0.0) * *part.across_m;
    }
    return part.up_m ? *part.up_m : -part.down_m.value_or(0.0);
}

double total_rise_m(const Installation& installation) {
    double sum_m = 0.0;
    for (const Part& part : installation.run) {
        sum_m += rise_m(part);
    }
    return sum_m;
}

double length_m(const Part& part) {
    if (!is_straight(part)) {
        return 0.0;
    }
    if (part.across_m) {
        const double rise_m =
            part.rise_m ? *part.rise_m : part.slope.value_or(0.0) * *part.across_m;
        return std::hypot(*part.across_m, rise_m);
    }
    return part.up_m ? *part.up_m : part.down_m.value_or(0.0);
}

bool is_level(const Part& part) {
    if (!is_straight(part) || !part.across_m) {
        return false;
    }
    const double rise_m = part.rise_m ? *part.rise_m : part.slope.value_or(0.0) * *part.across_m;
    return rise_m < 0.5 * length_m(part);
}

bool is_upright(const Part& part) {
    return is_straight(part) && part.up_m.has_value();
}

bool changes_size(const Part& part) {
    return is_a(part, PartKind::reducer) || is_a(part, PartKind::increaser);
}

WallKind wall_kind(const Installation& installation, const Part& part) {
    if (!part.wall) {
        return WallKind::single;
    }
    for (const OwnWall& own : installation.walls) {
        if (own.id == *part.wall) {
            return own.kind.value_or(WallKind::single);
        }
    }
    const catalog::Wall* row = catalog::find_wall(*part.wall);
    return row == nullptr ? WallKind::single : row->kind.value();
}

double outlet_area_m2(const Installation& spelled) {
    const Outlet& outlet = spelled.appliance.outlet;
    if (outlet.width_m && outlet.depth_m) {
        return *outlet.width_m * *outlet.depth_m;
    }
    return circle_m2(
        outlet.diameter_m.value_or(catalog::default_of(DefaultId::outlet_diameter_m).value));
}

double area_m2(const Installation& spelled, const Part& part) {
    if (part.liner) {
        const catalog::ClayLiner* row = catalog::find_clay_liner(*part.liner);
        if (row != nullptr) {
            return row->shape == "round" ? circle_m2(row->inside_width_m)
                                         : row->inside_width_m * row->inside_depth_m;
        }
    }
    if (part.width_m && part.depth_m) {
        return *part.width_m * *part.depth_m;
    }
    return part.diameter_m ? circle_m2(*part.diameter_m) : outlet_area_m2(spelled);
}

void set_diameter(Part& part, double diameter_m) {
    part.diameter_m = diameter_m;
    part.width_m.reset();
    part.depth_m.reset();
    part.liner.reset();
}

bool is_resizable(const Installation& spelled, const Part& part) {
    return !part.width_m && !part.liner && wall_kind(spelled, part) != WallKind::masonry;
}

std::size_t chimney_start(const Installation& spelled) {
    const auto& run = spelled.run;
    for (std::size_t i = 0; i < run.size(); ++i) {
        const bool outside = run[i].zone && *run[i].zone != Zone::room;
        if (is_upright(run[i]) && (is_chimney_wall(wall_kind(spelled, run[i])) || outside)) {
            return i > 0 && is_a(run[i - 1], PartKind::tee) ? i - 1 : i;
        }
    }
    return run.size();
}

} // namespace fluewright::run_edit
