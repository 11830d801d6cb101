#include "score_json.hpp"

#include "io/text/csv_text.hpp"
#include "io/text/words.hpp"
#include "json_number.hpp"

#include <fmt/core.h>

namespace fluewright::report {

using Json = json::Value;

Json score_json(const Case& resolved, const Score& score) {
    Json states = Json::array();
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        const StateResult& state = score.states[i];
        const StateVerdict& verdict = score.verdicts[i];
        const bool door = is_door_open(state.kind);
        states.push_back({{"state", fluewright::name(state.kind)},
                          {"weather", resolved.weathers[state.weather].name},
                          {"passes", verdict.passes},
                          {"draft_pa", json_number(state.draft_pa)},
                          {"draft_needed_pa", door ? Json() : json_number(state.draft_needed_pa)},
                          {"opening_share", door ? json_number(state.door.opening_share) : Json()},
                          {"relative_spare", json_number(relative_spare(verdict, state))},
                          {"mouth_temperature_k", json_number(state.flow.mouth_temperature_k)},
                          {"mouth_velocity_m_s", json_number(state.flow.mouth_velocity_m_s)}});
    }
    return states;
}

std::string_view score_csv_heading() {
    return "state,weather,passes,draft_pa,draft_needed_pa,opening_share,relative_spare,"
           "mouth_temperature_k,mouth_velocity_m_s";
}

void append_score_csv(std::string& out,
                      const Case& resolved,
                      const Score& score,
                      std::string_view head) {
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        const StateResult& state = score.states[i];
        const StateVerdict& verdict = score.verdicts[i];
        const bool door = is_door_open(state.kind);
        out += fmt::format("{},{},{},{},{},{},{},{},{},{}\r\n",
                           head,
                           csv_field(fluewright::name(state.kind)),
                           csv_field(resolved.weathers[state.weather].name),
                           verdict.passes ? "yes" : "no",
                           state.draft_pa,
                           door ? "" : fmt::format("{}", state.draft_needed_pa),
                           door ? fmt::format("{}", state.door.opening_share) : "",
                           relative_spare(verdict, state),
                           state.flow.mouth_temperature_k,
                           state.flow.mouth_velocity_m_s);
    }
}

} // namespace fluewright::report
