#include "catch.hpp"
#include "fluewright/io/json/report_json.hpp"
#include "fluewright/io/report/report_text.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"

#include <limits>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace fluewright;
using Catch::Matchers::Contains;

namespace {

constexpr Matter matter{.id = "draft-short",
                        .harm = Harm::draft,
                        .severity = Severity::failure,
                        .per_place = false,
                        .title = "Not enough draft",
                        .meaning = "meaning",
                        .remedy = "general remedy"};

constexpr Check check{.id = "draft-short",
                      .basis = Basis::physics,
                      .body = "any",
                      .matter = &matter,
                      .severity = Severity::failure,
                      .advice = false,
                      .local = false,
                      .needs_solution = true,
                      .rule = "draft >= need",
                      .applies = "high fire",
                      .source = "heater-manuals",
                      .clause = {},
                      .mark = "looked up",
                      .disagrees = {}};

/// A made-up assessment with one state of every kind, none of it computed.
Assessment made_up() {
    Assessment a;
    Case& c = a.installation;
    c.title = "Boat shed";
    c.room_temperature_k = 293.15;
    c.weathers = {{.name = "frost", .outdoor_temperature_k = 263.15, .wind_m_s = 2.0}};
    c.walls.emplace_back().id = "single-wall steel";
    c.sections.push_back({.part = -1, .kind = PartKind::collar, .diameter_m = 0.15});
    c.sections.push_back({.part = 0, .kind = PartKind::increaser, .diameter_m = 0.2, .loss = 0.4});
    c.sections.push_back(
        {.part = 0, .kind = PartKind::straight, .length_m = 4.0, .rise_m = 4.0, .diameter_m = 0.2});
    c.sections.push_back({.part = 1, .kind = PartKind::cap, .diameter_m = 0.2});
    c.assumptions.push_back({.pointer = "/run",
                             .what = "what is on the chimney top",
                             .word = "nothing: open end",
                             .source = "judgement",
                             .mark = "judgement"});
    for (const StateKind kind : {StateKind::high_fire,
                                 StateKind::free_burn,
                                 StateKind::door_open_embers,
                                 StateKind::idle}) {
        StateResult state;
        state.kind = kind;
        state.draft_pa = 8.0;
        state.draft_needed_pa = 12.0;
        state.gas_temperature_k = 500.0;
        state.door.opening_share = state.door.opening_share_mixed = 0.4;
        for (std::size_t section : {0U, 0U, 1U, 2U, 3U}) {
            state.stations.push_back({.section = section, .gas_temperature_k = 480.0});
        }
        a.solution.states.push_back(state);
        const bool door = kind == StateKind::door_open_embers;
        a.verdicts.push_back({.counts = kind == StateKind::high_fire || door,
                              .passes = false,
                              .spare = door ? -0.1 : -4.0,
                              .kind = door ? Kind::fraction : Kind::pressure,
                              .harm = door ? Harm::reloading : Harm::draft});
    }
    a.limiting = 0;
    a.draft_ends.resize(a.solution.states.size());
    a.draft_ends[0] = {.least_heat_pa = 13.0, .most_heat_pa = 7.0};
    Finding& finding = a.findings.emplace_back();
    finding.matter = &matter;
    finding.severity = Severity::failure;
    finding.harm = Harm::draft;
    finding.place = "the outlet";
    finding.state = "high fire, frost";
    finding.message = "The draft at the outlet is 8 Pa.";
    finding.kind = Kind::pressure;
    finding.figure = 8.0;
    finding.limit = 12.0;
    CheckResult& source = finding.sources.emplace_back();
    source.check = &check;
    source.outcome = CheckOutcome::not_met;
    source.figure = finding.figure;
    source.limit = finding.limit;
    a.installation.appliance.has_door = true;
    a.verdict = judge_harms(a, true);
    a.sentence = headline(a.verdict);
    a.size.outcome = SizeAdvice::Outcome::none;
    a.size.reason = "Height is short.";
    return a;
}

std::string text_of(const Assessment& a, const ReportOptions& more = {}) {
    ReportOptions options = more;
    options.version = "0.1.0";
    options.file = "shed.json";
    return report_text(a, options);
}

} // namespace

TEST_CASE("the report begins with the verdict by kind of harm", "[report]") {
    ReportOptions wide;
    wide.style.width = 100;
    CHECK(
        text_of(made_up(), wide)
            .starts_with(
                "This run falls short: draft. Not met, but not counted: reloading.\nInstallation: "
                "Boat shed\n\n  Fire, CO   ok     No danger found.\n  Draft      SHORT  Draft "
                "falls short in every condition checked; worst -4 Pa, 8 Pa where 12 Pa is\n        "
                "            required (high fire, frost).\n                    First: general "
                "remedy\n  Reloading  short  The door may be opened only 40 % of its width on "
                "embers (frost); 50 % is\n                    required.\n  Upkeep     ok     "
                "Nothing found.\n"));
}

TEST_CASE("a finding says how bad, where, what and what to do", "[report]") {
    Assessment a = made_up();
    CHECK_THAT(text_of(a, {.details = true}),
               Contains("1. FAULT: Not enough draft, the outlet (high fire, frost)\n     The draft "
                        "at the outlet is 8 Pa.\n     What to do: general remedy\n     Source: "
                        "Draft figures in the manuals of sixteen heater makers; looked up.\n     "
                        "More: fluewright explain draft-short\n"));
    a.findings.front().remedy = "Here: add 1 m.";
    CHECK_THAT(text_of(a, {.details = true}), Contains("What to do: Here: add 1 m."));
    a.findings.clear();
    CHECK_THAT(text_of(a), Contains("Findings\n  None."));
}

