// What is promised of an installation that does not exist yet is what a check of its file says.
#include "catch.hpp"
#include "examples.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/advice/study/compare.hpp"
#include "fluewright/advice/study/sweep.hpp"
#include "fluewright/advice/trial/difference.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"

#include <algorithm>
#include <set>

using namespace fluewright;

namespace {

Installation as_file(const Installation& in) {
    const std::string text = write_installation(in);
    INFO(text);
    auto again = read_installation(text);
    REQUIRE(again.has_value());
    return std::move(again).value();
}

Assessment checked(const Installation& in) {
    auto assessed = assess(in, {.size_search = false, .spread = false});
    REQUIRE(assessed.has_value());
    return std::move(assessed).value();
}

/// The states that decide, figure for figure.
void check_same(const Score& promised, const Assessment& found) {
    const Score after = score_of(found);
    REQUIRE(promised.states.size() == after.states.size());
    CHECK(promised.passes == after.passes);
    CHECK(promised.limiting == after.limiting);
    for (std::size_t i = 0; i < after.states.size(); ++i) {
        CAPTURE(i, state_name(found.installation, after.states[i]));
        CHECK(promised.verdicts[i].spare == Approx(after.verdicts[i].spare).margin(1e-9));
        CHECK(promised.states[i].draft_pa == Approx(after.states[i].draft_pa).margin(1e-9));
    }
}

std::set<std::string_view> ids(const std::vector<const Matter*>& list) {
    std::set<std::string_view> made;
    for (const Matter* info : list) {
        made.insert(info->id);
    }
    return made;
}

std::set<std::string_view> ids(const Findings& findings) {
    std::set<std::string_view> made;
    for (const Finding& finding : findings) {
        made.insert(finding.matter->id);
    }
    return made;
}

bool has(const Assessment& a, std::string_view id) {
    return ids(a.findings).count(id) > 0;
}

/// Plans of a search, each held against a check of the file it would be written to.
std::size_t check_promises(const Installation& in, const ImproveOptions& options) {
    const auto made = improve(in, options);
    REQUIRE(made.has_value());
    const std::set<std::string_view> before = ids(checked(in).findings);
    for (const Plan& plan : made->plans) {
        CAPTURE(plan.rank, plan.steps.front().what);
        const Installation written = as_file(plan.changed);
        const Assessment found = checked(written);
        check_same(plan.score, found);
        const std::set<std::string_view> after = ids(found.findings);
        std::set<std::string_view> cleared;
        std::set<std::string_view> raised;
        std::set_difference(before.begin(),
                            before.end(),
                            after.begin(),
                            after.end(),
                            std::inserter(cleared, cleared.end()));
        std::set_difference(after.begin(),
                            after.end(),
                            before.begin(),
                            before.end(),
                            std::inserter(raised, raised.end()));
        CHECK(ids(plan.cleared) == cleared);
        // What only says in other words how short a condition is, is new where one became worse.
        const Assessment now = checked(in);
        bool any_worse = now.solution.states.size() != found.solution.states.size();
        for (std::size_t i = 0; i < found.solution.states.size() && !any_worse; ++i) {
            constexpr double noise = 1e-6;
            any_worse = relative_spare(found.verdicts[i], found.solution.states[i])
                        < relative_spare(now.verdicts[i], now.solution.states[i]) - noise;
        }
        if (!any_worse) {
            for (const std::string_view id :
                 {"draft-short", "house-starves-the-fire", "smoke-at-door"}) {
                raised.erase(id);
            }
        }
        CHECK(ids(plan.raised) == raised);
    }
    return made->plans.size();
}

Finding finding(std::string_view id, std::string place, double weight) {
    Finding made;
    made.matter = find_matter(id);
    REQUIRE(made.matter != nullptr);
    made.place = std::move(place);
    made.weight = weight;
    return made;
}

/// A sound run of one size, its outlet of 6 in.
Installation six_inch() {
    Installation in = example("bindery");
    in.appliance.outlet.diameter_m = 0.1524;
    for (Part& part : in.run) {
        part.diameter_m.reset();
    }
    in.run.front().diameter_m = 0.1524;
    return in;
}

} // namespace

TEST_CASE("a plan that is written out does what was promised", "[trial]") {
    std::size_t plans = 0;
    for (const std::string name : {"toll-house", "boat-shed", "print-shop", "ferry-office"}) {
        CAPTURE(name);
        plans += check_promises(example(name), {.most = 12});
    }
    CHECK(plans > 20);
}

