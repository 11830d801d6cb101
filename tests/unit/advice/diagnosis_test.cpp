#include "catch.hpp"
#include "diagnosis/diagnosed.hpp"
#include "examples.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/warmup/tended.hpp"

#include <algorithm>
#include <fstream>
#include <numeric>

using namespace fluewright;
using Catch::Matchers::Contains;

namespace {

Observation look(LookedAt what, FoundState found) {
    Observation seen;
    seen.look = what;
    seen.found = found;
    return seen;
}

Observation draft(double pa) {
    Observation seen;
    seen.state = StateKind::high_fire;
    seen.at = "outlet";
    seen.draft_pa = pa;
    return seen;
}

const NextCheck* check_named(const Diagnosis& diagnosis, std::string_view id) {
    const auto found = std::find_if(diagnosis.checks.begin(),
                                    diagnosis.checks.end(),
                                    [&](const NextCheck& check) { return check.check->id == id; });
    return found == diagnosis.checks.end() ? nullptr : &*found;
}

} // namespace

TEST_CASE("a fire gets the air that the draft brings", "[diagnosis]") {
    auto made = resolve(example("tannery"));
    REQUIRE(made.has_value());
    Case c = std::move(made).value();
    const auto tended = [&] {
        const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
        return solve_tended(model, GasChoice::high_fire, Detail::totals);
    };
    const StateResult free = tended();
    CHECK(free.status == Status::solved);
    CHECK(free.gas_flow_kg_s == c.appliance.high.gas_flow_kg_s);
    CHECK(free.draft_pa > free.draft_needed_pa);
    c.appliance.high.draft_needed_pa *= 5.0;
    const StateResult starved = tended();
    CHECK(starved.status == Status::solved);
    CHECK(starved.gas_flow_kg_s < 0.9 * free.gas_flow_kg_s);
    CHECK(starved.gas_temperature_k < free.gas_temperature_k);
    // Draft and need agree where the draft limits.
    CHECK(starved.draft_pa == Approx(starved.draft_needed_pa).epsilon(0.01));
    c.appliance.high.draft_needed_pa *= 1e4;
    CHECK(tended().status == Status::no_flow);
}

TEST_CASE("probabilities are shares of one, and the same every time", "[diagnosis]") {
    for (const char* name : {"tannery", "dye-house", "ferry-office", "net-loft"}) {
        const Diagnosis first = diagnosis_of(example(name));
        const Diagnosis again = diagnosis_of(example(name));
        double sum = 0.0;
        REQUIRE(first.explanations.size() == again.explanations.size());
        for (std::size_t i = 0; i < first.explanations.size(); ++i) {
            const Explanation& e = first.explanations[i];
            sum += e.probability;
            CHECK(e.probability == again.explanations[i].probability);
            CHECK((i == 0 || e.probability <= first.explanations[i - 1].probability));
            CHECK(!e.title.empty());
            CHECK(!e.mechanism.empty());
            CHECK(!e.remedy.empty());
            for (const SizedCause& sized : e.causes) {
                CHECK((!sized.has_size
                       || (sized.size_low <= sized.size && sized.size <= sized.size_high)));
            }
        }
        // What is too unlikely to be told is left out.
        CHECK(sum <= 1.0 + 1e-9);
        CHECK(sum > 0.9);
    }
}

TEST_CASE("a look at the cap settles what a draft reading leaves open", "[diagnosis]") {
    Installation written = example("tannery");
    const double before = share_of(diagnosis_of(written), "clogged-screen");
    written.observed.push_back(look(LookedAt::cap, FoundState::bad));
    const Diagnosis bad = diagnosis_of(written);
    CHECK(share_of(bad, "clogged-screen") > before);
    CHECK(share_of(bad, "clogged-screen") > 0.75);
    const SizedCause& screen = bad.explanations.front().causes.front();
    CHECK(screen.cause->id == "clogged-screen");
    CHECK(screen.size_low > 0.7);
    CHECK_THAT(screen.place, Contains("chimney top"));
    REQUIRE(bad.explanations.front().cured);
    CHECK(bad.explanations.front().cured->works);
    written.observed.back() = look(LookedAt::cap, FoundState::good);
    CHECK(share_of(diagnosis_of(written), "clogged-screen") < before);
}

