#include "../changed_json.hpp"
#include "catch.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

using namespace fluewright;
using nlohmann::json;

namespace {

json cases() {
    std::ifstream file{PROJECT_SOURCE_DIR "/tests/unit/advice/rule_cases.json"};
    return json::parse(file);
}

Checked report_of(const json& file, std::string_view body) {
    const ReadResult read = read_installation(file.dump());
    INFO(file.dump());
    if (!read) {
        FAIL(diagnostics_text(read.error()));
    }
    const Result<Case, Faults> resolved = resolve(*read);
    REQUIRE(resolved.has_value());
    return check_all(*read, *resolved, solve(*resolved, Detail::stations), {.body = body});
}

const CheckResult& result_of(const Checked& report, std::string_view id) {
    for (const CheckResult& result : report.results) {
        if (result.check->id == id) {
            return result;
        }
    }
    FAIL("no such rule in the report: " << id);
    return report.results.front();
}

const std::map<std::string, CheckOutcome>& outcomes() {
    static const std::map<std::string, CheckOutcome> words{
        {"met", CheckOutcome::met},
        {"not_met", CheckOutcome::not_met},
        {"undetermined", CheckOutcome::undetermined},
        {"does_not_apply", CheckOutcome::does_not_apply},
    };
    return words;
}

std::string_view body_of(const catalog::Rule& rule) {
    return rule.body == "any" ? std::string_view{"us"} : rule.body;
}

} // namespace

TEST_CASE("every rule is met, failed, left open and passed over where it should be") {
    const json table = cases();
    for (const json& line : table["cases"]) {
        const std::string id = line["rule"];
        const catalog::Rule* rule = catalog::find_rule(id);
        REQUIRE(rule != nullptr);
        for (const auto& [key, outcome] : outcomes()) {
            const json& given = line.at(key);
            if (given.is_string()) {
                // A reason why a rule cannot come out so; never for met.
                CHECK(key != "met");
                continue;
            }
            const Checked report = report_of(
                with_changes(table["bases"][std::string{given[0]}], given[1]), body_of(*rule));
            const CheckResult& result = result_of(report, id);
            INFO(id << " " << key << ": " << name(result.outcome) << " " << result.message);
            CHECK(result.outcome == outcome);
            CHECK(result.missing.empty() == (result.outcome != CheckOutcome::undetermined));
            CHECK((result.outcome == CheckOutcome::undetermined || !result.message.empty()));
        }
    }
}

TEST_CASE("beside its limit every mended rule still answers as an inspector would") {
    const json table = cases();
    std::size_t count = 0;
    for (const json& line : table["cases"]) {
        const std::string id = line["rule"];
        for (const json& neighbor : line.value("neighbors", json::array())) {
            const json& given = neighbor["case"];
            const Checked report =
                report_of(with_changes(table["bases"][std::string{given[0]}], given[1]),
                          body_of(*catalog::find_rule(id)));
            const CheckResult& result = result_of(report, id);
            const std::string why = neighbor["why"];
            INFO(id << ", " << why << ": " << name(result.outcome) << " " << result.message);
            CHECK(outcomes().at(std::string{neighbor["outcome"]}) == result.outcome);
            ++count;
        }
    }
    CHECK(count > 100);
}

TEST_CASE("an open check says what it would ask, and where") {
    const json table = cases();
    for (const auto& [name_of_base, base] : table["bases"].items()) {
        for (const catalog::RuleBody& body : catalog::rule_bodies()) {
            for (const CheckResult& result : report_of(base, body.id).results) {
                INFO(name_of_base << " " << result.check->id);
                CHECK((result.outcome != CheckOutcome::undetermined || !result.asked.empty()));
                for (const Asked& asked : result.asked) {
                    CHECK_FALSE(asked.words.empty());
                    CHECK_FALSE(asked.missing.empty());
                    CHECK_FALSE(asked.place.empty());
                }
            }
        }
    }
}

