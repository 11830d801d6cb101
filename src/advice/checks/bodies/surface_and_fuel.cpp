#include "fluewright/advice/unsolved.hpp"
#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <functional>

/// Habits of the trade that need the solved state: surfaces, draft, deposit, fuel.
namespace fluewright::checking {
namespace {

/// Hottest or coldest surface of the parts `wanted` picks, over the weathers of one state.
template <class Wanted>
std::optional<std::pair<const Piece*, double>>
surface(const View& view, StateKind kind, bool hottest, Wanted&& wanted) {
    std::optional<std::pair<const Piece*, double>> found;
    for (const StateResult& state : view.states()) {
        if (state.kind != kind) {
            continue;
        }
        for (const Piece& piece : view.pieces) {
            const auto range = piece.has_length() && wanted(piece)
                                   ? surface_range(view.resolved, state, *piece.section)
                                   : std::nullopt;
            if (!range) {
                continue;
            }
            const double here_k = hottest ? range->hottest_k : range->coldest_k;
            if (!found || (hottest ? here_k > found->second : here_k < found->second)) {
                found = {&piece, here_k};
            }
        }
    }
    return found;
}

bool is_galvanized(const Piece& piece) {
    return piece.wall->inner_material == "galvanized steel";
}

Verdict cold_surface(const View& view, const catalog::Rule& rule) {
    if (view.heater().fuel_group != FuelGroup::wood || view.fireplace()) {
        return not_here("for closed wood heaters");
    }
    const auto found = surface(view, StateKind::low_fire, false, std::mem_fn(&Piece::is_single));
    return found ? at(view,
                      *found->first,
                      at_least(view,
                               found->second,
                               rule.figure,
                               Kind::temperature,
                               "at low fire the surface is at"))
                 : not_here("there is no single-wall pipe");
}

Verdict hot_surface(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    const auto found = surface(view, StateKind::high_fire, true, std::mem_fn(&Piece::is_single));
    return found ? at(view,
                      *found->first,
                      at_most(view,
                              found->second,
                              rule.figure,
                              Kind::temperature,
                              "at high fire the surface is at"))
                 : not_here("there is no single-wall pipe");
}

Verdict zinc(const View& view, const catalog::Rule& rule) {
    const auto found = surface(view, StateKind::high_fire, true, is_galvanized);
    return found ? at(view,
                      *found->first,
                      at_most(view,
                              found->second,
                              rule.figure,
                              Kind::temperature,
                              "at high fire the surface is at"))
                 : not_here("there is no galvanized pipe");
}

/// The strongest draft of a fire against a multiple of the greatest the heater allows.
Verdict strongest_draft(const View& view, const catalog::Rule& rule) {
    const double greatest_pa = view.heater().draft_greatest_pa;
    if (!view.solid_fuel() || view.fireplace() || greatest_pa <= 0.0) {
        return not_here("for closed heaters of solid fuel with a greatest draft");
    }
    const StateResult* strongest = nullptr;
    for (const StateResult& state : view.states()) {
        if (is_held_fire(state.kind) && has_figures(state)
            && (strongest == nullptr || state.draft_pa > strongest->draft_pa)) {
            strongest = &state;
        }
    }
    if (strongest == nullptr) {
        return not_here("no fire has an answer");
    }
    Verdict v =
        at_most(view,
                strongest->draft_pa,
                rule.figure * greatest_pa,
                Kind::pressure,
                view.with_words ? "in " + view.words(*strongest) + " the draft at the outlet is"
                                : std::string{});
    v.place = "the outlet";
    if (v.outcome == CheckOutcome::not_met && view.with_words) {
        v.message = "in " + view.words(*strongest) + " the draft at the outlet is "
                    + view.show(strongest->draft_pa, Kind::pressure) + ", more than twice the "
                    + view.show(greatest_pa, Kind::pressure) + " the appliance allows";
    }
    return v;
}

Verdict deposit(const View& view, const catalog::Rule& rule) {
    double thickest_m = -1.0;
    bool glazed = false;
    for (const Part& part : view.written.run) {
        thickest_m = std::max(thickest_m, part.deposit_m.value_or(-1.0));
        glazed =
            glazed
            || (part.deposit == DepositKind::glazed_creosote && part.deposit_m.value_or(0.0) > 0.0);
    }
    for (const Observation& seen : view.written.observed) {
        thickest_m = std::max(thickest_m, seen.deposit_m.value_or(-1.0));
    }
    if (thickest_m < 0.0) {
        if (!view.solid_fuel() || view.pieces.empty()) {
            return not_here("for solid fuel only");
        }
        return unknown({view.pieces.front().key("deposit_thickness")},
                       "deposit under " + view.show(rule.figure, Kind::length));
    }
    const double shown_m = thickest_m;
    const bool no_fire = glazed || shown_m >= rule.second;
    Verdict v = decided(shown_m < rule.figure && !glazed,
                        "deposit of " + view.show(shown_m, Kind::length) + "; "
                            + (glazed ? "glaze is taken out whatever its thickness"
                                      : "sweep from " + view.show(rule.figure, Kind::length))
                            + (no_fire ? ", and no fire before that" : ""));
    v.kind = Kind::length;
    v.figure = shown_m;
    v.limit = rule.figure;
    return v;
}

/// The limit is on dry weight.
Verdict dry_wood_de(const View& view, const catalog::Rule& rule) {
    if (view.heater().fuel_group != FuelGroup::wood) {
        return not_here("for wood only");
    }
    const double moisture = view.heater().moisture;
    const double on_dry = moisture / (1.0 - moisture);
    const bool less =
        on_dry < rule.figure && !view.same_as_printed(on_dry, rule.figure, Kind::fraction);
    Verdict v = decided(less,
                        "water on dry weight " + view.show(on_dry, Kind::fraction) + ", less than "
                            + view.show(rule.figure, Kind::fraction) + " is required");
    v.kind = Kind::fraction;
    v.figure = on_dry;
    v.limit = rule.figure;
    return v;
}

constexpr auto surface_and_fuel_entries = std::to_array<Entry>({
    {"trade-surface-cold", cold_surface, Needs::solution},
    {"trade-surface-hot", hot_surface, Needs::solution},
    {"trade-galvanized-zinc", zinc, Needs::solution},
    {"trade-draft-twice-greatest", strongest_draft, Needs::solution},
    {"trade-creosote-thickness", deposit},
    {"de-fuel-moisture", dry_wood_de},
});

} // namespace

std::span<const Entry> surface_and_fuel_checks() {
    return surface_and_fuel_entries;
}

} // namespace fluewright::checking