TEST_CASE("a state without a working point says so in words", "[report]") {
    Assessment a = made_up();
    a.solution.states[1].status = Status::no_flow;
    CHECK_THAT(text_of(a), Contains("air control open: not computed; no upward flow"));
    const auto json = nlohmann::json::parse(report_json(a, {}))["result"];
    CHECK(json["states"][1]["status"] == "no flow");
    CHECK(json["states"][1]["draft_pa"].is_null());
    CHECK(json["states"][1]["stations"].empty());

    a.solution.states[1].status = Status::no_answer;
    CHECK(text_of(a).starts_with("The solver found no answer for air control open, frost"));
    CHECK_THAT(text_of(a), Contains("FAILED"));
}

TEST_CASE("a number that is not finite is a word in text and null in JSON", "[report]") {
    Assessment a = made_up();
    a.solution.states[0].draft_pa = std::numeric_limits<double>::quiet_NaN();
    a.draft_ends[0]->most_heat_pa = std::numeric_limits<double>::infinity();
    a.verdict = judge_harms(a, true);
    CHECK_THAT(text_of(a), Contains("not computed"));
    const auto json = nlohmann::json::parse(report_json(a, {}))["result"];
    CHECK(json["states"][0]["draft_pa"].is_null());
    CHECK(json["states"][0]["draft_most_heat_pa"].is_null());
    CHECK(json["states"][0]["draft_least_heat_pa"] == 13.0);
}

TEST_CASE("the spread of the inside coefficient names what hangs on it", "[report]") {
    Assessment a = made_up();
    const std::string text = text_of(a, {.details = true});
    CHECK_THAT(text, Contains("Enough or not hangs on it here: high fire, frost."));
    CHECK_THAT(text, Contains("high fire, frost          13      8          7        12"));
    a.draft_ends[0]->least_heat_pa = 11.0;
    CHECK_THAT(text_of(a, {.details = true}), !Contains("Enough or not hangs on it"));
    a.draft_ends.clear();
    CHECK_THAT(text_of(a, {.details = true}), !Contains("\nSpread\n"));
}

TEST_CASE("a step in size and an added chimney top are called so", "[report]") {
    const std::string text = text_of(made_up(), {.details = true});
    CHECK_THAT(text, Contains("1 step"));
    CHECK_THAT(text, Contains("1 straight"));
    CHECK_THAT(text, Contains("\n  chimney top"));
    const auto json = nlohmann::json::parse(report_json(made_up(), {}))["result"];
    CHECK(json["installation"]["run"][3]["part"].is_null());
}

TEST_CASE("the size line follows the outcome", "[report]") {
    Assessment a = made_up();
    CHECK_THAT(text_of(a), Contains("Pipe size: Height is short."));
    a.size.outcome = SizeAdvice::Outcome::present_is_right;
    a.size.present = "150 mm";
    a.size.reason.clear();
    CHECK_THAT(text_of(a), Contains("Pipe size: 150 mm is right."));
    a.size.outcome = SizeAdvice::Outcome::another;
    a.size.suggested = "180 mm";
    CHECK_THAT(text_of(a), Contains("Pipe size: 180 mm suggested in place of 150 mm."));
    a.size.outcome = SizeAdvice::Outcome::nothing_to_size;
    CHECK_THAT(text_of(a), Contains("nothing in this run to choose by size"));
    CHECK_THAT(text_of(a, {.size_searched = false}), Contains("not computed (--no-size-search)"));
}

TEST_CASE("a long title without blanks still keeps to the page", "[report]") {
    Assessment a = made_up();
    a.installation.title = std::string(300, 'x');
    a.installation.weathers[0].name = std::string(200, 'y');
    std::istringstream lines(text_of(a, {.details = true}));
    for (std::string line; std::getline(lines, line);) {
        CHECK(shown_width(line) <= 80);
    }
}

TEST_CASE("tables align numbers at the point and words at the left", "[table]") {
    TextTable table({{.heading = "part"},
                     {.heading = "draft\nPa", .align = Align::decimal},
                     {.heading = "note", .wraps = true}});
    table.add({{"pipe"}, {"8.25"}, {"short"}});
    table.add({{"elbow"}, {"-12"}, {"-"}});
    table.add_note("below");
    CHECK(table.text({}, 1)
          == "         draft\n"
             " part       Pa  note\n"
             " pipe     8.25  short\n"
             " elbow  -12     -\n"
             "     below\n");
}

TEST_CASE("text breaks between words, and inside only where it must", "[layout]") {
    CHECK(wrap("one two three", 7) == std::vector<std::string>{"one two", "three"});
    CHECK(wrap("abcdefgh ij", 4) == std::vector<std::string>{"abcd", "efgh", "ij"});
    CHECK(wrap("", 4) == std::vector<std::string>{""});
    CHECK(wrap("äöü äöü", 3) == std::vector<std::string>{"äöü", "äöü"});
    CHECK(in_plain_letters("4½ in ± 2 °") == "4 1/2 in +- 2 deg");
}