TEST_CASE("an old figure of one town is told and decides nothing") {
    // A chimney of 28 in2 falls short of the 40 in2 of one town.
    const json table = cases();
    const Checked report = report_of(table["bases"]["straight"], "us");
    CHECK(result_of(report, "chimney-flue-absolute-min").outcome == CheckOutcome::not_met);
    for (const Finding& finding : report.findings) {
        for (const CheckResult& source : finding.sources) {
            CHECK_FALSE(source.check->local);
        }
    }
}

TEST_CASE("every row of the table of rules has its cases") {
    std::set<std::string> tested;
    const json table = cases();
    for (const json& line : table["cases"]) {
        tested.insert(line["rule"]);
    }
    for (const catalog::Rule& rule : catalog::rules()) {
        INFO(rule.id);
        CHECK(tested.count(std::string{rule.id}) == 1);
    }
    CHECK(tested.size() == catalog::rules().size());
}

TEST_CASE("a missing key named by a rule is a key of the file") {
    const json table = cases();
    for (const auto& [name_of_base, base] : table["bases"].items()) {
        for (const catalog::RuleBody& body : catalog::rule_bodies()) {
            for (const CheckResult& result : report_of(base, body.id).results) {
                for (const std::string& pointer : result.missing) {
                    // Writing an absurd value there must draw a fault at that place, not an
                    // unknown key.
                    json file = base;
                    const json::json_pointer place{pointer};
                    if (pointer.find("/near/") != std::string::npos) {
                        continue;
                    }
                    file[place] = "no such word";
                    const ReadResult read = read_installation(file.dump());
                    INFO(pointer);
                    REQUIRE_FALSE(read.has_value());
                    CHECK(diagnostics_text(read.error()).find("is not a key") == std::string::npos);
                }
            }
        }
    }
}

TEST_CASE("the table of shields is read row by row") {
    constexpr double inch = 0.0254;
    for (const catalog::ShieldClearance& row : catalog::shield_clearances()) {
        INFO(row.id);
        const Shield shield = from_word<Shield>(row.id).value();
        const auto holds = [&](double needed_in, bool above, double cell_m) {
            const auto got = shielded_clearance_m(shield, needed_in * inch, above);
            CHECK(got.has_value() == (cell_m > 0.0));
            if (got) {
                CHECK(*got == Approx(cell_m));
            }
        };
        holds(36, true, row.above_36_m);
        holds(36, false, row.side_36_m);
        holds(18, true, row.above_18_m);
        holds(18, false, row.side_18_m);
        holds(12, true, row.above_12_m);
        holds(12, false, row.side_12_m);
        holds(9, true, row.above_9_m);
        holds(9, false, row.side_9_m);
        holds(6, true, row.above_6_m);
        holds(6, false, row.side_6_m);
        CHECK_FALSE(shielded_clearance_m(shield, 48 * inch, false).has_value());
        CHECK_FALSE(shielded_clearance_m(shield, 4 * inch, false).has_value());
    }
    CHECK(*shielded_clearance_m(Shield::sheet_steel, 27 * inch, false) == Approx(9 * inch));
    CHECK(catalog::shield_clearances().size() == all_words<Shield>().size());
}

TEST_CASE("worked figures of others come out") {
    constexpr double inch = 0.0254;
    // Single-wall pipe behind 24 gauge sheet with a 1 in gap: 9 in above, 6 in beside.
    CHECK(*shielded_clearance_m(Shield::sheet_steel, 18 * inch, true) == Approx(9 * inch));
    CHECK(*shielded_clearance_m(Shield::sheet_steel, 18 * inch, false) == Approx(6 * inch));
    // 6 in collar: 84.8 and 56.5 in2 of flue at most.
    const json table = cases();
    const auto most = [&](std::string_view id, std::string_view diameter) {
        const json file =
            with_changes(table["bases"]["stove"], {{"/run/4/diameter", std::string{diameter}}});
        return result_of(report_of(file, "us"), id).outcome;
    };
    CHECK(most("chimney-flue-max-3x", "10.3 in") == CheckOutcome::met);
    CHECK(most("chimney-flue-max-3x", "10.5 in") == CheckOutcome::not_met);
    CHECK(most("chimney-flue-max-2x-outside", "8.4 in") == CheckOutcome::met);
    CHECK(most("chimney-flue-max-2x-outside", "8.6 in") == CheckOutcome::not_met);
    // 3 outside diameters of a 150 mm pipe: 450 mm and a little for its sheet.
    const json uk = with_changes(table["bases"]["straight"],
                                 {{"/run/0/diameter", "150 mm"}, {"/run/0/clearance", "500 mm"}});
    CHECK(*result_of(report_of(uk, "uk"), "uk-pipe-clearance").limit == Approx(0.45).epsilon(0.01));
}

