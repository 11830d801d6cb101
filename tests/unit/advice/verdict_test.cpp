// The answer by kind of harm: what counts, what falls short, which line says so.
#include "catch.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/advice/trial/change.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "unit/examples.hpp"

#include <algorithm>
#include <filesystem>

using namespace fluewright;
using Catch::Matchers::Contains;

namespace {

const std::filesystem::path examples = std::filesystem::path{PROJECT_SOURCE_DIR} / "examples";

Assessment answer(const Installation& in, const Required& required = {}) {
    auto made = assess(in, {.size_search = false, .spread = false, .required = required});
    REQUIRE(made.has_value());
    return std::move(made).value();
}

Required only(const std::string& list) {
    auto read = read_required(list);
    REQUIRE(read.has_value());
    return *read;
}

/// A stove whose door may be opened `share` of the way, and nothing else wrong.
Assessment with_door(double share, const Required& required = {}) {
    Assessment a = answer(example("bindery"), required);
    a.findings.clear();
    for (std::size_t i = 0; i < a.verdicts.size(); ++i) {
        StateResult& state = a.solution.states[i];
        if (state.kind == StateKind::door_open_embers) {
            state.door.opening_share = share;
            a.verdicts[i] = judge(a.installation, state);
        }
    }
    a.verdict = judge_harms(a, true);
    return a;
}

} // namespace

TEST_CASE("a list of what is required is read, and said back", "[verdict]") {
    CHECK(only("fire").asks(Harm::fire));
    CHECK_FALSE(only("fire").asks(Harm::draft));
    CHECK_FALSE(only("fire").narrow_door);
    CHECK(list_of(only("upkeep,fire")) == "fire,upkeep");
    CHECK(list_of(Required{}).empty());
    CHECK_THAT(in_words(Required{}), Contains("25 %"));
    CHECK_THAT(read_required("fire,drat").error(), Contains("did you mean `draft`?"));
    CHECK_FALSE(read_required("").has_value());
    CHECK_FALSE(read_required("fire,,draft").has_value());
}

TEST_CASE("how far a door may be opened is rounded in one way", "[verdict]") {
    const auto words = [](double share) {
        return opening_share_words(share, 0.5, UnitSystem::metric);
    };
    CHECK(words(0.3751) == "38 %");
    CHECK(words(0.3749) == "37 %");
    CHECK(words(0.496) == "49 %"); // it does not reach the half that is required
    CHECK(words(0.5) == "50 %");
    CHECK(words(0.9951) == "100 %");
    CHECK(words(2.0) == "100 %");
    CHECK(words(-0.2) == "0 %");
    CHECK(words(0.003) == "0.3 %");
}

TEST_CASE("a door that opens half way passes, one under a quarter counts unasked", "[verdict]") {
    struct Row {
        double share;
        HarmOutcome outcome;
        bool counts;
    };

    for (const Row& row : {Row{0.51, HarmOutcome::passes, false},
                           Row{0.5, HarmOutcome::passes, false},
                           Row{0.49, HarmOutcome::falls_short, false},
                           Row{0.26, HarmOutcome::falls_short, false},
                           Row{0.25, HarmOutcome::falls_short, false},
                           Row{0.24, HarmOutcome::falls_short, true},
                           Row{0.0, HarmOutcome::falls_short, true}}) {
        CAPTURE(row.share);
        const Assessment a = with_door(row.share);
        const HarmVerdict& reloading = a.verdict.of(Harm::reloading);
        CHECK(reloading.outcome == row.outcome);
        CHECK(reloading.counts == row.counts);
        CHECK(a.works() == !row.counts);
        CHECK(score_of(a).passes == !row.counts);
        CHECK(with_door(row.share, only("reloading")).works() == (row.share >= 0.5));
        CHECK(with_door(row.share, only("draft")).works());
    }
}

TEST_CASE("what is required decides, and nothing else", "[verdict]") {
    const Installation hall = example("village-hall");
    const Assessment all = answer(hall);
    for (const Harm harm : harms) {
        CAPTURE(name(harm));
        const Assessment a = answer(hall, only(std::string{name(harm)}));
        CHECK(a.works() == (all.verdict.of(harm).outcome != HarmOutcome::falls_short));
        CHECK(a.verdict.of(harm).outcome == all.verdict.of(harm).outcome);
    }
}

TEST_CASE("the four lines come in order of harm, and each that applies has its words",
          "[verdict]") {
    for (const auto& entry : std::filesystem::directory_iterator(examples)) {
        if (entry.path().extension() != ".json") {
            continue;
        }
        CAPTURE(entry.path().string());
        const Assessment a = answer(example(entry.path().stem().string()));
        std::size_t place = 0;
        for (const HarmVerdict& v : a.verdict.harms) {
            CHECK(v.harm == harms[place++]);
            CHECK_FALSE(v.sentence.empty());
            const bool falls = v.outcome == HarmOutcome::falls_short;
            CHECK(falls == (v.short_of > 0));
            CHECK_FALSE((falls && v.first.empty()));
        }
        const bool danger = std::any_of(a.findings.begin(), a.findings.end(), [](const Finding& f) {
            return f.severity == Severity::danger;
        });
        CHECK(danger == (a.verdict.of(Harm::fire).outcome == HarmOutcome::falls_short));
        if (danger) {
            CHECK(a.sentence.find("fire and carbon monoxide") != std::string::npos);
            CHECK_FALSE(a.works());
        }
    }
}

