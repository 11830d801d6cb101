#include "fluewright/io/report/report_method.hpp"
#include "io/json/json_text.hpp"
#include "json_number.hpp"

namespace fluewright {
namespace {

using Json = json::Value;
using report::json_number;

constexpr int method_schema = 1;

Json firing_json(const MethodFiring& firing) {
    Json criteria = Json::array();
    for (const MethodCriterion& c : firing.criteria) {
        criteria.push_back({{"symbols", c.symbols},
                            {"meaning", c.meaning},
                            {"have", json_number(c.have)},
                            {"relation", c.at_most ? "<=" : ">="},
                            {"want", json_number(c.want)},
                            {"unit", c.unit},
                            {"mark", c.mark},
                            {"counts", c.counts},
                            {"met", c.met()}});
    }
    Json comparisons = Json::array();
    for (const MethodComparison& c : firing.comparisons) {
        comparisons.push_back({{"what", c.what},
                               {"by_method", json_number(c.by_method)},
                               {"by_physics", json_number(c.by_physics)},
                               {"unit", c.unit}});
    }
    Json groups = Json::array();
    for (const MethodGroup& group : firing.groups) {
        Json terms = Json::array();
        for (const MethodTerm& t : group.terms) {
            terms.push_back({{"symbol", t.symbol},
                             {"meaning", t.meaning},
                             {"value", json_number(t.value)},
                             {"unit", t.unit},
                             {"mark", t.mark}});
        }
        groups.push_back({{"title", group.title}, {"terms", std::move(terms)}});
    }
    return {{"name", firing.name},
            {"criteria", std::move(criteria)},
            {"comparisons", std::move(comparisons)},
            {"groups", std::move(groups)}};
}

} // namespace

std::string method_json(const MethodResult& result, const MethodReportOptions& options) {
    Json firings = Json::array();
    for (const MethodFiring& firing : result.firings) {
        firings.push_back(firing_json(firing));
    }
    const Json whole{
        {"schema", method_schema},
        {"program", {{"name", "fluewright"}, {"version", options.version}}},
        {"file", options.file},
        {"method", {{"id", result.id}, {"title", result.title}, {"standing", result.standing}}},
        {"met", result.met()},
        {"firings", std::move(firings)},
        {"notes", result.notes}};
    return json::indented_text(whole) + '\n';
}

} // namespace fluewright
