#include "fluewright/advice/upkeep/warmup_hints.hpp"
#include "io/results/csv_rows.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/results.hpp"
#include "io/results/warmup_rows.hpp"
#include "io/text/words.hpp"

#include <cmath>

namespace fluewright::results {
namespace {

/// What does not close is shown to a billionth; below that it is round-off of this machine.
constexpr double below_notice = 1e9;

struct WarmPartRow {
    const CourseRow& course;
    const WarmupPart& of;
};

struct AllWarmRow {
    std::optional<double> from_s;
    std::optional<std::string> last;
};

struct AfterFireRow {
    const Warmup& of;
};

struct WarmupRow {
    const Case& installation;
    std::span<const WarmupInWeather> courses;
    std::span<const PresentDanger> dangers;
    std::string_view not_decided;
};

struct HintRow {
    const CourseRow& course;
    WarmupHint of;
};

std::vector<HintRow> hints_of(const CourseRow& course) {
    std::vector<HintRow> rows;
    for (WarmupHint& hint :
         warmup_hints(course.installation, course.in.weather, course.in.course)) {
        rows.push_back({course, hint});
    }
    return rows;
}

std::vector<CourseRow> courses_of(const WarmupRow& warmup) {
    std::vector<CourseRow> rows;
    for (const WarmupInWeather& in : warmup.courses) {
        rows.push_back({warmup.installation, in});
    }
    return rows;
}

std::vector<MomentRow> moments_of(const CourseRow& course) {
    std::vector<MomentRow> rows;
    for (const WarmupMoment& moment : course.in.course.moments) {
        rows.push_back({course, moment});
    }
    return rows;
}

std::vector<WarmPartRow> parts_of(const CourseRow& course) {
    std::vector<WarmPartRow> rows;
    for (const WarmupPart& part : course.in.course.parts) {
        rows.push_back({course, part});
    }
    return rows;
}

AllWarmRow all_warm(const CourseRow& course, std::optional<double> from_s, std::size_t part) {
    const auto& parts = course.in.course.parts;
    return {from_s,
            part < parts.size()
                ? std::optional{report::section_words(course.installation, parts[part].section)}
                : std::nullopt};
}

} // namespace

template <>
const Record<Spell>& record_of<Spell>() {
    static const Record<Spell> record{
        "spell",
        "when something became so, and when it ceased; null where it did not within the time",
        {{"from", Kind::duration, "after the match", &Spell::from_s},
         {"until", Kind::duration, "after the match", &Spell::until_s}}};
    return record;
}

template <>
const Record<AllWarmRow>& record_of<AllWarmRow>() {
    static const Record<AllWarmRow> record{
        "all_parts_warm",
        "when the last part of the run became so",
        {{"from", Kind::duration, "after the match; null where it did not", &AllWarmRow::from_s},
         {"last_part", "in words; null where the run has no straight", &AllWarmRow::last}}};
    return record;
}

template <>
const Record<AfterFireRow>& record_of<AfterFireRow>() {
    static const Record<AfterFireRow> record{
        "after_fire",
        "how long the draft lasts once the fire is out",
        {{"draft_needed_low",
          Kind::pressure,
          "at low fire",
          [](const AfterFireRow& a) { return a.of.draft_needed_low_pa; }},
         {"above_low_need",
          Kind::duration,
          "the draft is at least that",
          [](const AfterFireRow& a) { return a.of.holds_low_s; }},
         {"above_zero", Kind::duration, "there is any draft", [](const AfterFireRow& a) {
              return a.of.holds_zero_s;
          }}}};
    return record;
}

template <>
const Record<WarmupBalance>& record_of<WarmupBalance>() {
    static const Record<WarmupBalance> record{
        "heat_balance",
        "heat given by the gas = heat stored in the walls + heat lost to the air around",
        {{"given", Kind::energy, "by the gas", &WarmupBalance::given_j},
         {"stored", Kind::energy, "in the walls", &WarmupBalance::stored_j},
         {"lost", Kind::energy, "to the air around", &WarmupBalance::lost_j},
         {"error", "what does not close, over what was given", [](const WarmupBalance& b) {
              return std::round(b.error() * below_notice) / below_notice + 0.0;
          }}}};
    return record;
}

template <>
const Record<BurnPhase>& record_of<BurnPhase>() {
    static const Record<BurnPhase> record{
        "burn_phase",
        "a stretch of time of the fire",
        {{"name", "in words", &BurnPhase::name},
         {"duration", Kind::duration, "of the phase", &BurnPhase::duration_s},
         {"start", Kind::mass_rate, "burn rate at its beginning", &BurnPhase::start_kg_s},
         {"end", Kind::mass_rate, "burn rate at its end", &BurnPhase::end_kg_s},
         {"out", "there is no fire", &BurnPhase::out}}};
    return record;
}

template <>
const Record<WarmPartRow>& record_of<WarmPartRow>() {
    static const Record<WarmPartRow> record{
        "warming_part",
        "a straight of the run",
        {{"place",
          "in words",
          [](const WarmPartRow& p) {
              return report::section_words(p.course.installation, p.of.section);
          }},
         {"section",
          "index into the run, from 0",
          [](const WarmPartRow& p) { return p.of.section; }},
         {"dry",
          "inner wall everywhere above the dew point, while the fire burns",
          [](const WarmPartRow& p) -> decltype(auto) { return (p.of.dry); }},
         {"clean",
          "inner wall everywhere above the creosote threshold, while the fire burns",
          [](const WarmPartRow& p) -> decltype(auto) { return (p.of.clean); }},
         {"hottest_inner",
          Kind::temperature,
          "of the inner wall",
          [](const WarmPartRow& p) { return p.of.hottest_inner_k; }},
         {"hottest_outer",
          Kind::temperature,
          "of the outer wall",
          [](const WarmPartRow& p) { return p.of.hottest_outer_k; }},
         {"heat_taken",
          Kind::energy,
          "from the gas, while the fire burned",
          [](const WarmPartRow& p) { return p.of.taken_j; }},
         {"heat_lost", Kind::energy, "of that, to the air around", [](const WarmPartRow& p) {
              return p.of.lost_j;
          }}}};
    return record;
}

template <>
const Record<Starving>& record_of<Starving>() {
    static const Record<Starving> record{
        "starving",
        "the moment at which the fire lacks most air, by the share of its flow",
        {{"time", Kind::duration, "after the match", &Starving::time_s},
         {"asked", Kind::gas_flow, "flue gas of the fire that is meant", &Starving::asked_kg_s},
         {"flow", Kind::gas_flow, "flue gas that the flue draws", &Starving::flow_kg_s},
         {"lift",
          Kind::pressure,
          "of the gas in the flue, the room at the pressure outdoors",
          &Starving::lift_pa},
         {"room_pressure", Kind::pressure, "against outdoors", &Starving::room_pa},
         {"heater_loss",
          Kind::pressure,
          "what the flow asked would lose in the heater, its air control open",
          &Starving::heater_pa},
         {"run_loss", Kind::pressure, "and along the run", &Starving::run_pa},
         {"because_of", "what holds it back", [](const Starving& s) { return s.why(); }}}};
    return record;
}

template <>
const Record<HintRow>& record_of<HintRow>() {
    static const Record<HintRow> record{
        "warmup_hint",
        "what shortens the warm-up, with the figures that speak for it; the others are null",
        {{"what", "to do", [](const HintRow& h) { return h.of.what; }},
         {"place",
          "first part of the run it is about, in words; null for the run as a whole",
          [](const HintRow& h) {
              return h.of.section ? std::optional{report::section_words(h.course.installation,
                                                                        *h.of.section)}
                                  : std::nullopt;
          }},
         {"idle_draft",
          Kind::pressure,
          "of the flue with no fire",
          [](const HintRow& h) { return h.of.idle_draft_pa; }},
         {"area_over_outlet",
          "area of the flue over that of the outlet, the greatest",
          [](const HintRow& h) { return h.of.area_over_outlet; }},
         {"heat_kept",
          Kind::energy,
          "by the walls it is about, while the fire burned",
          [](const HintRow& h) { return h.of.kept_j; }},
         {"heat_lost",
          Kind::energy,
          "by the walls it is about to the air around, while the fire burned",
          [](const HintRow& h) { return h.of.lost_j; }}}};
    return record;
}

template <>
const Record<MomentRow>& record_of<MomentRow>() {
    static constexpr auto of = [](auto member) {
        return [member](const MomentRow& m) { return m.of.*member; };
    };
    static const Record<MomentRow> record{
        "moment",
        "the run at one time",
        {{"weather",
          "name of the weather",
          [](const MomentRow& m) -> decltype(auto) { return (m.course.weather().name); }},
         {"time", Kind::duration, "after the match", of(&WarmupMoment::time_s)},
         {"phase",
          "of the fire",
          [](const MomentRow& m) -> decltype(auto) {
              return (m.course.in.course.phases[m.of.phase].name);
          }},
         {{"burn_rate", "fuel"},
          Kind::mass_rate,
          "what the air lets burn",
          of(&WarmupMoment::burn_rate_kg_s)},
         {{"gas_flow", "gas"}, Kind::gas_flow, "flue gas", of(&WarmupMoment::gas_flow_kg_s)},
         {{"outlet_temperature", "outlet"},
          Kind::temperature,
          "gas at the outlet",
          of(&WarmupMoment::outlet_k)},
         {{"top_temperature", "chimney top"},
          Kind::temperature,
          "gas at the chimney top",
          of(&WarmupMoment::top_k)},
         {"draft", Kind::pressure, "at the outlet against the room", of(&WarmupMoment::draft_pa)},
         {"dew_point", Kind::temperature, "of the gas's water", of(&WarmupMoment::dew_point_k)},
         {"coldest_wall",
          Kind::temperature,
          "inner face along the run",
          of(&WarmupMoment::coldest_wall_k)},
         {"top_wall",
          Kind::temperature,
          "inner face at the chimney top",
          of(&WarmupMoment::top_wall_k)},
         {"hottest_surface",
          Kind::temperature,
          "outer face along the run",
          of(&WarmupMoment::hottest_surface_k)},
         {"starved", "the flue draws less than the fire asks", of(&WarmupMoment::starved)}}};
    return record;
}

template <>
const Record<CourseRow>& record_of<CourseRow>() {
    static constexpr auto of = [](auto member) {
        return [member](const CourseRow& c) { return c.in.course.*member; };
    };
    static const Record<CourseRow> record{
        "course",
        "one fire in one weather",
        {{"weather",
          "name of the weather",
          [](const CourseRow& c) -> decltype(auto) { return (c.weather().name); }},
         {"outdoor_temperature",
          Kind::temperature,
          "of the air outdoors",
          [](const CourseRow& c) { return c.weather().outdoor_temperature_k; }},
         {"draft_needed", Kind::pressure, "at high fire", of(&Warmup::draft_needed_pa)},
         {"draft_met", "draft at least that", of(&Warmup::draft_met)},
         {"creosote_threshold",
          Kind::temperature,
          "below which deposit settles",
          of(&Warmup::creosote_threshold_k)},
         {"dry",
          "every part above the dew point",
          [](const CourseRow& c) { return all_warm(c, c.in.course.dry_s, c.in.course.last_dry); }},
         {"clean",
          "every part above the creosote threshold",
          [](const CourseRow& c) {
              return all_warm(c, c.in.course.clean_s, c.in.course.last_clean);
          }},
         {"starved",
          Kind::duration,
          "time in which the flue drew less than the fire required",
          of(&Warmup::starved_s)},
         {"worst_starved",
          "null where it never is",
          [](const CourseRow& c) -> const Starving* {
              return c.in.course.worst_starved ? &*c.in.course.worst_starved : nullptr;
          }},
         {"quicker",
          "what shortens a warm-up that is slow, what does most first",
          [](const CourseRow& c) { return hints_of(c); }},
         {"fire_out", Kind::duration, "after the match", of(&Warmup::fire_out_s)},
         {"after_fire",
          "how long the draft lasts",
          [](const CourseRow& c) { return AfterFireRow{c.in.course}; }},
         {"end", Kind::duration, "of the computation, after the match", of(&Warmup::end_s)},
         {"heat", "its balance", of(&Warmup::balance)},
         {"phases", "of the fire", of(&Warmup::phases)},
         {"parts", "every straight", [](const CourseRow& c) { return parts_of(c); }},
         {"moments", "in order of time", [](const CourseRow& c) { return moments_of(c); }}}};
    return record;
}

template <>
const Record<WarmupRow>& record_of<WarmupRow>() {
    static const Record<WarmupRow> record{
        "warmup_answer",
        "from the match to the cold stove",
        {{"dangers",
          "that stand in the run: no fire before they are put right",
          [](const WarmupRow& w) { return w.dangers; }},
         {"not_decided",
          "what leaves fire and carbon monoxide open; null where nothing does",
          [](const WarmupRow& w) { return unless_empty(w.not_decided); }},
         {"draws_in_time",
          "the required draft at high fire is met in every weather",
          [](const WarmupRow& w) { return draws_in_time(w.courses); }},
         {"weathers", "in the order of the file", [](const WarmupRow& w) {
              return courses_of(w);
          }}}};
    return record;
}

const RecordInfo& warmup_result() {
    return record_of<WarmupRow>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string warmup_json(const Case& installation,
                        std::span<const WarmupInWeather> courses,
                        const WarmupReportOptions& options) {
    return results::answer_text(
        "warmup",
        options.input,
        results::record_of<results::WarmupRow>().json(
            {installation, courses, options.dangers, options.not_decided}),
        courses.empty() ? std::span<const Assumption>{}
                        : std::span<const Assumption>{courses.front().course.assumptions});
}

std::string warmup_csv(const Case& installation, std::span<const WarmupInWeather> courses) {
    std::string out = results::csv_heading<results::MomentRow>();
    for (const WarmupInWeather& in : courses) {
        const results::CourseRow course{installation, in};
        for (const results::MomentRow& moment : results::moments_of(course)) {
            results::append_csv(moment, out);
        }
    }
    return out;
}

} // namespace fluewright
