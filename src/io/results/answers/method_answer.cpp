#include "fluewright/io/report/report_method.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/results.hpp"

namespace fluewright::results {

template <>
const Record<MethodCriterion>& record_of<MethodCriterion>() {
    static constexpr std::array<std::string_view, 2> relations{"<=", ">="};
    static const Record<MethodCriterion> record{
        "method_criterion",
        "a condition of the method: `have` against `want`",
        {{"symbols", "as its document writes it", &MethodCriterion::symbols},
         {"meaning", "in words", &MethodCriterion::meaning},
         {"have", "in `unit`", [](const MethodCriterion& c) { return if_finite(c.have); }},
         {"relation",
          Kind::number,
          "in which `have` must stand to `want`",
          [](const MethodCriterion& c) { return relations[c.at_most ? 0 : 1]; },
          relations},
         {"want", "in `unit`", [](const MethodCriterion& c) { return if_finite(c.want); }},
         {"unit", "SI unit; empty for a plain number", &MethodCriterion::unit},
         {"mark", "how the limit is known", &MethodCriterion::mark},
         {"counts", "decides the verdict", &MethodCriterion::counts},
         {"met", "the relation holds", [](const MethodCriterion& c) { return c.met(); }}}};
    return record;
}

template <>
const Record<MethodComparison>& record_of<MethodComparison>() {
    static const Record<MethodComparison> record{
        "method_comparison",
        "the same quantity by the method and by the full physics under the method's conditions",
        {{"what", "is compared", &MethodComparison::what},
         {"by_method",
          "in `unit`",
          [](const MethodComparison& c) { return if_finite(c.by_method); }},
         {"by_physics",
          "in `unit`",
          [](const MethodComparison& c) { return if_finite(c.by_physics); }},
         {"unit", "SI unit; empty for a plain number", &MethodComparison::unit}}};
    return record;
}

template <>
const Record<MethodTerm>& record_of<MethodTerm>() {
    static const Record<MethodTerm> record{
        "method_term",
        "a line of the calculation",
        {{"symbol", "of its document", &MethodTerm::symbol},
         {"meaning", "in words", &MethodTerm::meaning},
         {"value", "in `unit`", [](const MethodTerm& t) { return if_finite(t.value); }},
         {"unit", "SI unit; empty for a plain number", &MethodTerm::unit},
         {"mark", "how its coefficients are known", &MethodTerm::mark}}};
    return record;
}

template <>
const Record<MethodGroup>& record_of<MethodGroup>() {
    static const Record<MethodGroup> record{
        "method_group",
        "terms that belong together",
        {{"title", "in words", &MethodGroup::title},
         {"terms", "in the order of the calculation", &MethodGroup::terms}}};
    return record;
}

template <>
const Record<MethodFiring>& record_of<MethodFiring>() {
    static const Record<MethodFiring> record{
        "method_firing",
        "one output of the appliance",
        {{"name", "of the condition", &MethodFiring::name},
         {"criteria", "conditions of the method", &MethodFiring::criteria},
         {"comparisons", "with the full physics", &MethodFiring::comparisons},
         {"groups", "every term", &MethodFiring::groups}}};
    return record;
}

namespace {

struct MethodRow {
    const MethodResult& of;
    const MethodReportOptions& options;
};

template <class Member>
auto of(Member MethodResult::*member) {
    return [member](const MethodRow& m) -> const Member& { return m.of.*member; };
}

} // namespace

template <>
const Record<MethodRow>& record_of<MethodRow>() {
    static const Record<MethodRow> record{
        "method_answer",
        "a calculation by a named method, every line by the symbol its document uses",
        {{"dangers",
          "that stand in the run, which no method looks at: no fire before they are put right",
          [](const MethodRow& m) -> const std::vector<PresentDanger>& {
              return m.options.dangers;
          }},
         {"not_decided",
          "what leaves fire and carbon monoxide open; null where nothing does",
          [](const MethodRow& m) { return unless_empty(m.options.not_decided); }},
         {"id", "of the method", of(&MethodResult::id)},
         {"title", "of the method", of(&MethodResult::title)},
         {"known_from", "how its document is known", of(&MethodResult::known_from)},
         {"met",
          "every condition that counts is met",
          [](const MethodRow& m) { return m.of.met(); }},
         {"firings", "one for each output of the appliance", of(&MethodResult::firings)},
         {"notes",
          "what was chosen where the file or the document is silent",
          of(&MethodResult::notes)}}};
    return record;
}

const RecordInfo& method_result() {
    return record_of<MethodRow>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string method_json(const MethodResult& result,
                        std::span<const Assumption> assumptions,
                        const MethodReportOptions& options) {
    return results::answer_text("check",
                                options.input,
                                results::record_of<results::MethodRow>().json({result, options}),
                                assumptions);
}

} // namespace fluewright
