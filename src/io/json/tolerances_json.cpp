#include "tolerances_json.hpp"

namespace fluewright::report {
namespace {

using Json = json::Value;

Json inputs_json(const ToleranceStudy& study) {
    Json inputs = Json::array();
    for (const VariedInput& input : study.inputs) {
        inputs.push_back({{"pointer", input.pointer},
                          {"unit", si_unit(input.kind)},
                          {"value", input.value},
                          {"half_width", input.half_width}});
    }
    return inputs;
}

Json state_json(const Assessment& a, const ToleranceStudy& study, const StateSpread& s) {
    const StateResult& state = a.solution.states[s.state];
    Json shares = Json::array();
    for (std::size_t i = 0; i < study.inputs.size(); ++i) {
        shares.push_back({{"pointer", study.inputs[i].pointer}, {"first_order", s.first_order[i]}});
    }
    return {{"state", name(state.kind)},
            {"weather", a.installation.weathers[state.weather].name},
            {std::string{"spare"} + std::string{json_suffix(s.kind)},
             {{"as_written", s.as_written},
              {"percentile_5", s.low},
              {"median", s.median},
              {"percentile_95", s.high}}},
            {"passing_share", s.passing_share},
            {"inputs", std::move(shares)}};
}

} // namespace

Json tolerances_json(const Assessment& assessment, const ToleranceStudy& study) {
    Json states = Json::array();
    for (const StateSpread& spread : study.states) {
        states.push_back(state_json(assessment, study, spread));
    }
    const bool computed = study.runs > 0;
    return {{"runs", study.runs},
            {"refused", study.refused},
            {"refusal", study.refusal ? Json(study.refusal->message) : Json(nullptr)},
            {"seed", study.seed},
            {"distribution", "uniform"},
            {"inputs", inputs_json(study)},
            {"working_share", computed ? Json(study.working_share) : Json(nullptr)},
            {"tightest", computed ? Json(study.tightest) : Json(nullptr)},
            {"states", std::move(states)}};
}

} // namespace fluewright::report
