#include "fluewright/core/constants.hpp"
#include "remedy_changes.hpp"
#include "run_edit.hpp"

#include <algorithm>
#include <utility>

namespace fluewright::changes {
namespace {

using run_edit::is_a;

void take_out(Installation& in, PartKind kind) {
    auto& run = in.run;
    run.erase(std::remove_if(
                  run.begin(), run.end(), [kind](const Part& part) { return is_a(part, kind); }),
              run.end());
}

bool may_hold_screen(const Part& part) {
    return is_a(part, PartKind::screen) || is_a(part, PartKind::cap);
}

/// Clean wire of the free area that is taken where the file says nothing.
void make_clean(Part& part) {
    part.blocked.reset();
    part.free_area.reset();
    if (is_a(part, PartKind::cap) && !part.mesh_m) {
        part.free_area = catalog::default_of(DefaultId::screen_free_area_share).value;
    }
}

} // namespace

void open_damper(Installation& in) {
    for (Part& part : in.run) {
        if (is_a(part, PartKind::damper) && part.blade_angle_rad.value_or(0.0) > 0.0) {
            part.blade_angle_rad = 0.0;
        }
    }
    in.appliance.door.throat_m2.reset(); // left out it is no narrower than the flue
}

void remove_damper(Installation& in) {
    take_out(in, PartKind::damper);
}

void fit_regulator(Installation& in, double setting_pa) {
    const std::optional<Run> run = run_edit::run_of(in);
    if (has_part(in.run, PartKind::draft_regulator) || has_part(in.run, PartKind::draft_hood)
        || !run) {
        return;
    }
    // Within reach and below the ceiling, and far enough from the next bend for the tee it stands
    // on: the pipe is parted there.
    constexpr double over_outlet_m = 0.45;
    constexpr double to_next_bend_m = 0.3;
    for (std::size_t i = 0; i < in.run.size() && !run->parts[i].in_chimney(); ++i) {
        const double length_m = run->parts[i].length_m;
        if (!run_edit::is_straight(in.run[i]) || length_m < 2.0 * to_next_bend_m) {
            continue;
        }
        const double share = std::min(over_outlet_m, length_m - to_next_bend_m) / length_m;
        Part behind = in.run[i];
        Part regulator = run_edit::like_pipe(in.run[i]);
        regulator.part = PartKind::draft_regulator;
        regulator.setting_pa = setting_pa;
        for (Given Part::*side : {&Part::up_m, &Part::across_m, &Part::rise_m}) {
            if (const Given whole_m = in.run[i].*side) {
                in.run[i].*side = *whole_m * share;
                behind.*side = *whole_m * (1.0 - share);
            }
        }
        if (in.run[i].passes) {
            in.run[i].passes = Passage::nothing; // the farther piece passes it
        }
        const auto at = in.run.begin() + static_cast<std::ptrdiff_t>(i) + 1;
        in.run.insert(at, {std::move(regulator), std::move(behind)});
        return;
    }
}

void fit_damper(Installation& in, double blade_angle_rad) {
    for (Part& part : in.run) {
        if (is_a(part, PartKind::damper)) {
            part.blade_angle_rad = std::max(part.blade_angle_rad.value_or(0.0), blade_angle_rad);
            part.only_when_strong = true;
            part.loss.reset();
            return;
        }
    }
    const auto first = std::find_if(in.run.begin(), in.run.end(), run_edit::is_straight);
    if (first == in.run.end()) {
        return;
    }
    Part damper = run_edit::like_pipe(*first);
    damper.part = PartKind::damper;
    damper.blade_angle_rad = blade_angle_rad;
    damper.only_when_strong = true;
    in.run.insert(first + 1, std::move(damper));
}

void sweep(Installation& in) {
    take_out(in, PartKind::obstruction);
    for (Part& part : in.run) {
        part.deposit_m.reset();
        part.deposit.reset();
    }
    for (Observation& seen : in.observed) {
        seen.deposit_m.reset();
    }
}

void seal_joints(Installation& in) {
    const bool leaks = std::any_of(in.run.begin(), in.run.end(), [](const Part& part) {
        return part.joint.value_or(JointFit::sealed) != JointFit::sealed || part.joint_gap_m
               || part.leakage_area_m2;
    });
    if (!leaks) {
        return;
    }
    for (Part& part : in.run) {
        part.joint = JointFit::sealed;
        part.joint_gap_m.reset();
        part.leakage_area_m2.reset();
    }
}

void turn_round(Installation& in) {
    for (Part& part : in.run) {
        if (run_edit::is_straight(part) && run_edit::lies_upside_down(part)) {
            std::swap(part.heater_end, part.chimney_end);
        }
    }
}

void clean_screen(Installation& in) {
    const double clean = catalog::default_of(DefaultId::screen_free_area_share).value;
    for (Part& part : in.run) {
        const bool clogged =
            part.blocked.value_or(0.0) > 0.0 || part.free_area.value_or(1.0) < clean;
        if (may_hold_screen(part) && clogged) {
            make_clean(part);
        }
    }
}

void remove_screen(Installation& in) {
    take_out(in, PartKind::screen);
    for (Part& part : in.run) {
        if (is_a(part, PartKind::cap)) {
            part.mesh_m.reset();
            part.free_area.reset();
            part.blocked.reset();
        }
    }
}

void wider_mesh(Installation& in, double mesh_m) {
    for (Part& part : in.run) {
        if (has_screen(part) && part.mesh_m.value_or(mesh_m) < mesh_m) {
            part.mesh_m = mesh_m;
            make_clean(part);
        }
    }
}

void change_cap(Installation& in, Build build) {
    for (Part& part : in.run) {
        if (is_a(part, PartKind::cap)) {
            part.build = build;
            part.loss.reset();
        }
    }
}

} // namespace fluewright::changes