TEST_CASE("how far a blockage goes is read off the draft", "[diagnosis]") {
    Installation written = example("tannery");
    written.observed.clear();
    written.observed.push_back(look(LookedAt::flue, FoundState::bad));
    double before = 0.0;
    for (const double pa : {28.0, 22.0, 14.0}) {
        Installation measured = written;
        measured.observed.push_back(draft(pa));
        const Diagnosis diagnosis = diagnosis_of(measured);
        const auto blocked = std::find_if(
            diagnosis.explanations.begin(), diagnosis.explanations.end(), [](const Explanation& e) {
                return e.causes.size() == 1 && e.causes.front().cause->id == "blockage";
            });
        REQUIRE(blocked != diagnosis.explanations.end());
        CHECK(blocked->causes.front().size > before);
        before = blocked->causes.front().size;
    }
}

TEST_CASE("gas in the room comes before all else", "[diagnosis]") {
    const Diagnosis alarm = diagnosis_of(example("dye-house"));
    // After an alarm nothing asks for a fire, and nothing is tuned.
    CHECK(alarm.no_fire);
    CHECK_FALSE(alarm.better);
    CHECK_FALSE(alarm.checks.empty());
    for (const NextCheck& check : alarm.checks) {
        CHECK(check.check->fire == "no");
    }
    for (const Explanation& explanation : alarm.explanations) {
        CHECK((explanation.confirm == nullptr || explanation.confirm->fire == "no"));
    }
    REQUIRE(!alarm.urgent.empty());
    CHECK_THAT(alarm.urgent.front(), Contains("alarm"));
    CHECK(alarm.explanations.front().causes.front().cause->id == "fan");
    Installation quiet = example("dye-house");
    quiet.observed.clear();
    quiet.observed.push_back(draft(25.0));
    CHECK(diagnosis_of(quiet).urgent.empty());
}

TEST_CASE("a design that explains everything needs no hidden cause", "[diagnosis]") {
    const Diagnosis diagnosis = diagnosis_of(example("ferry-office"));
    CHECK(diagnosis.design_explains);
    CHECK(!diagnosis.explanations.front().causes.front().has_size);
    CHECK_THAT(diagnosis.sentence, Contains("no hidden cause"));
    REQUIRE(diagnosis.better);
    CHECK(!diagnosis.better->steps.empty());
}

TEST_CASE("a sound run in which nothing was seen has nothing hidden", "[diagnosis]") {
    Installation written = example("tannery");
    written.observed = {draft(31.0)};
    Observation no_smoke;
    no_smoke.smoke = SmokePlace::none;
    no_smoke.state = StateKind::door_open_embers;
    written.observed.push_back(no_smoke);
    no_smoke.state = StateKind::high_fire;
    written.observed.push_back(no_smoke);
    for (const LookedAt what : {LookedAt::cap,
                                LookedAt::flue,
                                LookedAt::joints,
                                LookedAt::door_seal,
                                LookedAt::sizes,
                                LookedAt::baffle}) {
        written.observed.push_back(look(what, FoundState::good));
    }
    Observation lively;
    lively.sluggish = false;
    lively.roaring = false;
    written.observed.push_back(lively);
    const Diagnosis diagnosis = diagnosis_of(written);
    CHECK(diagnosis.explanations.front().causes.empty());
    CHECK_THAT(diagnosis.sentence, Contains("no hidden cause is needed"));
}

TEST_CASE("what no cause can bring about is called a conflict", "[diagnosis]") {
    Installation written = example("tannery");
    written.observed = {draft(60.0)};
    const Diagnosis diagnosis = diagnosis_of(written);
    CHECK(diagnosis.nothing_explains);
    CHECK(!diagnosis.seen.front().fits);
    CHECK_THAT(diagnosis.sentence, Contains("No cause"));
}

