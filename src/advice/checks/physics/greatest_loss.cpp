#include "greatest_loss.hpp"

#include <algorithm>
#include <array>

namespace fluewright::checking {
namespace {

/// What a fitting takes: its loss coefficient times the velocity head in it.
double lost_pa(const Section& section, const Station& station) {
    return section.loss * 0.5 * station.flow_kg_s / section.area_m2 * station.velocity_m_s;
}

} // namespace

GreatestLoss greatest_loss(const Subject& subject, const StateResult& state) {
    const MarchResult& flow = state.flow;
    const std::array<GreatestLoss, 4> losses{
        {{.by = Taker::friction, .what = "friction in the pipe", .pa = flow.friction_pa},
         {.by = Taker::fittings, .what = "turns, cap and other fittings", .pa = flow.fittings_pa},
         {.by = Taker::room, .what = "the room is below outdoors", .pa = -state.room.pressure_pa},
         {.by = Taker::wind,
          .what = "the wind pushes down on the chimney top",
          .pa = subject.wind_on_top_pa(state)}}};
    GreatestLoss most =
        *std::max_element(losses.begin(),
                          losses.end(),
                          [](const GreatestLoss& a, const GreatestLoss& b) { return a.pa < b.pa; });
    if (most.by != Taker::fittings) {
        return most;
    }
    for (const Station& station : state.stations) {
        const Section& section = subject.resolved.sections[station.section];
        const double pa = lost_pa(section, station);
        if (section.length_m <= 0.0 && pa > 0.5 * flow.fittings_pa && pa > most.fitting_pa) {
            most.fitting = &section;
            most.fitting_pa = pa;
        }
    }
    return most;
}

} // namespace fluewright::checking
