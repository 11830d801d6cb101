#include "rule_check.hpp"

#include <algorithm>
#include <array>

/// Air for the fire, the room, and alarms.
namespace fluewright::checking {
namespace {

constexpr std::string_view not_solid = "for solid fuel only";

Verdict room_least(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    const Given& volume = view.written.site.room.volume_m3;
    return volume ? at_least(view, *volume, rule.figure, Kind::volume, "room")
                  : unknown({"/site/room/volume"});
}

/// Met by a large room or by an opening to outdoors, each in proportion to the output.
Verdict room_or_inlet(const View& view, double volume_m3, double inlet_m2, std::string_view rule) {
    const Given& volume = view.written.site.room.volume_m3;
    const Given& inlet = view.written.site.air_inlet_m2;
    if (volume && reaches(*volume, volume_m3, Kind::volume)) {
        return at_least(view, *volume, volume_m3, Kind::volume, "room");
    }
    if (inlet && *inlet > 0.0 && reaches(*inlet, inlet_m2, Kind::area)) {
        return at_least(view, *inlet, inlet_m2, Kind::area, "air inlet");
    }
    if (volume && inlet) {
        return at_least(view, *volume, volume_m3, Kind::volume, "room " + std::string{rule});
    }
    return unknown({volume ? "/site/air_inlet" : "/site/room/volume"});
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

Verdict inlet_uk(const View& view, const catalog::Rule& rule) {
    constexpr double tight_m2_per_kw = 0.00085;
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    const Given& inlet = view.written.site.air_inlet_m2;
    double limit_m2 = 0.0;
    if (view.fireplace()) {
        double flue_m2 = 0.0;
        for (const Piece& piece : view.pieces) {
            flue_m2 = std::max(flue_m2, piece.has_length() ? piece.section->area_m2 : 0.0);
        }
        limit_m2 = 0.5 * flue_m2;
    } else {
        const Flag& tight = view.written.site.tight_house;
        const double loose_m2 = rule.figure * std::max(0.0, view.output_kw() - rule.second);
        const double tight_m2 = tight_m2_per_kw * view.output_kw();
        if (!tight) {
            // The answer is known all the same where both kinds of house give the same.
            if (inlet && reaches(*inlet, tight_m2, Kind::area)) {
                return at_least(view, *inlet, tight_m2, Kind::area, "air inlet");
            }
            if (inlet && !reaches(*inlet, loose_m2, Kind::area)) {
                return at_least(view, *inlet, loose_m2, Kind::area, "air inlet");
            }
            return unknown({"/site/tight_house"});
        }
        limit_m2 = *tight ? tight_m2 : loose_m2;
    }
    if (limit_m2 <= 0.0) {
        return not_here("a heater of 5 kW or less in a house that is not tight");
    }
    return inlet ? at_least(view, *inlet, limit_m2, Kind::area, "air inlet")
                 : unknown({"/site/air_inlet"});
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
                            + view.show(rule.figure, Kind::pressure) + " is asked");
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
                           : unknown({"/appliance/damper_allowed"});
        }
    }
    return not_here("no draft regulator behind a wood fire");
}

Verdict carbon_monoxide(const View& view, const catalog::Rule& /*rule*/) {
    const Flag& alarm = view.written.site.alarms.carbon_monoxide;
    return alarm ? decided(*alarm, *alarm ? "there is an alarm" : "there is no alarm")
                 : unknown({"/site/alarms/carbon_monoxide"});
}

Verdict carbon_monoxide_uk(const View& view, const catalog::Rule& rule) {
    const Alarms& alarms = view.written.site.alarms;
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    if (!alarms.carbon_monoxide || (*alarms.carbon_monoxide && !alarms.distance_m)) {
        return unknown(
            {alarms.carbon_monoxide ? "/site/alarms/distance" : "/site/alarms/carbon_monoxide"});
    }
    if (!*alarms.carbon_monoxide) {
        return decided(false, "there is no alarm");
    }
    return *alarms.distance_m > rule.second
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

constexpr auto entries = std::to_array<Entry>({
    {"room-min-volume", room_least},
    {"air-gas-yardstick", gas_yardstick},
    {"de-room-air", room_de},
    {"uk-air-supply", inlet_uk},
    {"de-fan-interlock", fans_de, Needs::solution},
    {"connector-draft-regulator", regulator},
    {"co-alarm", carbon_monoxide},
    {"uk-co-alarm", carbon_monoxide_uk},
    {"smoke-alarm", smoke},
});

} // namespace

std::span<const Entry> air_checks() {
    return entries;
}

} // namespace fluewright::checking
