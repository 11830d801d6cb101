#include "fluewright/advice/remedies/remedy.hpp"

#include "remedy_changes.hpp"
#include "run_edit.hpp"

#include <algorithm>

namespace fluewright {
namespace {

void change(const Remedy& remedy, Installation& in) {
    switch (remedy.kind) {
    case RemedyKind::open_damper:
        return changes::open_damper(in);
    case RemedyKind::remove_damper:
        return changes::remove_damper(in);
    case RemedyKind::sweep:
        return changes::sweep(in);
    case RemedyKind::seal_joints:
        return changes::seal_joints(in);
    case RemedyKind::turn_round:
        return changes::turn_round(in);
    case RemedyKind::clean_screen:
        return changes::clean_screen(in);
    case RemedyKind::remove_screen:
        return changes::remove_screen(in);
    case RemedyKind::wider_mesh:
        return changes::wider_mesh(in, remedy.amount);
    case RemedyKind::change_cap:
        return changes::change_cap(in, from_word<Build>(remedy.word).value_or(Build::plain));
    case RemedyKind::air_inlet:
        return remedy.other > 0.0 ? changes::house_inlet(in, remedy.other)
                                  : changes::air_inlet(in, remedy.amount);
    case RemedyKind::stop_fans:
        return changes::stop_fans(in);
    case RemedyKind::dry_fuel:
        return changes::dry_fuel(in, remedy.amount);
    case RemedyKind::brisk_low_fire:
    case RemedyKind::smaller_fire:
        return changes::set_burn_rates(in, remedy.amount, remedy.other);
    case RemedyKind::give_slope:
        return changes::give_slope(in, remedy.amount);
    case RemedyKind::smooth_elbows:
        return changes::smooth_elbows(in);
    case RemedyKind::two_45:
        return changes::two_45(in);
    case RemedyKind::lower_door_opening:
        return changes::lower_door_opening(in, remedy.amount);
    case RemedyKind::raise_hearth:
        return changes::raise_hearth(in, remedy.amount);
    case RemedyKind::fit_insert:
        return changes::fit_insert(in, remedy.amount, remedy.word);
    case RemedyKind::fit_shield:
        return changes::fit_shield(in);
    case RemedyKind::double_wall_connector:
        return changes::connector_wall(in, remedy.word);
    case RemedyKind::black_pipe:
        return changes::black_pipe(in);
    case RemedyKind::remove_reducer:
        return changes::remove_reducer(in);
    case RemedyKind::connector_size:
        return changes::connector_size(in, remedy.amount);
    case RemedyKind::shorten_level:
        return changes::shorten_level(in, remedy.amount);
    case RemedyKind::straighten_level:
        return changes::straighten_level(in);
    case RemedyKind::remove_level:
        return changes::remove_level(in);
    case RemedyKind::move_heater:
        return changes::move_heater(in, remedy.amount);
    case RemedyKind::shield_heater:
        return changes::shield_heater(in);
    case RemedyKind::raise_top:
        return changes::raise_top(in, remedy.amount, remedy.word);
    case RemedyKind::insulate_outside:
        return changes::insulate_outside(in, remedy.word);
    case RemedyKind::enclose_outside:
        return changes::enclose_outside(in);
    case RemedyKind::line_flue:
        return changes::line_flue(in, remedy.amount, remedy.word);
    case RemedyKind::chimney_size:
        return changes::chimney_size(in, remedy.amount);
    case RemedyKind::pipe_size:
        return changes::pipe_size(in, remedy.amount);
    case RemedyKind::fit_damper:
        return changes::fit_damper(in, remedy.amount);
    case RemedyKind::fit_regulator:
        return changes::fit_regulator(in, remedy.amount);
    }
}

/// Changes of one family are choices for the same thing.
unsigned families(RemedyKind kind) {
    constexpr unsigned damper = 1U;
    constexpr unsigned screen = 2U;
    constexpr unsigned connector = 4U;
    constexpr unsigned chimney = 8U;
    constexpr unsigned turns = 16U;
    constexpr unsigned fire = 32U;
    constexpr unsigned level = 64U;
    constexpr unsigned front = 128U;
    constexpr unsigned held = 256U; // the draft: by a blade or by a regulator
    switch (kind) {
    case RemedyKind::open_damper:
    case RemedyKind::remove_damper:
        return damper;
    case RemedyKind::fit_damper:
        return damper | held;
    case RemedyKind::fit_regulator:
        return held;
    case RemedyKind::clean_screen:
    case RemedyKind::remove_screen:
    case RemedyKind::wider_mesh:
        return screen;
    case RemedyKind::connector_size:
        return connector;
    case RemedyKind::line_flue:
    case RemedyKind::chimney_size:
        return chimney;
    case RemedyKind::pipe_size:
    case RemedyKind::remove_reducer:
        return connector | chimney;
    case RemedyKind::two_45:
        return turns | level;
    case RemedyKind::shorten_level:
    case RemedyKind::move_heater:
        return level;
    case RemedyKind::remove_level:
        return turns | level;
    case RemedyKind::brisk_low_fire:
    case RemedyKind::smaller_fire:
        return fire;
    case RemedyKind::lower_door_opening:
    case RemedyKind::raise_hearth:
        return front;
    case RemedyKind::fit_insert:
        return front | chimney | fire;
    default:
        return 0U;
    }
}

/// Pointers into the run and what was seen belong to the run as it was.
void forget_what_was_seen(Installation& in) {
    in.observed = seen_of_changed_run(in.observed);
    auto& tolerances = in.tolerances;
    tolerances.erase(std::remove_if(tolerances.begin(),
                                    tolerances.end(),
                                    [](const Tolerance& tolerance) {
                                        return tolerance.pointer.starts_with("/run/")
                                               || tolerance.pointer.starts_with("/observed/");
                                    }),
                     tolerances.end());
}

} // namespace

const catalog::RemedyEffort& effort_of(RemedyKind kind) {
    return catalog::remedy_efforts()[static_cast<std::size_t>(kind)];
}

std::string may_worsen(const Remedy& remedy) {
    std::string words{effort_of(remedy.kind).may_worsen};
    if (remedy.kind == RemedyKind::raise_top && !remedy.word.empty()) {
        words += "; " + std::string{effort_of(RemedyKind::insulate_outside).may_worsen};
    }
    return words;
}

std::optional<Installation> apply(const Remedy& remedy, const Installation& installation) {
    const Installation before = run_edit::spelled_out(installation);
    Installation after = before;
    change(remedy, after);
    if (after == before) {
        return std::nullopt;
    }
    forget_what_was_seen(after);
    return run_edit::shortened(std::move(after));
}

bool undoes_a_fault(RemedyKind kind) {
    switch (kind) {
    case RemedyKind::open_damper:
    case RemedyKind::sweep:
    case RemedyKind::seal_joints:
    case RemedyKind::turn_round:
    case RemedyKind::clean_screen:
    case RemedyKind::stop_fans:
        return true;
    default:
        return false;
    }
}

bool holds_the_draft(const Remedy& remedy) {
    return remedy.kind == RemedyKind::fit_damper || remedy.kind == RemedyKind::fit_regulator;
}

bool go_together(const Remedy& first, const Remedy& second) {
    // A top raised in another wall has that wall already.
    const auto builds_anew = [](const Remedy& one, const Remedy& other) {
        return one.kind == RemedyKind::raise_top && !one.word.empty()
               && other.kind == RemedyKind::insulate_outside;
    };
    return first.kind != second.kind && (families(first.kind) & families(second.kind)) == 0U
           && !builds_anew(first, second) && !builds_anew(second, first);
}

Installation in_short(const Installation& installation) {
    return run_edit::shortened(run_edit::spelled_out(installation));
}

} // namespace fluewright
