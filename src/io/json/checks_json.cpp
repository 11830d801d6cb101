#include "checks_json.hpp"

#include "json_number.hpp"

namespace fluewright::report {
namespace {

using Json = json::Value;

Json part_of(int part) {
    return part < 0 ? Json(nullptr) : Json(part + 1);
}

Json null_if_empty(std::string_view word) {
    return word.empty() ? Json(nullptr) : Json(word);
}

/// Adds figure and limit, with the unit in the key.
void add_figures(const std::optional<double>& figure,
                 const std::optional<double>& limit,
                 Kind kind,
                 Json& one) {
    one["figure" + std::string{json_suffix(kind)}] = json_number(figure);
    one["limit" + std::string{json_suffix(kind)}] = json_number(limit);
}

Json check_result_json(const CheckResult& r) {
    const fluewright::Check& check = *r.check;
    Json one{{"check", check.id},
             {"matter", check.matter->id},
             {"basis", name(check.basis)},
             {"body", check.basis == Basis::body ? Json(check.body) : Json(nullptr)},
             {"advice", check.advice},
             {"severity", name(check.severity)},
             {"outcome", name(r.outcome)},
             {"place", r.place},
             {"part", part_of(r.part)},
             {"state", r.state},
             {"message", r.message}};
    add_figures(r.figure, r.limit, r.kind, one);
    one["missing"] = r.missing;
    one["rule"] = check.rule;
    one["applies"] = check.applies;
    one["source"] = check.source;
    one["mark"] = check.mark;
    one["disagrees"] = null_if_empty(check.disagrees);
    return one;
}

} // namespace

Json checks_json(const Assessment& a) {
    Json results = Json::array();
    for (const CheckResult& r : a.checks) {
        results.push_back(check_result_json(r));
    }
    return {{"body", a.body->id},
            {"name", a.body->name},
            {"who_decides", a.body->decides},
            {"not_met", count_of(a.checks, CheckOutcome::not_met)},
            {"undetermined", count_of(a.checks, CheckOutcome::undetermined)},
            {"met", count_of(a.checks, CheckOutcome::met)},
            {"does_not_apply", count_of(a.checks, CheckOutcome::does_not_apply)},
            {"results", std::move(results)}};
}

Json findings_json(const Findings& findings) {
    Json list = Json::array();
    for (const Finding& f : findings) {
        Json sources = Json::array();
        for (const CheckResult& source : f.sources) {
            sources.push_back(check_result_json(source));
        }
        Json one{{"id", f.matter->id},
                 {"severity", name(f.severity)},
                 {"title", f.matter->title},
                 {"place", f.place},
                 {"part", part_of(f.part)},
                 {"state", f.state},
                 {"message", f.message},
                 {"remedy", f.remedy.empty() ? std::string{f.matter->remedy} : f.remedy}};
        add_figures(f.figure, f.limit, f.kind, one);
        one["sources"] = std::move(sources);
        list.push_back(std::move(one));
    }
    return list;
}

} // namespace fluewright::report