TEST_CASE("joints that do not mate are not called cleared while they stand", "[trial]") {
    Installation in = example("boat-shed");
    in.run.front().heater_end = PipeEnd::plain;
    in.run.front().chimney_end = PipeEnd::crimped;
    const Assessment before = checked(in);
    REQUIRE((has(before, "crimp-points-up") || has(before, "ends-do-not-mate")));
    CHECK(check_promises(in, {.most = 12}) > 0);
}

TEST_CASE("a damper that tames the draft does so in the written file", "[trial]") {
    Installation in = example("bindery");
    in.appliance.draft_greatest_pa = 27.0;
    const auto made = improve(in, {});
    REQUIRE(made.has_value());
    REQUIRE(made->plans.front().steps.front().kind == RemedyKind::fit_damper);
    const Assessment found = checked(as_file(made->plans.front().changed));
    CHECK(found.works());
    CHECK_FALSE(has(found, "draft-too-strong"));
    check_promises(in, {.most = 12});
}

TEST_CASE("a damper for strong draft leaves the other states alone", "[trial]") {
    Installation in = example("bindery");
    Part damper;
    damper.part = PartKind::damper;
    damper.blade_angle_rad = 0.0;
    in.run.insert(in.run.begin() + 1, damper);
    in.appliance.draft_greatest_pa = 27.0;
    const Assessment open = checked(in);
    in.run[1].blade_angle_rad = 0.8;
    in.run[1].only_when_strong = true;
    const Assessment turned = checked(in);
    std::size_t held_back = 0;
    for (std::size_t i = 0; i < open.solution.states.size(); ++i) {
        const StateResult& a = open.solution.states[i];
        const StateResult& b = turned.solution.states[i];
        const bool fire = a.kind == StateKind::high_fire || a.kind == StateKind::low_fire;
        if (fire && a.draft_pa > 27.0) {
            CHECK(b.draft_pa < a.draft_pa);
            ++held_back;
        } else {
            CHECK(b.draft_pa == Approx(a.draft_pa).margin(1e-6));
            CHECK(b.capacity_kg_s == Approx(a.capacity_kg_s));
            CHECK(b.door.opening_share == Approx(a.door.opening_share));
        }
    }
    CHECK(held_back > 0);
}

TEST_CASE("check, size and compare have one opinion of a size", "[trial]") {
    for (const Installation& in : {six_inch(), example("boat-shed"), example("sugar-house")}) {
        for (const TradeSizes sizes : {TradeSizes::inch, TradeSizes::metric}) {
            const auto table = tabulate_sizes(in, {.heights_m = {}, .sizes = sizes});
            const auto assessed = assess(in, {.sizes = sizes});
            REQUIRE(table.has_value());
            REQUIRE(assessed.has_value());
            REQUIRE(table->rows.size() == assessed->size.trials.size());
            for (std::size_t i = 0; i < table->rows.size(); ++i) {
                const SizeRow& row = table->rows[i];
                const SizeTrial& trial = assessed->size.trials[i];
                CAPTURE(row.connector);
                CHECK(trial.id == row.connector);
                CHECK(trial.ruled_out_by == row.ruled_out_by);
                const auto made = row.present
                                      ? changed(AsItStands{}, in)
                                      : changed(OtherPipe{row.connector_m, row.chimney_m}, in);
                REQUIRE(made.has_value());
                const Installation file = as_file(*made);
                const Assessment found = checked(file);
                const bool rule = has(found, "flue-smaller-than-outlet")
                                  || has(found, "flue-far-larger-than-outlet");
                CAPTURE(in.title.value_or(""), row.ruled_out_by);
                CHECK(row.against_rule == rule);
                REQUIRE(row.score.has_value());
                check_same(*row.score, found);
                const Layout layout = layout_of("file", file, found);
                check_same(layout.score, found);
                CHECK(ids(layout.assessment.findings) == ids(found.findings));
            }
        }
    }
}

TEST_CASE("a point of a sweep is what a check of that file says", "[trial]") {
    const Installation in = example("toll-house");
    for (const std::string over :
         {"outdoor=-15..10degC:3", "height=5..8m:2", "moisture=15..30%:2"}) {
        CAPTURE(over);
        auto varied = read_varied(over, in);
        REQUIRE(varied.has_value());
        const auto made = sweep(in, {std::move(varied).value()}, {});
        REQUIRE(made.has_value());
        for (const SweepPoint& point : made->points) {
            REQUIRE(point.score.has_value());
            const auto file = with_value(in, made->over[0].key, point.at[0]);
            REQUIRE(file.has_value());
            check_same(*point.score, checked(as_file(*file)));
        }
    }
}

