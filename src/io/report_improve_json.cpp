#include "csv_text.hpp"
#include "fluewright/io/report_improve.hpp"
#include "report_words.hpp"

#include <array>
#include <cmath>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace fluewright {
namespace {

using Json = nlohmann::ordered_json;

constexpr int schema = 1;
constexpr int indent = 2;

Json number(double value) {
    return std::isfinite(value) ? Json(value) : Json(nullptr);
}

std::string_view outcome_name(Improvement::Outcome outcome) {
    constexpr std::array<std::string_view, 4> names{
        "leave alone", "one change cures", "two changes cure", "hopeless"};
    return names[static_cast<std::size_t>(outcome)];
}

Json states_json(const Case& c, const Score& scored) {
    Json states = Json::array();
    for (std::size_t i = 0; i < scored.states.size(); ++i) {
        const StateResult& state = scored.states[i];
        const StateVerdict& verdict = scored.verdicts[i];
        const bool door = report::is_door_open(state.kind);
        states.push_back({{"state", name(state.kind)},
                          {"weather", c.weathers[state.weather].name},
                          {"passes", verdict.passes},
                          {"draft_pa", number(state.draft_pa)},
                          {"draft_needed_pa", door ? Json() : number(state.draft_needed_pa)},
                          {"opening_share", door ? number(state.door.opening_share) : Json()},
                          {"spare", number(verdict.spare)},
                          {"relative_spare", number(relative_spare(verdict, state))},
                          {"mouth_temperature_k", number(state.flow.mouth_temperature_k)},
                          {"mouth_velocity_m_s", number(state.flow.mouth_velocity_m_s)}});
    }
    return states;
}

Json ids(const std::vector<const FindingInfo*>& findings) {
    Json list = Json::array();
    for (const FindingInfo* info : findings) {
        list.push_back(info->id);
    }
    return list;
}

Json plan_json(const Case& c, const Plan& plan) {
    Json steps = Json::array();
    for (const Remedy& remedy : plan.steps) {
        steps.push_back({{"remedy", effort_of(remedy.kind).id},
                         {"what", remedy.what},
                         {"place", remedy.place},
                         {"length_m", number(remedy.length_m)},
                         {"cost", number(remedy.effort)},
                         {"look_at", effort_of(remedy.kind).may_worsen}});
    }
    return {{"rank", plan.rank},
            {"steps", std::move(steps)},
            {"cost", number(plan.cost)},
            {"gain", number(plan.gain)},
            {"cures", plan.cures},
            {"too_strong", plan.too_strong},
            {"on_front", plan.on_front},
            {"least_relative_spare", number(plan.score.least_spare)},
            {"limiting_state", plan.score.limiting},
            {"states", states_json(c, plan.score)},
            {"findings_raised", ids(plan.raised)},
            {"findings_cleared", ids(plan.cleared)},
            {"may_worsen", plan.worsens}};
}

void append_csv(std::string& out, const Case& c, const Score& scored, std::string_view head) {
    for (std::size_t i = 0; i < scored.states.size(); ++i) {
        const StateResult& state = scored.states[i];
        const StateVerdict& verdict = scored.verdicts[i];
        const bool door = report::is_door_open(state.kind);
        out += fmt::format("{},{},{},{},{},{},{},{},{}\r\n",
                           head,
                           csv_field(name(state.kind)),
                           csv_field(c.weathers[state.weather].name),
                           verdict.passes ? "yes" : "no",
                           state.draft_pa,
                           door ? "" : fmt::format("{}", state.draft_needed_pa),
                           door ? fmt::format("{}", state.door.opening_share) : "",
                           relative_spare(verdict, state),
                           state.flow.mouth_temperature_k);
    }
}

} // namespace

std::string
improvement_json(const Improvement& improvement, std::string_view version, std::string_view file) {
    const Case& c = improvement.present.installation;
    Json plans = Json::array();
    for (const Plan& plan : improvement.plans) {
        plans.push_back(plan_json(c, plan));
    }
    const Json whole{
        {"schema", schema},
        {"program", "fluewright"},
        {"version", version},
        {"file", file},
        {"title", c.title},
        {"outcome", outcome_name(improvement.outcome)},
        {"goal", improvement.goal == Goal::more_to_spare ? "more to spare" : "less draft"},
        {"sentence", improvement.sentence},
        {"reason", improvement.reason},
        {"present",
         {{"works", improvement.present.works},
          {"sentence", improvement.present.sentence},
          {"least_relative_spare", number(improvement.score.least_spare)},
          {"states", states_json(c, improvement.score)}}},
        {"cost_unit", improvement.currency.empty() ? "effort" : improvement.currency},
        {"runs_solved", improvement.tried},
        {"unpriced", improvement.unpriced},
        {"plans", std::move(plans)}};
    return whole.dump(indent, ' ', false, Json::error_handler_t::replace) + '\n';
}

std::string improvement_csv(const Improvement& improvement) {
    const Case& c = improvement.present.installation;
    std::string out = "rank,remedies,cost,gain,cures,on_front,state,weather,passes,draft_pa,"
                      "draft_needed_pa,opening_share,relative_spare,mouth_temperature_k\r\n";
    append_csv(out, c, improvement.score, "0,as it stands,0,0,,");
    for (const Plan& plan : improvement.plans) {
        std::string remedies;
        for (const Remedy& remedy : plan.steps) {
            remedies += (remedies.empty() ? "" : " + ") + std::string{effort_of(remedy.kind).id};
        }
        append_csv(out,
                   c,
                   plan.score,
                   fmt::format("{},{},{},{},{},{}",
                               plan.rank,
                               csv_field(remedies),
                               plan.cost,
                               plan.gain,
                               plan.cures ? "yes" : "no",
                               plan.on_front ? "yes" : "no"));
    }
    return out;
}

} // namespace fluewright
