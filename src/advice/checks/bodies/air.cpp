#include "advice/seen_trouble.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <limits>

/// Air for the fire, the room, and alarms.
namespace fluewright::checking {
namespace {

constexpr std::string_view not_solid = "for solid fuel only";

Verdict room_least(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    const Given& volume = view.written.site.room.volume_m3;
    return given_at_least(view, volume, rule.figure, Kind::volume, "room", "/site/room/volume");
}

/// Met by a large room or by an opening to outdoors, each in proportion to the output.
Verdict room_or_inlet(const View& view, double volume_m3, double inlet_m2, std::string_view rule) {
    const Given& volume = view.written.site.room.volume_m3;
    const Given& inlet = view.written.site.air_inlet_m2;
    if (volume && view.reaches(*volume, volume_m3, Kind::volume)) {
        return at_least(view, *volume, volume_m3, Kind::volume, "room");
    }
    if (inlet && *inlet > 0.0 && view.reaches(*inlet, inlet_m2, Kind::area)) {
        return at_least(view, *inlet, inlet_m2, Kind::area, "air inlet");
    }
    if (volume && inlet) {
        return at_least(view,
                        *volume,
                        volume_m3,
                        Kind::volume,
                        "room" + (rule.empty() ? "" : " " + std::string{rule}));
    }
    return unknown({volume ? "/site/air_inlet" : "/site/room/volume"},
                   "room at least " + view.show(volume_m3, Kind::volume) + ", or an air inlet of "
                       + view.show(inlet_m2, Kind::area));
}

Verdict gas_yardstick(const View& view, const catalog::Rule& rule) {
    if (view.fireplace() || !view.solid_fuel()) {
        return not_here("for closed solid-fuel heaters");
    }
    return room_or_inlet(
        view, rule.figure * view.output_kw(), rule.second * view.output_kw(), "(gas rule)");
}

Verdict room_de(const View& view, const catalog::Rule& rule) {
    constexpr double most_kw = 35.0;
    if (!view.solid_fuel() || view.output_kw() > most_kw) {
        return not_here("for solid-fuel heaters to 35 kW");
    }
    return room_or_inlet(view, rule.figure * view.output_kw(), rule.second, "");
}

/// A draft regulator in the pipe or in the heater; empty where the file tells of neither.
Flag has_regulator(const View& view) {
    const bool in_pipe = std::any_of(view.pieces.begin(), view.pieces.end(), [](const Piece& p) {
        return p.section->kind == PartKind::draft_regulator;
    });
    return in_pipe ? Flag{true} : view.written.appliance.draft_regulator;
}

/// Area of air inlet a closed heater of `kw` is asked in England [m2].
///
/// Source  Approved Document J, table 1   [approved-document-j]; the figures without a stabilizer
///         from memory
double inlet_uk_m2(double kw, bool tight, bool regulator) {
    constexpr double bare_m2_per_kw = 0.00055;
    constexpr double regulated_m2_per_kw = 0.00085;
    constexpr double regulated_first_m2_per_kw = 0.0003;
    constexpr double first_kw = 5.0;
    const double beyond_kw = std::max(0.0, kw - first_kw);
    if (regulator) {
        return tight ? regulated_m2_per_kw * kw
                     : regulated_first_m2_per_kw * std::min(kw, first_kw)
                           + regulated_m2_per_kw * beyond_kw;
    }
    return bare_m2_per_kw * (tight ? kw : beyond_kw);
}

/// Half the throat, taken as half the flue.
Verdict inlet_of_open_fire(const View& view) {
    double flue_m2 = 0.0;
    for (const Piece& piece : view.pieces) {
        flue_m2 = std::max(flue_m2, piece.has_length() ? piece.section->built_area_m2 : 0.0);
    }
    return given_at_least(view,
                          view.written.site.air_inlet_m2,
                          0.5 * flue_m2,
                          Kind::area,
                          "air inlet",
                          "/site/air_inlet");
}

Verdict inlet_uk(const View& view, const catalog::Rule& /*rule*/) {
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    if (view.fireplace()) {
        return inlet_of_open_fire(view);
    }
    const Given& inlet = view.written.site.air_inlet_m2;
    const Flag& tight = view.written.site.tight_house;
    const Flag regulator = has_regulator(view);
    // Over every house and heater the file leaves possible.
    double least_m2 = std::numeric_limits<double>::infinity();
    double most_m2 = 0.0;
    for (const bool is_tight : {false, true}) {
        for (const bool is_regulated : {false, true}) {
            if (tight.value_or(is_tight) == is_tight
                && regulator.value_or(is_regulated) == is_regulated) {
                const double here_m2 = inlet_uk_m2(view.output_kw(), is_tight, is_regulated);
                least_m2 = std::min(least_m2, here_m2);
                most_m2 = std::max(most_m2, here_m2);
            }
        }
    }
    if (most_m2 <= 0.0) {
        return not_here("a heater of 5 kW or less in a house that is not tight");
    }
    if (inlet && view.reaches(*inlet, most_m2, Kind::area)) {
        return at_least(view, *inlet, most_m2, Kind::area, "air inlet");
    }
    if (inlet && !view.reaches(*inlet, least_m2, Kind::area)) {
        return at_least(view, *inlet, least_m2, Kind::area, "air inlet");
    }
    std::vector<std::string> missing;
    if (!inlet) {
        missing.emplace_back("/site/air_inlet");
    }
    if (!tight) {
        missing.emplace_back("/site/tight_house");
    }
    if (!regulator) {
        missing.emplace_back("/appliance/draft_regulator");
    }
    const bool one = view.same_as_printed(least_m2, most_m2, Kind::area);
    Verdict v = unknown(
        std::move(missing),
        "air inlet of at least " + (one ? std::string{} : view.show(least_m2, Kind::area) + " to ")
            + view.show(most_m2, Kind::area)
            + (one ? "" : ", by how tight the house is and whether the heater has a stabilizer"));
    v.kind = Kind::area;
    v.limit = most_m2;
    return v;
}

/// The pressure of the room comes from the file or, with a house, from its balance with the fans.
Verdict fans_de(const View& view, const catalog::Rule& rule) {
    const House& house = view.written.site.house;
    if (!view.solid_fuel() || house.fans.empty()) {
        return not_here("the file has no fan beside a solid-fuel heater");
    }
    if (house.outdoor_air.value_or(false)) {
        return not_here("the fire takes its air from outdoors");
    }
    double deepest_pa = 0.0;
    for (const StateResult& state : view.states()) {
        if (state.kind == StateKind::high_fire) {
            deepest_pa = std::max(deepest_pa, -state.room.pressure_pa);
        }
    }
    // The file cannot tell of an interlock, so the message leaves it open.
    Verdict v = decided(deepest_pa <= rule.figure * 1.001,
                        "with the fans running the room is " + view.show(deepest_pa, Kind::pressure)
                            + " below outdoors; without an interlock at most "
                            + view.show(rule.figure, Kind::pressure) + " is required");
    v.kind = Kind::pressure;
    v.figure = deepest_pa;
    v.limit = rule.figure;
    return v;
}

/// Handbooks leave it to the maker of the heater, as with a damper.
Verdict regulator(const View& view, const catalog::Rule& /*rule*/) {
    for (const Piece& piece : view.pieces) {
        if (piece.section->kind == PartKind::draft_regulator
            && view.heater().fuel_group == FuelGroup::wood) {
            const Flag& allowed = view.written.appliance.damper_allowed;
            return allowed ? at(
                       view,
                       piece,
                       decided(*allowed,
                               *allowed ? "the maker allows it" : "the maker does not allow it"))
                           : unknown({"/appliance/damper_allowed"},
                                     "the heater maker's word that it is allowed");
        }
    }
    return not_here("no draft regulator behind a wood fire");
}

Verdict carbon_monoxide(const View& view, const catalog::Rule& /*rule*/) {
    const Flag& alarm = view.written.site.alarms.carbon_monoxide;
    return alarm ? decided(*alarm, *alarm ? "there is an alarm" : "there is no alarm")
                 : unknown({"/site/alarms/carbon_monoxide"});
}

/// The figures of a run say nothing of what was seen to be wrong with it.
Verdict trouble_found(const View& view, const catalog::Rule& /*rule*/) {
    constexpr double most_blocked = 0.5; // judgement
    constexpr double shut_rad = 1.4;     // 80 degrees; judgement
    for (const Piece& piece : view.pieces) {
        const double blocked = piece.part->blocked.value_or(0.0);
        if (blocked >= most_blocked) {
            return at(
                view, piece, decided(false, view.show(blocked, Kind::fraction) + " is blocked"));
        }
        if (piece.part->blade_angle_rad.value_or(0.0) > shut_rad
            && piece.part->only_when_strong != Flag{true}) {
            return at(view, piece, decided(false, "its blade stands shut"));
        }
    }
    const std::vector<Observation>& observed = view.written.observed;
    bool looked = false;
    for (std::size_t i = 0; i < observed.size(); ++i) {
        const Observation& seen = observed[i];
        const std::string entry = "/observed/" + std::to_string(i);
        if (const auto hazards = hazards_of(seen, view.heater()); !hazards.empty()) {
            return unknown({entry + '/' + std::string{hazards.front().key}});
        }
        if (seen.look == LookedAt::joints || seen.look == LookedAt::flue) {
            if (seen.found == FoundState::bad) {
                return unknown({entry + "/found"});
            }
            looked = true;
        }
    }
    return looked ? decided(true, "joints or flue were looked at and found good")
                  : not_here("no such trouble was seen");
}

Verdict own_flue(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    const Given& count = view.written.site.flue_shared_by;
    return count ? at_most(view, *count, rule.figure, Kind::number, "heaters on the flue:")
                 : unknown({"/site/flue_shared_by"}, "no other heater on the flue");
}

/// Area for several heaters of gas or oil. Of more than two the file knows the other areas only as
/// one sum: taken as one connector they ask for the most.
Verdict several_heaters(const View& view, const catalog::Rule& rule) {
    const Site& site = view.written.site;
    if (view.solid_fuel()) {
        return not_here("on solid fuel no other heater may use the flue");
    }
    if (!site.flue_shared_by || *site.flue_shared_by < 1.5) {
        return not_here("the file tells of no other heater on the flue");
    }
    const Piece* least = nullptr;
    for (const Piece* piece : view.chimney()) {
        const bool smaller =
            least == nullptr || piece->section->built_area_m2 < least->section->built_area_m2;
        least = piece->has_length() && smaller ? piece : least;
    }
    if (least == nullptr) {
        return not_here("there is no chimney after the pipe");
    }
    if (!site.flue_other_area_m2) {
        return unknown({"/site/flue_other_area"});
    }
    const double own_m2 = view.outlet_area_m2();
    const double limit_m2 = std::max(own_m2, *site.flue_other_area_m2)
                            + rule.figure * std::min(own_m2, *site.flue_other_area_m2);
    return at(view,
              *least,
              at_least(view, least->section->built_area_m2, limit_m2, Kind::area, "flue area"));
}

/// One heater is computed: the gas of others fills the same vent.
Verdict common_vent(const View& view, const catalog::Rule& /*rule*/) {
    const Given& count = view.written.site.flue_shared_by;
    if (view.solid_fuel() || !count) {
        return not_here("no file of a gas or oil burner that tells of other heaters on its vent");
    }
    return *count < 1.5 ? decided(true, "no other heater is on the vent")
                        : unknown({"/site/flue_shared_by"});
}

/// Months since somebody looked.
Verdict looked_at(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    const Given& months = view.written.site.months_since_inspection;
    return months ? at_most(view, *months, rule.figure, Kind::number, "months since the last look:")
                  : unknown({"/site/months_since_inspection"});
}

Verdict carbon_monoxide_uk(const View& view, const catalog::Rule& rule) {
    return view.solid_fuel() ? carbon_monoxide(view, rule) : not_here(not_solid);
}

/// Too near it tells of puffs at the door, too far it tells late.
Verdict alarm_place_uk(const View& view, const catalog::Rule& rule) {
    const Alarms& alarms = view.written.site.alarms;
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    if (alarms.carbon_monoxide && !*alarms.carbon_monoxide) {
        return not_here("there is no alarm");
    }
    if (!alarms.distance_m) {
        return unknown({"/site/alarms/distance"},
                       "carbon monoxide alarm " + view.show(rule.figure, Kind::length) + " to "
                           + view.show(rule.second, Kind::length) + " from the heater");
    }
    return !view.reaches(rule.second, *alarms.distance_m, Kind::length)
               ? at_most(
                   view, *alarms.distance_m, rule.second, Kind::length, "alarm from the heater")
               : at_least(
                   view, *alarms.distance_m, rule.figure, Kind::length, "alarm from the heater");
}

Verdict smoke(const View& view, const catalog::Rule& /*rule*/) {
    const Flag& alarm = view.written.site.alarms.smoke;
    return alarm ? decided(*alarm, *alarm ? "there are alarms" : "there is no alarm")
                 : unknown({"/site/alarms/smoke"});
}

constexpr auto air_entries = std::to_array<Entry>({
    {"room-min-volume", room_least},
    {"air-gas-yardstick", gas_yardstick},
    {"de-room-air", room_de},
    {"uk-air-supply", inlet_uk},
    {"de-fan-interlock", fans_de, Needs::solution},
    {"connector-draft-regulator", regulator},
    {"co-alarm", carbon_monoxide},
    {"ca-co-alarm", carbon_monoxide},
    {"au-co-alarm", carbon_monoxide},
    {"de-co-alarm", carbon_monoxide},
    {"connector-own-flue", own_flue},
    {"uk-own-flue", own_flue},
    {"ca-own-flue", own_flue},
    {"au-own-flue", own_flue},
    {"de-own-flue", own_flue},
    {"trade-own-flue", where_told<own_flue>},
    {"trade-common-vent", common_vent},
    {"trade-co-alarm", where_told<carbon_monoxide>},
    {"trade-trouble-found", trouble_found},
    {"flue-several-heaters", several_heaters},
    {"trade-inspect-yearly", looked_at},
    {"uk-co-alarm", carbon_monoxide_uk},
    {"uk-co-alarm-place", alarm_place_uk},
    {"smoke-alarm", smoke},
});

} // namespace

std::span<const Entry> air_checks() {
    return air_entries;
}

} // namespace fluewright::checking