TEST_CASE("once cured means what a check of the cured file says", "[trial]") {
    std::size_t cures = 0;
    for (const std::string name : {"ferry-office", "tannery", "dye-house"}) {
        CAPTURE(name);
        const auto made = diagnose(example(name));
        REQUIRE(made.has_value());
        for (const Explanation& explanation : made->explanations) {
            if (!explanation.cured) {
                continue;
            }
            CAPTURE(explanation.title);
            const Assessment found = checked(as_file(explanation.cured->installation));
            const StateResult& tightest = found.solution.states[found.limiting];
            CHECK(explanation.cured->works == found.works());
            CHECK(explanation.cured->state == state_name(found.installation, tightest));
            CHECK(explanation.cured->draft_pa == Approx(tightest.draft_pa).margin(1e-9));
            ++cures;
        }
    }
    CHECK(cures >= 4);
}

TEST_CASE("the margin of a batch is that of the state it names", "[trial]") {
    for (const std::string name : {"bindery", "boat-shed", "toll-house", "village-hall"}) {
        CAPTURE(name);
        const Installation in = example(name);
        const BatchRow row =
            assess_record({.number = 1, .source = name, .line = 0, .text = write_installation(in)});
        const Assessment found = checked(in);
        bool named = false;
        for (const StateResult& state : found.solution.states) {
            if (row.margin_state == fluewright::name(state.kind)
                && row.margin_weather == found.installation.weathers[state.weather].name) {
                named = true;
                CHECK(row.margin_pa == Approx(state.margin_pa()));
                CHECK(row.draft_pa == Approx(state.draft_pa));
                CHECK(row.draft_needed_pa == Approx(state.draft_needed_pa));
            }
        }
        CHECK(named);
        if (!row.limiting_state.starts_with("door")) {
            CHECK(row.limiting_state == row.margin_state);
            CHECK(row.limiting_weather == row.margin_weather);
        }
    }
}

TEST_CASE("findings are told apart by id and place", "[trial]") {
    Assessment before;
    Assessment after;
    before.findings = {finding("crimp-points-up", "between straight 1 and elbow 2", 1.0),
                       finding("crimp-points-up", "between elbow 2 and straight 3", 1.0),
                       finding("draft-short", "", 0.5),
                       finding("no-cleanout-at-turn-up", "elbow 2", 1.0)};
    after.findings = {finding("crimp-points-up", "between straight 1 and elbow 2", 1.0),
                      finding("draft-short", "", 0.2),
                      finding("no-cleanout-at-turn-up", "elbow 3", 1.0),
                      finding("level-run-too-flat", "straight 3", 1.0)};
    const Difference made = difference(before, after);
    REQUIRE(made.cleared.size() == 1);
    CHECK(made.cleared.front().place == "between elbow 2 and straight 3");
    REQUIRE(made.raised.size() == 1);
    CHECK(made.raised.front().matter->id == "level-run-too-flat");
    REQUIRE(made.better.size() == 1);
    CHECK(made.better.front().after.weight == 0.2);
    CHECK(made.worse.empty());
    // One of its kind is left, so the kind as such is not gone.
    CHECK(gone(before.findings, after.findings).empty());
    CHECK(ids(gone(after.findings, before.findings))
          == std::set<std::string_view>{"level-run-too-flat"});
}

TEST_CASE("changes are made one after the other, and say why they cannot be", "[trial]") {
    const Installation in = six_inch();
    const std::vector<Change> both{OtherPipe{0.18, 0.18},
                                   Remedy{.kind = RemedyKind::raise_top, .amount = 0.5}};
    const auto made = try_out(both, in);
    REQUIRE(made.has_value());
    CHECK(made->resolved.total_rise_m() == Approx(checked(in).installation.total_rise_m() + 0.5));
    CHECK(made->resolved.sections.back().diameter_m == Approx(0.18));
    CHECK(as_file(made->changed).run == made->changed.run);
    const auto low = changed(OtherPipe{0.18, 0.18, 0.1}, in);
    REQUIRE_FALSE(low.has_value());
    CHECK(low.error() == "too little would be left of the topmost straight");
    const auto nothing = changed(Remedy{.kind = RemedyKind::remove_damper}, in);
    REQUIRE_FALSE(nothing.has_value());
    CHECK_FALSE(changed(FlawGone{diagnosis::CauseId::nothing}, in).has_value());
}
