#include "run_edit.hpp"

#include "fluewright/core/same_name.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>
#include <vector>

namespace fluewright::run_edit {
namespace {

/// The section is given in one of three ways and carries on as a whole; the rest key by key.
bool is_of_section(std::string_view key) {
    return key == "diameter" || key == "width" || key == "depth" || key == "shape"
           || key == "liner";
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

void copy_section(const Part& from, Part& to) {
    to.diameter_m = from.diameter_m;
    to.width_m = from.width_m;
    to.depth_m = from.depth_m;
    to.shape = from.shape;
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
    before.shape = outlet.shape;
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
    if (std::none_of(spelled.run.begin(), spelled.run.end(), changes_size)) {
        return;
    }
    const std::optional<Run> run = run_of(spelled);
    if (!run) {
        return;
    }
    double before_m2 = run->collar.bore.area_m2;
    std::vector<Part> kept;
    for (std::size_t i = 0; i < spelled.run.size(); ++i) {
        Part& part = spelled.run[i];
        const double area_m2 = run->parts[i].bore.area_m2;
        if (changes_size(part)) {
            if (is_same_size(area_m2, before_m2)) {
                continue;
            }
            part.part = area_m2 < before_m2 ? PartKind::reducer : PartKind::increaser;
        }
        before_m2 = area_m2;
        kept.push_back(std::move(part));
    }
    spelled.run = std::move(kept);
}

Installation shortened(Installation spelled) {
    settle_size_changes(spelled);
    state_units(spelled);
    Part before;
    before.diameter_m = spelled.appliance.outlet.diameter_m;
    before.width_m = spelled.appliance.outlet.width_m;
    before.depth_m = spelled.appliance.outlet.depth_m;
    before.shape = spelled.appliance.outlet.shape;
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

bool same_section(const Part& a, const Part& b) {
    return a.diameter_m == b.diameter_m && a.width_m == b.width_m && a.depth_m == b.depth_m
           && a.shape == b.shape && a.liner == b.liner;
}

bool is_a(const Part& part, PartKind kind) {
    return part.part == kind;
}

bool is_straight(const Part& part) {
    return is_a(part, PartKind::straight);
}

bool is_level(const Part& part) {
    return shape_of(part).lie == Lie::level;
}

bool goes_up(const Part& part) {
    return is_straight(part) && part.up_m.has_value();
}

bool lies_upside_down(const Part& part) {
    return part.chimney_end == PipeEnd::crimped && part.heater_end != PipeEnd::crimped;
}

bool changes_size(const Part& part) {
    return part.part && fluewright::changes_size(*part.part);
}

std::optional<Run> run_of(const Installation& installation) {
    Result<Case, Faults> resolved = resolve(installation);
    return resolved ? std::optional{std::move(resolved->run)} : std::nullopt;
}

bool move_top(Installation& in, double more_m, double least_left_m) {
    const auto last = std::find_if(in.run.rbegin(), in.run.rend(), goes_up);
    if (last == in.run.rend() || *last->up_m + more_m < least_left_m) {
        return false;
    }
    last->up_m = *last->up_m + more_m;
    Roof& roof = in.site.roof;
    if (roof.top_above_roof_m) {
        // A top below the roof is not over it at all.
        roof.top_above_roof_m = std::max(0.0, *roof.top_above_roof_m + more_m);
    }
    for (NearThing& thing : roof.near) {
        if (thing.below_top_m) {
            thing.below_top_m = *thing.below_top_m + more_m;
        }
    }
    return true;
}

Part like_pipe(const Part& pipe) {
    Part part;
    copy_section(pipe, part);
    copy_joint(pipe, part);
    part.wall = pipe.wall;
    part.zone = pipe.zone;
    return part;
}

void set_diameter(Part& part, double diameter_m) {
    part.diameter_m = diameter_m;
    part.width_m.reset();
    part.depth_m.reset();
    part.shape.reset();
    part.liner.reset();
}

void set_new_pipe(Part& part, double diameter_m) {
    if (part.diameter_m == diameter_m) {
        return;
    }
    set_diameter(part, diameter_m);
    part.deposit_m.reset();
    part.deposit.reset();
}

void set_wall(Part& part, const std::string& wall) {
    if (part.wall && is_same_name(*part.wall, wall)) {
        return;
    }
    part.wall = wall;
    part.heater_end.reset();
    part.chimney_end.reset();
    part.thickness_m.reset();
    part.gauge.reset();
    part.screws.reset();
    part.lap_m.reset();
    part.slip_joint.reset();
    part.expansion_allowed_m.reset();
    part.rating.reset();
    part.listed_clearance_m.reset();
    part.rated_surface_temperature_k.reset();
}

void set_clay_liner(Part& part, const std::string& liner) {
    if (part.liner != liner) {
        part.deposit_m.reset();
        part.deposit.reset();
    }
    part.diameter_m.reset();
    part.width_m.reset();
    part.depth_m.reset();
    part.shape.reset();
    part.liner = liner;
}

} // namespace fluewright::run_edit
