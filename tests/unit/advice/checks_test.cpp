// One engine of checks: one matter is said once, with all who speak of it.
#include "examples.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>
#include <filesystem>
#include <set>
#include <string>
#include <utility>
#include <vector>

using namespace fluewright;

namespace {

std::vector<std::string> example_names() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator{PROJECT_SOURCE_DIR "/examples"}) {
        if (entry.path().extension() == ".json") {
            names.push_back(entry.path().stem().string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

struct Told {
    std::string name;
    std::string body;
    Checked checked;
};

/// Every example that can be read, held against every body.
const std::vector<Told>& told() {
    static const std::vector<Told> all = [] {
        std::vector<Told> list;
        for (const std::string& name : example_names()) {
            const Installation in = example(name);
            const Result<Case, Faults> made = resolve(in);
            REQUIRE(made.has_value());
            const Solution solution = solve(*made, Detail::stations);
            for (const catalog::RuleBody& body : catalog::rule_bodies()) {
                list.push_back({name,
                                std::string{body.id},
                                check_all(in, *made, solution, {.body = body.id})});
            }
        }
        return list;
    }();
    return all;
}

} // namespace

TEST_CASE("no matter is raised twice for one place", "[checks]") {
    std::size_t with_rules = 0;
    std::size_t merged = 0;
    for (const Told& t : told()) {
        CAPTURE(t.name, t.body);
        std::set<std::pair<std::string_view, int>> parts;
        std::set<std::pair<std::string_view, std::string>> places;
        for (const Finding& f : t.checked.findings) {
            CAPTURE(f.matter->id, f.place);
            CHECK(places.insert({f.matter->id, f.place}).second);
            CHECK((f.part < 0 || parts.insert({f.matter->id, f.part}).second));
            if (!f.matter->per_place) {
                CHECK(parts.insert({f.matter->id, -2}).second);
            }
            const auto not_met =
                std::count_if(f.sources.begin(), f.sources.end(), [](const CheckResult& s) {
                    return s.outcome == CheckOutcome::not_met;
                });
            CHECK(not_met >= 1);
            merged += not_met > 1 ? 1U : 0U;
            with_rules +=
                std::any_of(f.sources.begin(),
                            f.sources.end(),
                            [](const CheckResult& s) { return s.check->basis == Basis::body; })
                    ? 1U
                    : 0U;
        }
    }
    // The examples do have findings of several sources.
    CHECK(with_rules > 20);
    CHECK(merged > 20);
}

TEST_CASE("a finding is as severe as the worst of its sources", "[checks]") {
    for (const Told& t : told()) {
        for (const Finding& f : t.checked.findings) {
            CAPTURE(t.name, t.body, f.matter->id);
            Severity worst = Severity::note;
            for (const CheckResult& source : f.sources) {
                CHECK(source.check->matter->id == f.matter->id);
                if (source.outcome == CheckOutcome::not_met) {
                    worst = std::min(worst, source.check->severity);
                } else {
                    CHECK(source.outcome == CheckOutcome::met);
                }
            }
            CHECK(f.severity == worst);
            CHECK(f.message == f.sources.front().message);
            CHECK_FALSE(f.message.empty());
        }
        CHECK(std::is_sorted(t.checked.findings.begin(),
                             t.checked.findings.end(),
                             [](const Finding& a, const Finding& b) {
                                 return a.severity != b.severity ? a.severity < b.severity
                                                                 : a.weight > b.weight;
                             }));
    }
}

TEST_CASE("every check has an outcome, and what is not met is a finding", "[checks]") {
    for (const Told& t : told()) {
        CAPTURE(t.name, t.body);
        std::set<const Check*> seen;
        for (const CheckResult& result : t.checked.results) {
            seen.insert(result.check);
            // What one town once asked is told, and no finding.
            const bool failed = result.outcome == CheckOutcome::not_met && !result.check->local;
            const bool found = std::any_of(
                t.checked.findings.begin(), t.checked.findings.end(), [&](const Finding& f) {
                    return std::any_of(
                        f.sources.begin(), f.sources.end(), [&](const CheckResult& source) {
                            return source.check == result.check && source.place == result.place
                                   && source.outcome == CheckOutcome::not_met;
                        });
                });
            CAPTURE(result.check->id, result.place);
            CHECK(failed == found);
            CHECK((result.check->body == "any" || result.check->body == t.body));
        }
        for (const Check& check : checks()) {
            if (check.body == "any" || check.body == t.body) {
                CAPTURE(check.id);
                CHECK(seen.count(&check) == 1);
            }
        }
    }
}

TEST_CASE("a body of rules adds sources and findings and takes none away", "[checks]") {
    const std::vector<Told>& all = told();
    for (const Told& t : all) {
        const auto bare = std::find_if(all.begin(), all.end(), [&](const Told& other) {
            return other.name == t.name && other.body == "none";
        });
        REQUIRE(bare != all.end());
        for (const Finding& f : bare->checked.findings) {
            CAPTURE(t.name, t.body, f.matter->id);
            CHECK(std::any_of(
                t.checked.findings.begin(), t.checked.findings.end(), [&](const Finding& g) {
                    return g.matter == f.matter && (g.part == f.part || !f.matter->per_place)
                           && g.severity <= f.severity;
                }));
        }
    }
}

TEST_CASE("the shape alone is judged as the solved run is", "[checks]") {
    for (const std::string& name : example_names()) {
        const Installation in = example(name);
        const Result<Case, Faults> made = resolve(in);
        REQUIRE(made.has_value());
        const Checked shape = check_shape(in, *made, {.body = "us"});
        const Checked all = check_all(in, *made, solve(*made, Detail::stations), {.body = "us"});
        std::size_t next = 0;
        for (const CheckResult& result : all.results) {
            if (result.check->needs_solution) {
                continue;
            }
            CAPTURE(name, result.check->id);
            REQUIRE(next < shape.results.size());
            const CheckResult& alone = shape.results[next++];
            CHECK(alone.check == result.check);
            CHECK(alone.outcome == result.outcome);
            CHECK(alone.place == result.place);
            CHECK(alone.message == result.message);
        }
        CHECK(next == shape.results.size());
    }
}

TEST_CASE("without words the findings are the same", "[checks]") {
    for (const std::string& name : example_names()) {
        const Installation in = example(name);
        const Result<Case, Faults> made = resolve(in);
        REQUIRE(made.has_value());
        const Solution solution = solve(*made, Detail::stations);
        const Checked loud = check_all(in, *made, solution, {.body = "us"});
        const Checked mute = check_all(in, *made, solution, {.body = "us", .with_words = false});
        REQUIRE(loud.findings.size() == mute.findings.size());
        for (std::size_t i = 0; i < loud.findings.size(); ++i) {
            CAPTURE(name, loud.findings[i].matter->id);
            CHECK(loud.findings[i].matter == mute.findings[i].matter);
            CHECK(loud.findings[i].place == mute.findings[i].place);
            CHECK(loud.findings[i].severity == mute.findings[i].severity);
        }
    }
}

TEST_CASE("what the trade forbids and a body allows stands as two sources", "[checks]") {
    // An insulated level run of the height above it: the trade's 100 % and the us rule agree; a
    // single-wall one of 90 % breaks 75 % of both. The uk rule on level pipe speaks of slope.
    Installation in = example("print-shop");
    const Result<Case, Faults> made = resolve(in);
    REQUIRE(made.has_value());
    const Checked checked = check_shape(in, *made, {.body = "us"});
    for (const Finding& f : checked.findings) {
        for (const CheckResult& source : f.sources) {
            if (source.outcome == CheckOutcome::met) {
                CHECK(source.figure.has_value());
                CHECK(source.limit.has_value());
            }
        }
    }
}