TEST_CASE("an open front is judged as draft", "[verdict]") {
    const Assessment a = answer(example("gatehouse"));
    CHECK(a.verdict.of(Harm::reloading).outcome == HarmOutcome::does_not_apply);
    for (std::size_t i = 0; i < a.verdicts.size(); ++i) {
        if (a.verdicts[i].counts) {
            CHECK(a.verdicts[i].harm == Harm::draft);
        }
    }
    for (const Finding& finding : a.findings) {
        CHECK(finding.harm != Harm::reloading);
    }
}

TEST_CASE("a danger is a matter of fire, and what kills is no matter of upkeep", "[verdict]") {
    const auto made = [](std::string_view id, Severity severity) {
        Finding finding;
        finding.matter = find_matter(id);
        finding.severity = severity;
        finding.harm = harm_of(*finding.matter, severity);
        return finding;
    };
    CHECK(made("surface-over-rating", Severity::danger).harm == Harm::fire);
    CHECK(falls_short(made("surface-over-rating", Severity::danger)));
    CHECK(made("surface-over-rating", Severity::warning).harm == Harm::upkeep);
    CHECK(falls_short(made("surface-over-rating", Severity::warning)));
    CHECK_FALSE(falls_short(made("surface-over-rating", Severity::note)));
    CHECK(made("downdraft-in-wind", Severity::failure).harm == Harm::draft);
    CHECK(falls_short(made("downdraft-in-wind", Severity::failure)));
    CHECK_FALSE(falls_short(made("downdraft-in-wind", Severity::warning)));
    CHECK_FALSE(falls_short(made("house-starves-the-fire", Severity::failure)));
    CHECK_FALSE(falls_short(made("smoke-at-door", Severity::warning)));
    CHECK(made("smoke-at-front", find_matter("smoke-at-front")->severity).harm == Harm::fire);
    CHECK(falls_short(made("smoke-at-front", find_matter("smoke-at-front")->severity)));
}

TEST_CASE("without words the verdict is the same", "[verdict]") {
    const Installation in = example("cider-press");
    const Assessment a = answer(in);
    const auto quick = assess(in, {.size_search = false, .words = false, .spread = false});
    REQUIRE(quick.has_value());
    for (const Harm harm : harms) {
        CHECK(quick->verdict.of(harm).outcome == a.verdict.of(harm).outcome);
        CHECK(quick->verdict.of(harm).open == a.verdict.of(harm).open);
        CHECK(quick->verdict.of(harm).short_of == a.verdict.of(harm).short_of);
        CHECK(quick->verdict.of(harm).sentence.empty());
    }
    CHECK(quick->works() == a.works());
}

TEST_CASE("an alarm that has sounded is a danger that no change takes away") {
    Installation in = example("bindery");
    in.observed.emplace_back().co_alarm = true;
    const Assessment heard = answer(in);
    CHECK_FALSE(heard.works());
    CHECK(heard.findings.front().matter->id == "alarm-has-sounded");
    const auto changes = possible_remedies(in, heard.installation);
    REQUIRE_FALSE(changes.empty());
    for (const Remedy& remedy : changes) {
        const auto made = changed(Change{remedy}, in);
        REQUIRE(made);
        CHECK(made->observed.size() == 1);
        CHECK(made->observed.front().co_alarm == true);
    }
    const auto improvement = improve(in, {.most = 1});
    REQUIRE(improvement);
    CHECK(improvement->outcome == Improvement::Outcome::hopeless);
    REQUIRE_FALSE(improvement->stuck.empty());
    CHECK(improvement->stuck.front()->id == "alarm-has-sounded");
}

TEST_CASE("a margin that decides is printed, however small", "[verdict]") {
    Assessment a = answer(example("bindery"));
    a.findings.clear();
    for (std::size_t i = 0; i < a.verdicts.size(); ++i) {
        StateResult& state = a.solution.states[i];
        if (state.kind == StateKind::low_fire) {
            state.draft_pa = state.draft_needed_pa - 0.002;
            a.verdicts[i] = judge(a.installation, state);
        }
    }
    a.verdict = judge_harms(a, true);
    const HarmVerdict& draft = a.verdict.of(Harm::draft);
    REQUIRE(draft.outcome == HarmOutcome::falls_short);
    CAPTURE(draft.sentence);
    const std::size_t where = draft.sentence.find(" where ");
    const std::size_t is = draft.sentence.find(" is required");
    REQUIRE(where != std::string::npos);
    const std::size_t comma = draft.sentence.rfind(", ", where);
    CHECK(draft.sentence.substr(comma + 2, where - comma - 2)
          != draft.sentence.substr(where + 7, is - where - 7));
}

TEST_CASE("smoke that was seen at the door makes reloading count, unless one chose", "[verdict]") {
    Installation in = example("bindery");
    Observation seen;
    seen.smoke = SmokePlace::joints;
    in.observed = {seen};
    CHECK_FALSE(answer(in).verdict.of(Harm::reloading).counts);
    in.observed.front().smoke = SmokePlace::door;
    const Assessment told = answer(in);
    CHECK(told.verdict.of(Harm::reloading).counts);
    CHECK(in_words(told.required) == "fire, draft, reloading, as smoke was seen at the door");
    CHECK_FALSE(answer(in, only("fire,draft")).verdict.of(Harm::reloading).counts);
    // An open fire has no door to reload through; its smoke is a matter of draft.
    Installation front = example("gatehouse");
    front.observed = in.observed;
    CHECK(answer(front).required == Required{});
}
