#include "edited_file.hpp"
#include "fluewright/advice/study/compare.hpp"
#include "fluewright/advice/study/sweep.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "law.hpp"

#include <array>
#include <cmath>
#include <limits>

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

double least(const std::vector<double>& values) {
    double found = std::numeric_limits<double>::quiet_NaN();
    for (const double value : values) {
        found = std::isnan(found) || value < found ? value : found;
    }
    return found;
}

/// What a batch should say of an installation by the answer of `check`.
void compare_row(const BatchRow& row, const Assessment& a, Differences& found) {
    const Score decided = score_of(a);
    const StateResult& limiting = a.solution.states[a.limiting];
    found.word("outcome",
               name(row.outcome),
               !a.works()                ? "short"
               : a.verdict.leaves_open() ? "open"
                                         : "pass");
    for (const Harm harm : harms) {
        found.word(name(harm),
                   name(row.harms[static_cast<std::size_t>(harm)]),
                   name(a.verdict.of(harm).outcome));
    }
    found.word("limiting_state", row.limiting_state, name(limiting.kind));
    found.word(
        "limiting_weather", row.limiting_weather, a.installation.weathers[limiting.weather].name);
    std::vector<double> capacities;
    std::vector<double> openings;
    std::size_t tightest = decided.states.size();
    for (std::size_t i = 0; i < decided.states.size(); ++i) {
        if (decided.verdicts[i].kind != Kind::pressure) {
            openings.push_back(decided.states[i].door.opening_share);
        } else if (tightest == decided.states.size()
                   || relative_spare(decided.verdicts[i], decided.states[i])
                          < relative_spare(decided.verdicts[tightest], decided.states[tightest])) {
            tightest = i;
        }
    }
    for (const StateResult& state : a.solution.states) {
        if (state.kind == StateKind::free_burn) {
            capacities.push_back(state.capacity_kg_s);
        }
    }
    found.number("capacity_kg_s", row.capacity_kg_s, least(capacities));
    found.number("opening_share", row.opening_share, least(openings));
    found.number("height_m", row.height_m, a.installation.total_rise_m());
    if (tightest == decided.states.size()) { // an open front is not held against a draft
        found.word("margin_state", row.margin_state, "");
    } else {
        const StateResult& state = decided.states[tightest];
        const std::string& weather = a.installation.weathers[state.weather].name;
        found.word("margin_state", row.margin_state, name(state.kind));
        found.word("margin_weather", row.margin_weather, weather);
        found.word("margin_status", name(row.margin_status), name(state.status));
        const double told = has_figures(state) ? 1.0 : std::numeric_limits<double>::quiet_NaN();
        found.number("margin_pa", row.margin_pa, told * state.margin_pa());
        found.number("draft_pa", row.draft_pa, told * state.draft_pa);
        found.number("draft_needed_pa", row.draft_needed_pa, state.draft_needed_pa);
    }
    std::string in_row;
    for (const std::string_view id : row.findings) {
        in_row += std::string{id} + ' ';
    }
    std::string in_check;
    for (const Finding& finding : a.findings) {
        const std::string id = std::string{finding.matter->id} + ' ';
        in_check += in_check.find(' ' + id) == std::string::npos && !in_check.starts_with(id)
                        ? id
                        : std::string{};
    }
    found.word("findings", in_row, in_check);
}

std::string findings_of(const Assessment& a) {
    std::string text;
    for (const Finding& finding : a.findings) {
        text += std::string{finding.matter->id} + " at " + finding.place + "; ";
    }
    return text;
}

constexpr std::array ranges{"outdoor=-15..15degC:2",
                            "height=2.5..9m:2",
                            "diameter=120..200mm:2",
                            "burn_rate=1..4kg/h:2",
                            "room/temperature=12..24degC:2",
                            "outlet/height=0.5..1.2m:2",
                            "/appliance/draft_needed/high=6..16Pa:2",
                            "/run/0/up=0.4..1.6m:2"};

} // namespace

TEST_CASE("a row of batch says what check says of the file") {
    for (std::uint64_t seed = 0; seed < households; ++seed) {
        const Installation written = random_household(seed);
        const BatchRow row = assess_record(
            {.number = 1, .source = "file", .line = 0, .text = write_installation(written)});
        Differences found;
        REQUIRE(row.error.empty());
        compare_row(row, checked(written), found);
        if (!found.none()) {
            fail_law(seed, "the row against check:\n" + found.text(), written);
        }
    }
}

TEST_CASE("a point of sweep, written and checked, shows the figures of the point") {
    std::size_t points = 0;
    for (std::uint64_t seed = 0; points < households; ++seed) {
        const Installation written = random_household(seed);
        const std::string typed = ranges[seed % ranges.size()];
        auto over = read_varied(typed, written);
        if (!over || (typed.starts_with("/run/0/up") && !written.run.front().up_m)) {
            continue;
        }
        const auto swept = sweep(written, {std::move(over).value()}, {});
        REQUIRE(swept.has_value());
        for (const SweepPoint& point : swept->points) {
            if (!point.score) {
                continue;
            }
            const auto file = with_value(written, swept->over.front().key, point.at.front());
            REQUIRE(file.has_value());
            const Assessment then = checked(through_file(*file));
            Differences found = compare(*point.score, score_of(then));
            found.number("works", point.works ? 1 : 0, then.works() ? 1 : 0);
            found.number("says why", point.short_of.empty() ? 0 : 1, then.works() ? 0 : 1);
            if (!found.none()) {
                fail_law(seed,
                         typed + " at " + std::to_string(point.at.front())
                             + " against check of the file with it:\n" + found.text()
                             + write_installation(*file) + "\nfor the installation",
                         written);
            }
            ++points;
        }
    }
    CHECK(points >= households);
}

TEST_CASE("a layout of compare shows what check shows of its file") {
    for (std::uint64_t seed = 0; seed + 1 < households; seed += 2) {
        const std::array written{random_household(seed), random_household(seed + 1)};
        const UnitSystem units = checked(written[0]).installation.units;
        for (std::size_t i = 0; i < written.size(); ++i) {
            // All layouts stand in the units of the first.
            auto assessed =
                assess(written[i], {.size_search = false, .spread = false, .units = units});
            REQUIRE(assessed.has_value());
            const Layout layout = layout_of("layout", written[i], std::move(assessed).value());
            const Assessment alone = checked(written[i]);
            Differences found = compare(layout.score, score_of(alone));
            found.word("findings", findings_of(layout.assessment), findings_of(alone));
            found.word("rules", layout.assessment.body->id, alone.body->id);
            if (!found.none()) {
                fail_law(seed + i, "the layout against check:\n" + found.text(), written[i]);
            }
        }
    }
}
