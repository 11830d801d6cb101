#include "assumptions_json.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "io/json/json_text.hpp"
#include "json_number.hpp"

#include <array>

namespace fluewright {
namespace {

using Json = json::Value;
using report::json_number;

constexpr int diagnosis_schema = 1;

Kind kind_named(std::string_view word) {
    for (const Kind kind : all_kinds()) {
        if (name(kind) == word) {
            return kind;
        }
    }
    return Kind::number;
}

Json causes_json(const Explanation& e) {
    Json list = Json::array();
    for (const SizedCause& sized : e.causes) {
        Json json{{"id", sized.cause->id},
                  {"title", sized.cause->title},
                  {"kind", sized.cause->kind},
                  {"place", sized.place.empty() ? Json(nullptr) : Json(sized.place)}};
        json["size"] = nullptr;
        if (sized.has_size) {
            const std::string suffix{json_suffix(kind_named(sized.cause->size_kind))};
            json["size"] = {{"median" + suffix, json_number(sized.size)},
                            {"low" + suffix, json_number(sized.size_low)},
                            {"high" + suffix, json_number(sized.size_high)},
                            {"words", sized.size_words}};
        }
        list.push_back(std::move(json));
    }
    return list;
}

Json cured_json(const Cured* cured) {
    if (cured == nullptr) {
        return nullptr;
    }
    return {{"works", cured->works},
            {"state", cured->state},
            {"draft_pa", json_number(cured->draft_pa)},
            {"draft_needed_pa", json_number(cured->draft_needed_pa)},
            {"margin_pa", json_number(cured->margin_pa())},
            {"door_opening_share", json_number(cured->opening_share)}};
}

Json explanation_json(const Explanation& e) {
    Json bearings = Json::array();
    for (const Bearing& bearing : e.bearings) {
        bearings.push_back(
            {{"seen", bearing.seen}, {"likelier_times", json_number(bearing.likelier_times)}});
    }
    return {{"probability", json_number(e.probability)},
            {"title", e.title},
            {"causes", causes_json(e)},
            {"mechanism", e.mechanism},
            {"bearings", std::move(bearings)},
            {"remedy", e.remedy},
            {"cured", cured_json(e.cured ? &*e.cured : nullptr)},
            {"confirm", e.confirm == nullptr ? Json(nullptr) : Json(e.confirm->id)}};
}

Json check_json(const NextCheck& check) {
    Json expected = Json::array();
    for (const Expectation& e : check.expected) {
        expected.push_back({{"cause", e.cause}, {"answer", e.words}});
    }
    return {{"id", check.check->id},
            {"title", check.check->title},
            {"how", check.check->how},
            {"place", check.place.empty() ? Json(nullptr) : Json(check.place)},
            {"effort", json_number(check.check->effort)},
            {"bits", json_number(check.bits)},
            {"worth", json_number(check.worth)},
            {"expected", std::move(expected)},
            {"entry", json::value_of(write_observation(check.entry, UnitSystem::metric))}};
}

} // namespace

std::string diagnosis_json(const Diagnosis& d, const DiagnosisReportOptions& options) {
    Json seen = Json::array();
    for (const SeenFact& fact : d.seen) {
        seen.push_back({{"words", fact.words},
                        {"expected", fact.expected.empty() ? Json(nullptr) : Json(fact.expected)},
                        {"fits", fact.fits}});
    }
    Json explanations = Json::array();
    for (const Explanation& e : d.explanations) {
        explanations.push_back(explanation_json(e));
    }
    Json checks = Json::array();
    for (const NextCheck& check : d.checks) {
        checks.push_back(check_json(check));
    }
    Json better;
    if (d.better) {
        better = {{"steps", d.better->steps}, {"outcome", cured_json(&d.better->outcome)}};
    }
    const Json whole{{"schema", diagnosis_schema},
                     {"program", {{"name", "fluewright"}, {"version", options.version}}},
                     {"file", options.file},
                     {"title", d.title},
                     {"urgent", d.urgent},
                     {"sentence", d.sentence},
                     {"design_probability", json_number(d.design_probability)},
                     {"design_explains", d.design_explains},
                     {"nothing_explains", d.nothing_explains},
                     {"seen", std::move(seen)},
                     {"explanations", std::move(explanations)},
                     {"checks", std::move(checks)},
                     {"better_design", std::move(better)},
                     {"assumptions", report::assumptions_json(d.assumptions)},
                     {"cautions", cautions()}};
    return json::indented_text(whole) + '\n';
}

} // namespace fluewright