TEST_CASE("with nothing seen the checks are there all the same", "[diagnosis]") {
    Installation written = example("tannery");
    written.observed.clear();
    const Diagnosis diagnosis = diagnosis_of(written);
    CHECK(!diagnosis.nothing_explains);
    CHECK_THAT(diagnosis.sentence, Contains("Nothing was observed"));
    REQUIRE(diagnosis.checks.size() > 5);
    for (std::size_t i = 1; i < diagnosis.checks.size(); ++i) {
        CHECK(diagnosis.checks[i].worth <= diagnosis.checks[i - 1].worth);
        CHECK(diagnosis.checks[i].bits >= 0.0);
    }
}

TEST_CASE("step by step comes to the same as all at once", "[diagnosis]") {
    Installation written = example("tannery");
    written.observed.clear();
    auto opened = Diagnoser::open(written);
    REQUIRE(opened.has_value());
    Diagnoser& diagnoser = *opened;
    Diagnosis step = diagnoser.diagnose();
    const NextCheck* cap = check_named(step, "cap");
    REQUIRE(cap != nullptr);
    CHECK(!diagnoser.answer(*cap, {.word = "perhaps", .value = {}}));
    CHECK(diagnoser.answer(*cap, {.word = "no", .value = {}}));
    step = diagnoser.diagnose();
    CHECK(check_named(step, "cap") == nullptr);
    const NextCheck* gas = check_named(step, "gas-outlet");
    REQUIRE(gas != nullptr);
    CHECK(!diagnoser.answer(*gas, {.word = "yes", .value = {}}));
    CHECK(diagnoser.answer(*gas, {.word = {}, .value = 520.0}));
    const Diagnosis stepwise = diagnoser.diagnose();
    const Diagnosis whole = diagnosis_of(diagnoser.installation());
    REQUIRE(diagnoser.installation().observed.size() == written.observed.size() + 2);
    for (const Explanation& e : whole.explanations) {
        if (e.causes.size() == 1) {
            CHECK(share_of(stepwise, e.causes.front().cause->id)
                  == Approx(share_of(whole, e.causes.front().cause->id)).margin(0.05));
        }
    }
}

TEST_CASE("a check once refused is not proposed again", "[diagnosis]") {
    auto diagnoser = Diagnoser::open(example("net-loft"));
    REQUIRE(diagnoser.has_value());
    const Diagnosis before = diagnoser->diagnose();
    const NextCheck first = before.checks.front();
    diagnoser->skip(first);
    const Diagnosis after = diagnoser->diagnose();
    CHECK(after.checks.size() == before.checks.size() - 1);
    CHECK((after.checks.front().check != first.check || after.checks.front().at != first.at));
}

TEST_CASE("the tables of diagnosis fit together", "[diagnosis]") {
    for (const diagnosis::Check& check : diagnosis::checks()) {
        CHECK(check.effort > 0.0);
        CHECK((check.kind == "look") == !check.look.empty());
        double revealed = 0.0;
        for (const diagnosis::Cause& cause : diagnosis::causes()) {
            const double share = diagnosis::found_share(check, cause.id);
            CHECK(share >= 0.0);
            CHECK(share <= 1.0);
            revealed += share > check.false_alarm ? 1.0 : 0.0;
        }
        CHECK((check.kind == "look") == (revealed > 0.0));
    }
    for (const diagnosis::Symptom& symptom : diagnosis::symptoms()) {
        CHECK(symptom.least < symptom.most);
        CHECK(symptom.share(symptom.threshold - 20.0 * symptom.softness)
              == Approx(symptom.least).margin(1e-6));
        CHECK(symptom.share(symptom.threshold + 20.0 * symptom.softness)
              == Approx(symptom.most).margin(1e-6));
    }
}

