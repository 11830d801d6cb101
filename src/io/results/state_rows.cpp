#include "state_rows.hpp"

#include "io/text/words.hpp"
#include "verdict_rows.hpp"

#include <cmath>

namespace fluewright::results {
namespace {

using Maybe = std::optional<double>;

/// Of a state with a flow of its own.
Maybe of_flow(const StateRow& s, double value) {
    return s.is_solved() && std::isfinite(value) ? Maybe{value} : Maybe{};
}

/// Of a state with gas in it.
Maybe of_fire(const StateRow& s, double value) {
    return s.state.kind == StateKind::idle ? Maybe{} : of_flow(s, value);
}

/// The draft needed, where there is one: with the door shut and a fire under way.
Maybe needed_pa(const StateRow& s) {
    return s.is_door() || s.state.kind == StateKind::cold_start
               ? Maybe{}
               : of_fire(s, s.state.draft_needed_pa);
}

/// What is to spare, where the draft is held against the need: the air control open is where both
/// meet.
Maybe margin_pa(const StateRow& s) {
    return s.state.kind == StateKind::free_burn || !needed_pa(s) ? Maybe{}
                                                                 : of_fire(s, s.state.margin_pa());
}

} // namespace

template <>
const Record<StateRow>& record_of<StateRow>() {
    static const Record<StateRow> record{
        "state",
        "one condition in one weather",
        {{{"state", "condition"}, "condition", [](const StateRow& s) { return s.state.kind; }},
         {"weather",
          "name of the weather",
          [](const StateRow& s) -> const std::string& {
              return s.installation.weathers[s.state.weather].name;
          }},
         {"status",
          Kind::number,
          "whether run and appliance come into balance; else the figures are null. cannot vent: "
          "the gas "
          "would press out by more than 200 Pa, or be faster than 0.3 of sound",
          [](const StateRow& s) { return name(s.state.status); },
          status_words},
         {"harm",
          Kind::number,
          "kind of harm it is about",
          [](const StateRow& s) { return s.verdict.harm; },
          harm_words},
         {"counts",
          "whether it decides about that; other states inform only",
          [](const StateRow& s) { return s.verdict.counts; }},
         {"passes",
          "whether it gives what is required of it",
          [](const StateRow& s) { return s.verdict.passes; }},
         {{"relative_spare", "to spare"},
          "what is to spare over what is required, the same for drafts and doors",
          [](const StateRow& s) -> Maybe {
              const double spare = relative_spare(s.verdict, s.state);
              const bool told = s.is_solved() || s.verdict.kind != Kind::pressure;
              return told && std::isfinite(spare) ? Maybe{spare} : Maybe{};
          }},
         {{"burn_rate", "fuel"},
          Kind::mass_rate,
          "fuel burnt, as fired",
          [](const StateRow& s) { return of_fire(s, s.state.burn_rate_kg_s); }},
         {{"gas_flow", "gas"},
          Kind::gas_flow,
          "flue gas at the outlet",
          [](const StateRow& s) { return of_fire(s, s.state.gas_flow_kg_s); }},
         {{"gas_temperature", "outlet"},
          Kind::temperature,
          "gas at the outlet",
          [](const StateRow& s) { return of_fire(s, s.state.gas_temperature_k); }},
         {{"top_temperature", "top"},
          Kind::temperature,
          "gas at the chimney top",
          [](const StateRow& s) { return of_fire(s, s.state.flow.top_temperature_k); }},
         {{"top_velocity", "speed"},
          Kind::speed,
          "speed of the gas at the chimney top",
          [](const StateRow& s) { return of_fire(s, s.state.flow.top_velocity_m_s); }},
         {"draft",
          Kind::pressure,
          "pressure in the flue at the outlet below that of the room",
          [](const StateRow& s) { return of_flow(s, s.state.draft_pa); }},
         {{"draft_needed", "required"},
          Kind::pressure,
          "draft the appliance requires; null with the door open and in a cold start",
          needed_pa},
         Column<StateRow>{"margin",
                          Kind::pressure,
                          "draft less the required draft; null where it is not held against that",
                          margin_pa}
             .with_sign(),
         {"capacity",
          Kind::mass_rate,
          "with the air control open: the highest burn rate that the run vents at the required "
          "draft",
          [](const StateRow& s) {
              return s.state.kind == StateKind::free_burn ? Maybe{s.state.capacity_kg_s} : Maybe{};
          }},
         {{"opening_share", "may be opened"},
          "with the door open: share of its opening over which the smoke stays in; over 1: all of "
          "it",
          [](const StateRow& s) {
              return s.is_door() && std::isfinite(s.state.door.opening_share)
                         ? Maybe{s.state.door.opening_share}
                         : Maybe{};
          }}}};
    return record;
}

std::vector<StateRow> state_rows(const Case& installation, const Score& score) {
    std::vector<StateRow> rows;
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        rows.push_back({installation, score.states[i], score.verdicts[i]});
    }
    return rows;
}

} // namespace fluewright::results
