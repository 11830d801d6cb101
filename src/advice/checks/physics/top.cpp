#include "advice/checks/subject.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/physics/chimney_top.hpp"

namespace fluewright::checking {
namespace {

/// Of the gas where it leaves the last section.
double froude_of(const Case& c, const StateResult& state) {
    const Section& last = c.sections.back();
    const MarchResult& flow = state.flow;
    return chimney_top::froude(
        {.velocity_m_s = flow.top_velocity_m_s,
         .diameter_m = last.diameter_m,
         .gas_density_kg_m3 = flow.top_flow_kg_s / (flow.top_velocity_m_s * last.area_m2),
         .outdoor_density_kg_m3 =
             surroundings_of(c, state.weather, Fire::burning).outdoor_density_kg_m3});
}

} // namespace

/// The draft is computed for gas that fills the flue up to its top, in every state with a fire.
void top(Subject& s) {
    const double least = catalog::default_of(DefaultId::top_froude_least).value;
    for (const StateResult& state : s.view.states()) {
        if (fire_of(state.kind) != Fire::burning || !s.view.has(state)
            || state.flow.top_velocity_m_s <= 0.0) {
            continue;
        }
        const double froude = froude_of(s.resolved, state);
        CheckResult* f = s.hold(own("cold-air-falls-in-at-top"),
                                froude >= least,
                                {.kind = Kind::number,
                                 .figure = froude,
                                 .limit = least,
                                 .weight = 1.0 - froude / least},
                                {.section = nullptr, .place = "the chimney top", .state = &state});
        if (f != nullptr && s.with_words()) {
            f->message = "Gas leaves at " + s.show(state.flow.top_velocity_m_s, Kind::speed)
                         + ", a Froude number of " + format_number(froude, 2) + "; below "
                         + format_number(least, 2)
                         + " cold air enters beside it, and the computed draft is doubtful.";
        }
    }
}

} // namespace fluewright::checking