TEST_CASE("the chimney top on a pitched roof, by hand") {
    constexpr double degree = 3.14159265358979323846 / 180.0;
    const auto needed = [&](double pitch_deg, double ridge_m) {
        return top_height_needed_m(pitch_deg * degree, ridge_m, 0.9144, 0.6096, 3.048);
    };
    // Flat: 3 ft. 45 degrees, ridge 2 m off: 2 + 0.61. Ridge 5 m off: 3.048 + 0.61.
    CHECK(needed(0.0, 0.0) == Approx(0.9144));
    CHECK(needed(45.0, 2.0) == Approx(2.6096));
    CHECK(needed(45.0, 5.0) == Approx(3.6576));
    // 30 degrees (tan 0.57735), ridge 0.4 m off: 0.231 + 0.610 = 0.841, so the 3 ft decide.
    CHECK(needed(30.0, 0.4) == Approx(0.9144));
    CHECK(needed(30.0, 3.0) == Approx(3.0 * 0.5773503 + 0.6096));
    // A 12 in 12 roof and a 6 in 12 roof with the ridge out of reach: 12 ft and 7 ft.
    CHECK(needed(45.0, 9.0) == Approx(12 * 0.3048));
    CHECK(needed(26.5650512, 9.0) == Approx(7 * 0.3048));
}

TEST_CASE("a listed distance goes before the general figure, but not that of bare pipe") {
    const json table = cases();
    const json listed = {{"/run/0/clearance", "9 in"}, {"/run/0/listed_clearance", "9 in"}};
    const json bare = with_changes(table["bases"]["straight"], listed);
    // Single-wall pipe has no listing of its own; a shield may have one.
    const Checked alone = report_of(bare, "us");
    CHECK(result_of(alone, "connector-clearance-single-wall").outcome == CheckOutcome::not_met);
    CHECK(result_of(alone, "connector-clearance-single-wall").message.find("does not count")
          != std::string::npos);
    const Checked shielded = report_of(
        with_changes(bare, {{"/run/0/shield", "sheet steel"}, {"/run/0/shield_gap", "1 in"}}),
        "us");
    CHECK(result_of(shielded, "connector-clearance-shielded").outcome
          == CheckOutcome::does_not_apply);
    CHECK(result_of(shielded, "connector-clearance-listed").outcome == CheckOutcome::met);
    // Three diameters of 125 mm, as a European designation gives them.
    const json designated = {{"/run/0/diameter", "125 mm"},
                             {"/appliance/outlet/diameter", "125 mm"},
                             {"/run/0/clearance", "375 mm"},
                             {"/run/0/listed_clearance", "375 mm"}};
    const Checked european = report_of(with_changes(table["bases"]["straight"], designated), "uk");
    CHECK(result_of(european, "uk-pipe-clearance").outcome == CheckOutcome::does_not_apply);
    CHECK(result_of(european, "connector-clearance-listed").outcome == CheckOutcome::met);
}

TEST_CASE("the set of rules follows the file and its units") {
    Installation in;
    CHECK(rule_set_of(in, UnitSystem::us) == "us");
    CHECK(rule_set_of(in, UnitSystem::metric) == "none");
    in.site.rules = RuleSet::de;
    CHECK(rule_set_of(in, UnitSystem::us) == "de");
    const json table = cases();
    for (const CheckResult& result : report_of(table["bases"]["straight"], "none").results) {
        CHECK(result.check->basis != Basis::body);
    }
}

TEST_CASE("every body names who decides") {
    for (const catalog::RuleBody& body : catalog::rule_bodies()) {
        CHECK_FALSE(body.decides.empty());
    }
}