TEST_CASE("a gas temperature read is held against what its thermometer shows", "[diagnosis]") {
    Installation written = example("tannery");
    Observation seen;
    seen.state = StateKind::high_fire;
    seen.at = "outlet";
    seen.gas_temperature_k = 550.0;
    written.observed = {seen};
    const auto expected_k = [&](std::optional<GasReading> kind) {
        written.observed.front().gas_temperature_kind = kind;
        return diagnosis_of(written).seen.front();
    };
    const auto by_default = expected_k({});
    const auto by_probe = expected_k(GasReading::bare_probe);
    const auto true_gas = expected_k(GasReading::true_gas);
    CHECK(by_default.words == by_probe.words);
    CHECK_THAT(by_probe.words, Contains("by a bare probe"));
    CHECK(by_default.expected == by_probe.expected);
    CHECK_THAT(true_gas.words, !Contains("probe"));
    CHECK(true_gas.expected != by_probe.expected);
}

TEST_CASE("drips count where they were seen: what runs out there came from above", "[diagnosis]") {
    // A bare chimney outdoors over an insulated one would be odd; a cold lower half is not.
    Installation in = example("tannery");
    in.observed.clear();
    in.run[0].zone = Zone::outdoors;
    Observation seen;
    seen.drips = true;
    in.observed = {seen};
    const Diagnosis anywhere = diagnosis_of(in);
    in.observed.front().at = "1";
    const Diagnosis below = diagnosis_of(in);
    in.observed.front().at = "chimney top";
    const Diagnosis top = diagnosis_of(in);
    CHECK_THAT(top.seen.front().words, Contains("drips from the flue at the chimney top"));
    CHECK_THAT(below.seen.front().words, Contains("behind straight 1"));
    CHECK(anywhere.seen.front().words == "drips from the flue");
    CHECK(share_of(anywhere, "cold-flue") != share_of(top, "cold-flue"));
}

TEST_CASE("black water at the joints of pipe that lies upside down", "[diagnosis]") {
    Installation in = example("tannery");
    Observation seen;
    seen.drips = true;
    in.observed = {seen};
    const double as_usual = share_of(diagnosis_of(in), "crimps-up");
    in.run[0].heater_end = PipeEnd::plain;
    in.run[0].chimney_end = PipeEnd::crimped;
    const Diagnosis turned = diagnosis_of(in);
    CHECK(as_usual == 0.0);
    CHECK(share_of(turned, "crimps-up") > 0.2);
    // Seen behind that pipe it speaks for it; behind the last it tells of something else.
    in.observed.front().at = "1";
    CHECK(share_of(diagnosis_of(in), "crimps-up")
          == Approx(share_of(turned, "crimps-up")).margin(0.05));
    in.observed.front().at = "4";
    CHECK(share_of(diagnosis_of(in), "crimps-up") < 0.8 * share_of(turned, "crimps-up"));
    // Without anything that ran out nobody looks at the joints first.
    in.observed.front() = {};
    in.observed.front().sluggish = true;
    CHECK(share_of(diagnosis_of(in), "crimps-up") < share_of(turned, "crimps-up") / 2.0);
}

TEST_CASE("a cure that leaves what was seen says so", "[diagnosis]") {
    // A door twice as large as the flue can serve: sweeping leaves most of the smoke.
    Installation in = example("tannery");
    in.appliance.door.width_m = 0.9;
    in.appliance.door.height_m = 0.6;
    in.observed.clear();
    Observation seen;
    seen.smoke = SmokePlace::door;
    in.observed = {seen, look(LookedAt::flue, FoundState::bad)};
    const Diagnosis made = diagnosis_of(in);
    const auto hidden =
        std::find_if(made.explanations.begin(), made.explanations.end(), [](const Explanation& e) {
            return !e.causes.empty() && e.causes.front().has_size;
        });
    REQUIRE(hidden != made.explanations.end());
    REQUIRE(hidden->cured.has_value());
    REQUIRE(hidden->cured->left.size() == 1);
    CHECK_THAT(hidden->cured->left.front().words, Contains("smoke at the opened door"));
    CHECK(hidden->cured->left.front().share > 0.25);
    // With the door it has, nothing of it is left.
    Installation sound = example("tannery");
    sound.observed = in.observed;
    for (const Explanation& e : diagnosis_of(sound).explanations) {
        CHECK((!e.cured || !e.cured->works || e.cured->left.empty()));
    }
}
