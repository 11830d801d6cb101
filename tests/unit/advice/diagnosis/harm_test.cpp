#include "catch.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>

using namespace fluewright;

namespace {

using Json = nlohmann::json;

Installation urgent_installation_of(const Json& file) {
    const ReadResult read = read_installation(file.dump());
    REQUIRE(read);
    return *read;
}

Diagnosis urgent_diagnosis_of(const Installation& written) {
    auto made = diagnose(written);
    REQUIRE(made);
    return std::move(*made);
}

std::string first_id_of(const Explanation& explanation) {
    return explanation.causes.empty() ? "nothing"
                                      : std::string{explanation.causes.front().cause->id};
}

std::string urgent_joined(const std::vector<std::string>& lines) {
    std::string all;
    for (const std::string& line : lines) {
        all += line + '\n';
    }
    return all;
}

double share_of_cause(const Diagnosis& diagnosis, const std::string& id) {
    double sum = 0.0;
    for (const Explanation& each : diagnosis.explanations) {
        sum += first_id_of(each) == id ? each.probability : 0.0;
    }
    return sum;
}

std::string urgent_text_of(const Diagnosis& diagnosis) {
    DiagnosisReportOptions options;
    options.style.width = 100000; // no line breaks within a sentence
    options.style.units = diagnosis.units;
    return diagnosis_text(diagnosis, options);
}

Json urgent_cases() {
    std::ifstream in(PROJECT_SOURCE_DIR "/tests/unit/advice/diagnosis/harm.json");
    return Json::parse(in);
}

Json urgent_file_of(const Json& table, const Json& entry) {
    Json file = table["base"];
    const Json change = entry.value("change", Json::object());
    for (const auto& [key, value] : change.items()) {
        file[key] = value;
    }
    file["observed"] = entry["observed"];
    return file;
}

void check_words(const Json& entry, const Diagnosis& diagnosis) {
    const std::string urgent = urgent_joined(diagnosis.urgent);
    const std::string text = urgent_text_of(diagnosis);
    for (const auto& word : entry.value("urgent", Json::array())) {
        CAPTURE(word, urgent);
        CHECK(urgent.find(word.get<std::string>()) != std::string::npos);
    }
    for (const auto& word : entry.value("never", Json::array())) {
        CAPTURE(word);
        CHECK(text.find(word.get<std::string>()) == std::string::npos);
    }
    if (entry.contains("cure")) {
        CHECK(diagnosis.explanations.front().remedy.find(entry["cure"].get<std::string>()) == 0);
    }
    if (entry.contains("mend")) {
        CHECK(diagnosis.mend_first.find(entry["mend"].get<std::string>()) != std::string::npos);
    }
    if (entry.value("cold", false)) {
        CHECK(diagnosis.no_fire);
        CHECK(text.find("take it again") == std::string::npos);
    }
    if (entry.value("cold", false) || entry.value("cold_checks", false)) {
        for (const NextCheck& check : diagnosis.checks) {
            CAPTURE(check.check->title);
            CHECK(check.check->fire == "no");
        }
        for (const Explanation& each : diagnosis.explanations) {
            CHECK((each.confirm == nullptr || each.confirm->fire == "no"));
        }
    }
}

void check_causes(const Json& entry, const Diagnosis& diagnosis) {
    const Explanation& first = diagnosis.explanations.front();
    if (entry.contains("first")) {
        CAPTURE(first.title, first.probability);
        CHECK(
            (first_id_of(first) == entry["first"] || first_id_of(first) == entry.value("or", "")));
    }
    double with_first = 0.0; // alone, or together with another
    for (const Explanation& each : diagnosis.explanations) {
        with_first += std::any_of(each.causes.begin(),
                                  each.causes.end(),
                                  [&](const SizedCause& sized) {
                                      return sized.cause->id == first_id_of(first);
                                  })
                          ? each.probability
                          : 0.0;
    }
    CHECK(with_first >= entry.value("least", 0.0));
    if (entry.contains("next")) {
        REQUIRE(!diagnosis.checks.empty());
        CHECK(diagnosis.checks.front().check->id == entry["next"].get<std::string>());
    }
    const Json below = entry.value("below", Json::object());
    for (const auto& [id, most] : below.items()) {
        CAPTURE(id);
        CHECK(share_of_cause(diagnosis, id) <= most.get<double>());
    }
    for (const auto& id : entry.value("no_check", Json::array())) {
        for (const NextCheck& check : diagnosis.checks) {
            CHECK(check.check->id != id.get<std::string>());
        }
    }
}

} // namespace

// A fan that is off cannot blow the smoke out: what was seen with it off must say so.
TEST_CASE("the smoke stick at the cold appliance is entered with the fans off", "[diagnosis]") {
    const Json table = urgent_cases();
    const Json entry{{"observed", Json::array({Json{{"co_alarm", true}, {"state", "high fire"}}})}};
    const Diagnosis diagnosis =
        urgent_diagnosis_of(urgent_installation_of(urgent_file_of(table, entry)));
    const auto stick =
        std::find_if(diagnosis.checks.begin(), diagnosis.checks.end(), [](const NextCheck& check) {
            return check.check->id == "cold-flow";
        });
    REQUIRE(stick != diagnosis.checks.end());
    CHECK(stick->entry.fan == FanState::off);
}

