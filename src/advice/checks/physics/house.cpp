#include "advice/checks/subject.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::checking {
namespace {

/// Whether the room of a state is that of a fire as it burns. An open fire takes what its flue
/// draws and no more, so the air its opening would take is drawn from no room.
bool tells_the_room(const Subject& s, const StateResult& state) {
    return has_open_front(s.resolved.appliance) ? state.kind == StateKind::door_open_high
                                                : is_held_fire(state.kind);
}

/// Words on the opening that brings the room up to `wanted_pa`.
std::string opening_words(Subject& s, const StateResult& state, double wanted_pa) {
    // An opening brings the room towards outdoor pressure, never past it, and the last tenth of a
    // pascal would take a barn door.
    constexpr double nearest_pa = -0.1;
    const Surroundings around = surroundings_of(s.resolved, state.weather, Fire::burning);
    if (!around.house.known()) {
        return "Stop fans, open a window near the appliance, or fit an air inlet. Describe the "
               "house in `site` to learn its size.";
    }
    if (wanted_pa > nearest_pa) {
        return "No air inlet alone is enough: the draft is short even with the room at outdoor "
               "pressure. "
               + std::string{s.resolved.house.fans_may_run()
                                 ? "Stop fans first, then insulate the flue or raise it."
                                 : "Insulate the flue or raise it."};
    }
    const double area_m2 = around.house.inlet_area_m2(wanted_pa, state.room.taken_kg_s);
    return "An opening to outdoors of " + s.show(area_m2, Kind::area)
           + " at the height of the outlet, out of the wind, brings the room to "
           + s.show(wanted_pa, Kind::pressure)
           + (s.resolved.house.fans_may_run() ? "; so does stopping fans." : ".");
}

/// Too low for the draft, for the trade, or for any heater: the worst of them, once.
void low_room(Subject& s, const StateResult& state) {
    const double room_pa = state.room.pressure_pa;
    const double usual_pa = catalog::default_of(DefaultId::room_pressure_lowest_pa).value;
    const double danger_pa = catalog::default_of(DefaultId::room_pressure_danger_pa).value;
    constexpr double rounding_pa = 1e-6;
    const double short_pa = is_held_fire(state.kind) ? std::max(0.0, -state.margin_pa()) : 0.0;
    const bool decides = short_pa > 0.0 && short_pa <= -room_pa;
    const bool dangerous = room_pa < danger_pa - rounding_pa;
    // Each is put into words before the next is held: results move as they grow.
    const auto hold = [&](std::size_t row,
                          bool met,
                          double limit_pa,
                          std::string_view told,
                          std::string_view first) {
        CheckResult* f = s.hold(row,
                                met,
                                {.kind = Kind::pressure,
                                 .figure = room_pa,
                                 .limit = limit_pa,
                                 .weight = (limit_pa - room_pa) / -usual_pa},
                                {.section = nullptr, .place = "the room", .state = &state});
        if (f != nullptr && s.with_words()) {
            f->message = "The room is " + s.show(-room_pa, Kind::pressure)
                         + " below outdoors, and that is taken off the draft" + std::string{told};
            // A little more than what lacks: an opening that leaves the draft just short helps
            // nobody.
            constexpr double spare_pa = 0.25;
            const double wanted_pa = short_pa > 0.0 ? room_pa + short_pa + spare_pa : room_pa;
            f->remedy = std::string{first} + opening_words(s, state, std::max(usual_pa, wanted_pa));
        }
    };
    hold(own("room-far-below-outdoors"),
         !dangerous,
         danger_pa,
         ".",
         "Light no fire at this room pressure. ");
    hold(own("house-pulls-on-the-flue"),
         dangerous || decides || room_pa >= usual_pa - rounding_pa,
         usual_pa,
         ".",
         "");
    hold(own("house-starves-the-fire"),
         !decides,
         room_pa + short_pa,
         ". Without it the draft would be enough.",
         "");
}

/// A room that was measured below the limit, whatever the file lets compute.
void measured_room(Subject& s) {
    const double danger_pa = catalog::default_of(DefaultId::room_pressure_danger_pa).value;
    for (const Observation& seen : s.view.written.observed) {
        if (!seen.room_pressure_pa) {
            continue;
        }
        const double room_pa = *seen.room_pressure_pa;
        CheckResult* f = s.hold(own("room-far-below-outdoors"),
                                room_pa >= danger_pa,
                                {.kind = Kind::pressure,
                                 .figure = room_pa,
                                 .limit = danger_pa,
                                 .weight = (danger_pa - room_pa) / -danger_pa},
                                {.section = nullptr, .place = "the room"});
        if (f != nullptr && s.with_words()) {
            f->message =
                "The room was measured " + s.show(-room_pa, Kind::pressure) + " below outdoors.";
            f->remedy = "Light no fire at this room pressure. Stop fans, let air in near the "
                        "appliance, and measure again with no fire.";
        }
    }
}

void fans(Subject& s, const StateResult& state) {
    const HouseCase& house = s.resolved.house;
    if (!house.known || house.exhaust_m3_s <= 0.0
        || !(is_held_fire(state.kind) || state.kind == StateKind::idle)) {
        return;
    }
    const double without_pa =
        state.draft_pa + state.room.pressure_without_fans_pa - state.room.pressure_pa;
    if (without_pa < 0.0) {
        return; // not the doing of the fans
    }
    // Dying embers still turn a flue that the fans push down only a little.
    const double harmless_pa = catalog::default_of(DefaultId::idle_fan_reversal_danger_pa).value;
    const bool idle = state.kind == StateKind::idle;
    const auto hold = [&](std::size_t row, double limit_pa) {
        return s.hold(row,
                      state.draft_pa >= limit_pa,
                      {.kind = Kind::pressure,
                       .figure = state.draft_pa,
                       .limit = limit_pa,
                       .weight = limit_pa - state.draft_pa},
                      {.section = nullptr, .place = "the outlet", .state = &state});
    };
    const double dangerous_pa = idle ? -harmless_pa : 0.0;
    CheckResult* f = hold(own("fan-reverses-flue"), dangerous_pa);
    if (idle && state.draft_pa >= dangerous_pa) {
        f = hold(own("fan-reverses-idle-flue"), 0.0);
    }
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "With the fans running, air comes down the flue with "
                 + s.show(-state.draft_pa, Kind::pressure) + "; with the fans off it draws "
                 + s.show(without_pa, Kind::pressure) + ".";
}

void gusts(Subject& s, const StateResult& state) {
    if (!is_held_fire(state.kind) || s.resolved.top_wind_coefficient <= 0.0) {
        return;
    }
    const double factor = catalog::default_of(DefaultId::wind_gust_factor).value;
    const double mean_pa = s.wind_on_top_pa(state);
    if (mean_pa <= 0.0) {
        return; // a calm is no proof against wind
    }
    const double in_gust_pa = state.draft_pa - mean_pa * (factor * factor - 1.0);
    CheckResult* f =
        s.hold(own("downdraft-in-wind"),
               in_gust_pa >= 0.0,
               {.kind = Kind::pressure, .figure = in_gust_pa, .limit = 0.0, .weight = -in_gust_pa},
               {.section = nullptr, .place = "the chimney top", .state = &state});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "The wind pushes down on the chimney top with " + s.show(mean_pa, Kind::pressure)
                 + " and in gusts with " + s.show(mean_pa * factor * factor, Kind::pressure)
                 + "; that leaves a draft of " + s.show(in_gust_pa, Kind::pressure)
                 + " at the outlet.";
}

/// Air through joints, the openings of regulators and hoods left out.
void leaking_joints(Subject& s, const StateResult& state) {
    const double most = catalog::default_of(DefaultId::joint_leak_share_most).value;
    double in_kg_s = 0.0;
    const Station* worst = nullptr;
    for (const Station& station : state.stations) {
        if (s.resolved.sections[station.section].opening_m2 > 0.0) {
            continue;
        }
        in_kg_s += std::max(0.0, station.leak_kg_s);
        if (worst == nullptr || station.leak_kg_s > worst->leak_kg_s) {
            worst = &station;
        }
    }
    const double share = in_kg_s / state.gas_flow_kg_s;
    if (worst == nullptr) {
        return;
    }
    const Section& section = s.resolved.sections[worst->section];
    CheckResult* f = s.hold(
        own("joint-leak-dilutes"),
        share <= most,
        {.kind = Kind::fraction, .figure = share, .limit = most, .weight = share / most - 1.0},
        {.section = &section, .place = {}, .state = &state});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = "The joints draw " + s.show(in_kg_s, Kind::gas_flow) + " of air into "
                 + s.show(state.gas_flow_kg_s, Kind::gas_flow) + " of gas, most of it under "
                 + f->place + ": the flue is colder for it.";
}

void spilling_hood(Subject& s, const StateResult& state) {
    for (const Station& station : state.stations) {
        const Section& section = s.resolved.sections[station.section];
        if (section.kind != PartKind::draft_hood) {
            continue;
        }
        CheckResult* f = s.hold(own("hood-spills"),
                                station.leak_kg_s >= 0.0,
                                {.kind = Kind::gas_flow,
                                 .figure = -station.leak_kg_s,
                                 .limit = 0.0,
                                 .weight = -station.leak_kg_s / state.gas_flow_kg_s},
                                {.section = &section, .place = {}, .state = &state});
        if (f == nullptr || !s.with_words()) {
            continue;
        }
        f->message = s.show(-station.leak_kg_s, Kind::gas_flow) + " of the "
                     + s.show(state.gas_flow_kg_s, Kind::gas_flow)
                     + " of gas spills from the hood into the room.";
    }
}

} // namespace

void house(Subject& s) {
    measured_room(s);
    for (const StateResult& state : s.view.states()) {
        if (tells_the_room(s, state) && !is_open(s.resolved.shelter)) {
            low_room(s, state);
        }
        fans(s, state);
        gusts(s, state);
        if (is_held_fire(state.kind)) {
            leaking_joints(s, state);
            spilling_hood(s, state);
        }
    }
}

} // namespace fluewright::checking
