#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/results.hpp"

#include <algorithm>

namespace fluewright::results {
namespace {

struct CauseSizeRow {
    const SizedCause& of;

    [[nodiscard]] std::string_view unit() const {
        const auto kinds = all_kinds();
        const auto kind = std::find_if(kinds.begin(), kinds.end(), [this](Kind each) {
            return name(each) == of.cause->size_kind;
        });
        return kind == kinds.end() ? std::string_view{} : si_unit(*kind);
    }
};

/// Only a solved state has a draft to tell.
std::optional<double> of_solved(const Cured& cured, double value) {
    return cured.status == Status::solved ? if_finite(value) : std::nullopt;
}

constexpr std::string_view place_meaning = "in words; null where it has none";

} // namespace

template <>
const Record<CauseSizeRow>& record_of<CauseSizeRow>() {
    static const Record<CauseSizeRow> record{
        "cause_size",
        "how great a cause is",
        {{"median", "in `unit`", [](const CauseSizeRow& s) { return if_finite(s.of.size); }},
         {"low",
          "beginning of the range that holds it with 90 %",
          [](const CauseSizeRow& s) { return if_finite(s.of.size_low); }},
         {"high",
          "end of that range",
          [](const CauseSizeRow& s) { return if_finite(s.of.size_high); }},
         {"unit", "SI unit; empty for a share", [](const CauseSizeRow& s) { return s.unit(); }},
         {"words", "the same in words", [](const CauseSizeRow& s) -> decltype(auto) {
              return (s.of.size_words);
          }}}};
    return record;
}

template <>
const Record<SizedCause>& record_of<SizedCause>() {
    static constexpr std::array<std::string_view, 3> kinds{"none", "hidden", "design"};
    static const Record<SizedCause> record{
        "cause",
        "a fault that could explain what was observed",
        {{"id",
          "`fluewright explain` has its page",
          [](const SizedCause& c) { return c.cause->id; }},
         {"title", "in words", [](const SizedCause& c) { return c.cause->title; }},
         {"kind",
          Kind::number,
          "hidden: the file does not know of it; design: it is built so",
          [](const SizedCause& c) { return c.cause->kind; },
          kinds},
         {"place", place_meaning, [](const SizedCause& c) { return unless_empty(c.place); }},
         {"size", "null for the design, which is as it is", [](const SizedCause& c) {
              return c.has_size ? std::optional<CauseSizeRow>{CauseSizeRow{c}} : std::nullopt;
          }}}};
    return record;
}

template <>
const Record<LeftTrouble>& record_of<LeftTrouble>() {
    static const Record<LeftTrouble> record{
        "left_trouble",
        "a trouble that was seen and is to be expected after the cure as well",
        {{"words", "what was seen", &LeftTrouble::words},
         {"share", "of people who would report it then", &LeftTrouble::share}}};
    return record;
}

template <>
const Record<Cured>& record_of<Cured>() {
    static const Record<Cured> record{
        "cured",
        "how the run does then, in the state with least to spare",
        {{"works", "in every state that counts", &Cured::works},
         {"state", "with least to spare", &Cured::state},
         {"draft",
          Kind::pressure,
          "at the outlet",
          [](const Cured& c) { return of_solved(c, c.draft_pa); }},
         {"draft_needed",
          Kind::pressure,
          "at the outlet",
          [](const Cured& c) { return if_finite(c.draft_needed_pa); }},
         {"margin",
          Kind::pressure,
          "draft less the required draft",
          [](const Cured& c) { return of_solved(c, c.margin_pa()); }},
         {"left", "of what was seen, what is likely even then", &Cured::left},
         {"opening_share", "how far the door may be opened; over 1: wholly", [](const Cured& c) {
              return if_finite(c.opening_share);
          }}}};
    return record;
}

template <>
const Record<Bearing>& record_of<Bearing>() {
    static const Record<Bearing> record{
        "bearing",
        "what one piece of evidence says about an explanation",
        {{"seen", "index into what was seen, from 0", &Bearing::seen},
         {"likelier_times",
          "under this explanation against all others; under 1 it speaks against",
          [](const Bearing& b) { return if_finite(b.likelier_times); }}}};
    return record;
}

template <>
const Record<Explanation>& record_of<Explanation>() {
    static const Record<Explanation> record{
        "explanation",
        "a cause, or two together, or none",
        {{"probability", "of all explanations together 1", &Explanation::probability},
         {"title", "in words", &Explanation::title},
         {"causes", "none: nothing is wrong", &Explanation::causes},
         {"mechanism", "how it works", &Explanation::mechanism},
         {"bearings", "strongest first", &Explanation::bearings},
         {"remedy", "what to do", &Explanation::remedy},
         {"cured", "once that is done", &Explanation::cured},
         {"confirm",
          "id of the check that settles it; `fluewright explain` has its page",
          [](const Explanation& e) {
              return e.confirm == nullptr ? std::nullopt : std::optional{e.confirm->id};
          }}}};
    return record;
}

template <>
const Record<SeenFact>& record_of<SeenFact>() {
    static const Record<SeenFact> record{
        "seen",
        "a piece of evidence",
        {{"words", "what was seen", &SeenFact::words},
         {"expected",
          "under the leading explanation",
          [](const SeenFact& s) { return unless_empty(s.expected); }},
         {"as_written",
          "of a reading: by the file as it is, with nothing hidden, as `check` computes it",
          [](const SeenFact& s) { return unless_empty(s.as_written); }},
         {"fits", "the leading explanation accounts for it", &SeenFact::fits}}};
    return record;
}

template <>
const Record<WrongFigure>& record_of<WrongFigure>() {
    static const Record<WrongFigure> record{
        "wrong_figure",
        "a figure of the file that, were it another, would let all that was seen fit",
        {{"pointer", "into the file", &WrongFigure::pointer},
         {"unit", "of both figures", [](const WrongFigure& f) { return si_unit(f.kind); }},
         {"written", "in SI", &WrongFigure::written},
         {"meant", "in SI", &WrongFigure::meant},
         {"slip", "how it may have come about", &WrongFigure::slip}}};
    return record;
}

template <>
const Record<DoubtfulReading>& record_of<DoubtfulReading>() {
    static const Record<DoubtfulReading> record{
        "doubtful_reading",
        "a reading that stands alone against an explanation of all the rest",
        {{"seen", "index into what was seen, from 0", &DoubtfulReading::seen},
         {"explanation", "of the rest, in words", &DoubtfulReading::explanation}}};
    return record;
}

template <>
const Record<Expectation>& record_of<Expectation>() {
    static const Record<Expectation> record{
        "expectation",
        "what a check will show if a cause is the right one",
        {{"cause", "in words", &Expectation::cause}, {"answer", "in words", &Expectation::words}}};
    return record;
}

template <>
const Record<NextCheck>& record_of<NextCheck>() {
    static const Record<NextCheck> record{
        "next_check",
        "a check that could be made next",
        {{"id",
          "`fluewright explain` has its page",
          [](const NextCheck& c) { return c.check->id; }},
         {"title", "in words", [](const NextCheck& c) { return c.check->title; }},
         {"how", "it is made", [](const NextCheck& c) { return c.check->how; }},
         {"place", place_meaning, [](const NextCheck& c) { return unless_empty(c.place); }},
         {"effort", "1 for a glance", [](const NextCheck& c) { return c.check->effort; }},
         {"bits", "by how much it narrows the causes down, on the average", &NextCheck::bits},
         {"worth", "bits for the effort", &NextCheck::worth},
         {"expected", "under the leading explanations", &NextCheck::expected},
         {"entry",
          "as the file would have it under \"observed\" with the answer yes, or with the reading "
          "to "
          "expect under the first explanation",
          [](const NextCheck& c) {
              return json::value_of(write_observation(c.entry, UnitSystem::metric));
          }}}};
    return record;
}

template <>
const Record<BetterDesign>& record_of<BetterDesign>() {
    static const Record<BetterDesign> record{
        "better_design",
        "the change to the design that pays best",
        {{"steps", "orders for the fitter, without a final stop", &BetterDesign::steps},
         {"outcome", "with all of them made", &BetterDesign::outcome}}};
    return record;
}

template <>
const Record<Diagnosis>& record_of<Diagnosis>() {
    static const Record<Diagnosis> record{
        "diagnose_answer",
        "why a run does not do what it should, and what to look at next",
        {{"urgent", "what to do now", &Diagnosis::urgent},
         {"dangers", "that the file itself shows, whatever was seen", &Diagnosis::dangers},
         {"not_decided",
          "what leaves fire and carbon monoxide open in the file; null where nothing does",
          [](const Diagnosis& d) { return unless_empty(d.not_decided); }},
         {"no_fire", "nobody may light it, not for a check either", &Diagnosis::no_fire},
         {"sentence", "the outcome", &Diagnosis::sentence},
         {"mend_first",
          "what was found bad and leads, to be mended before a check is made; null where nothing",
          [](const Diagnosis& d) { return unless_empty(d.mend_first); }},
         {"design_probability",
          "that the run as described accounts for the trouble",
          &Diagnosis::design_probability},
         {"design_explains", "which is more likely than not", &Diagnosis::design_explains},
         {"measured_enough",
          "nobody complains, nothing was found bad, and the draft on a high fire is enough",
          &Diagnosis::measured_enough},
         {"nothing_explains",
          "even the best explanation conflicts with something seen",
          &Diagnosis::nothing_explains},
         {"wrong_figures",
          "figures of the file that may be wrong, where nothing explains; the best fit first",
          &Diagnosis::wrong_figures},
         {"doubtful", "readings that stand alone against the rest, likewise", &Diagnosis::doubtful},
         {"seen", "in the order of the file", &Diagnosis::seen},
         {"explanations", "by probability", &Diagnosis::explanations},
         {"checks", "most worthwhile first", &Diagnosis::checks},
         {"better_design", "null where the design does not fall short", &Diagnosis::better}}};
    return record;
}

const RecordInfo& diagnose_result() {
    return record_of<Diagnosis>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string diagnosis_json(const Diagnosis& diagnosis, const DiagnosisReportOptions& options) {
    return results::answer_text("diagnose",
                                options.input,
                                results::record_of<Diagnosis>().json(diagnosis),
                                diagnosis.assumptions);
}

} // namespace fluewright