// What a sweep answers to what was seen; written before the program was asked. Harm comes first:
// what to do now, and that nobody lights a fire to look for a cause that may kill.
TEST_CASE("what was seen that may kill is told first, and looked for cold", "[diagnosis][many]") {
    const Json table = urgent_cases();
    for (const Json& entry : table["cases"]) {
        CAPTURE(entry["reason"].get<std::string>());
        const Diagnosis diagnosis =
            urgent_diagnosis_of(urgent_installation_of(urgent_file_of(table, entry)));
        check_words(entry, diagnosis);
        check_causes(entry, diagnosis);
    }
    CHECK(table["cases"].size() >= 28);
}

TEST_CASE("a check of a run that was seen far too hot or far below outdoors finds a danger",
          "[diagnosis]") {
    const Json table = urgent_cases();
    Installation written = urgent_installation_of(table["base"]);
    const auto dangers = [&](auto see) {
        Installation seen = written;
        see(seen.observed.emplace_back());
        const auto assessed = assess(seen, {});
        REQUIRE(assessed);
        return matters_against(*assessed);
    };
    const auto has = [](const std::vector<const Matter*>& matters, std::string_view id) {
        return std::any_of(
            matters.begin(), matters.end(), [&](const Matter* m) { return m->id == id; });
    };
    CHECK(has(dangers([](Observation& o) { o.surface_temperature_k = 760.0; }), "seen-too-hot"));
    CHECK(has(dangers([](Observation& o) { o.gas_temperature_k = 780.0; }), "seen-too-hot"));
    CHECK_FALSE(
        has(dangers([](Observation& o) { o.surface_temperature_k = 600.0; }), "seen-too-hot"));
    CHECK(
        has(dangers([](Observation& o) { o.room_pressure_pa = -9.0; }), "room-far-below-outdoors"));
    CHECK_FALSE(
        has(dangers([](Observation& o) { o.room_pressure_pa = -6.0; }), "room-far-below-outdoors"));
}

// Whatever is changed, a run that glowed is examined before it is lit.
TEST_CASE("no change to a run clears it of having been far too hot", "[diagnosis]") {
    Installation written = urgent_installation_of(urgent_cases()["base"]);
    written.observed.emplace_back().surface_temperature_k = 840.0;
    const auto improvement = improve(written, {.most = 1});
    REQUIRE(improvement);
    CHECK(improvement->outcome == Improvement::Outcome::hopeless);
}

// Nobody calls a run well by one command whom another tells what to do first.
TEST_CASE("what diagnose tells to act on check leaves open, and improve waits for its cause",
          "[diagnosis]") {
    const Json table = urgent_cases();
    const Json seen = Json::parse(R"([
        [{"smoke": "joints"}], [{"smoke": "door", "state": "reloading on embers"}],
        [{"smoke": "lighting"}], [{"smoke": "wind"}], [{"smoke": "fan"}],
        [{"sluggish": true}, {"smoke": "door"}],
        [{"smoke_stick": "out", "at": 1, "state": "high fire"}],
        [{"draft": "-3 Pa", "at": "outlet", "state": "high fire"}]])");
    for (const Json& observed : seen) {
        CAPTURE(observed.dump());
        const Installation written =
            urgent_installation_of(urgent_file_of(table, {{"observed", observed}}));
        CHECK_FALSE(urgent_diagnosis_of(written).urgent.empty());
        const auto assessed = assess(written, {});
        REQUIRE(assessed);
        CHECK(assessed->verdict.of(Harm::fire).outcome == HarmOutcome::cannot_tell);
        CHECK(assessed->sentence.find("`fluewright diagnose`") != std::string::npos);
        const auto improvement = improve(written, {.most = 1});
        REQUIRE(improvement);
        CHECK(improvement->outcome == Improvement::Outcome::leave_alone);
        CHECK(improvement->sentence.find("Change nothing before it is found") != std::string::npos);
    }
    for (const char* observed : {R"([{"roaring": true}])",
                                 R"([{"drips": true}])",
                                 R"([{"draft": "-3 Pa", "at": "outlet", "state": "idle"}])"}) {
        CAPTURE(observed);
        const Installation written =
            urgent_installation_of(urgent_file_of(table, {{"observed", Json::parse(observed)}}));
        CHECK_FALSE(urgent_diagnosis_of(written).urgent.empty());
        const auto assessed = assess(written, {});
        REQUIRE(assessed);
        CHECK(assessed->verdict.of(Harm::fire).outcome == HarmOutcome::cannot_tell);
    }
}

TEST_CASE("a fire that cannot be held down is never left alone", "[diagnosis]") {
    Installation written = urgent_installation_of(urgent_cases()["base"]);
    written.observed.emplace_back().roaring = true;
    const auto assessed = assess(written, {});
    REQUIRE(assessed);
    CHECK(assessed->sentence.find("cannot be held down") != std::string::npos);
    const auto improvement = improve(written, {.most = 1});
    REQUIRE(improvement);
    CHECK(improvement->sentence.find("cannot be held down") != std::string::npos);
    CHECK(improvement->sentence.find("Leave it alone") == std::string::npos);
    CHECK_FALSE(urgent_diagnosis_of(written).better);
}
