#include "edited_file.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "law.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

using namespace fluewright;
using namespace fluewright::agreement;

// Small scenarios with the answer a fitter would give, beside each file in NAME.expected.json.

namespace {

using Json = nlohmann::ordered_json;
const std::filesystem::path cases{FLUEWRIGHT_CASES};

std::string text_of(const std::filesystem::path& path) {
    std::ifstream file(path);
    REQUIRE(file.good());
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

Installation written_in(const std::string& name) {
    const std::string file = name + ".json";
    auto read = read_installation(text_of(cases / file), file);
    INFO((read ? "" : diagnostics_text(read.error())));
    REQUIRE(read.has_value());
    return std::move(read).value();
}

bool finds(const Assessment& answer, const std::string& id) {
    return std::any_of(answer.findings.begin(), answer.findings.end(), [&](const Finding& finding) {
        return finding.matter->id == id;
    });
}

std::string stretches_of(const Assessment& answer) {
    std::string words;
    for (const RunPart& part : answer.installation.run.parts) {
        words += (words.empty() ? "" : " ") + std::string{name(part.stretch.value)};
    }
    return words;
}

void hold_findings(const Json& expected, const Assessment& answer) {
    for (const Json& id : expected.value("found", Json::array())) {
        CAPTURE(id.get<std::string>());
        CHECK(find_matter(id.get<std::string>()) != nullptr);
        CHECK(finds(answer, id.get<std::string>()));
    }
    for (const Json& id : expected.value("absent", Json::array())) {
        CAPTURE(id.get<std::string>());
        CHECK(find_matter(id.get<std::string>()) != nullptr);
        CHECK_FALSE(finds(answer, id.get<std::string>()));
    }
    const Json remedies = expected.value("remedy", Json::object());
    for (const auto& [id, words] : remedies.items()) {
        for (const Finding& finding : answer.findings) {
            if (finding.matter->id == id) {
                CHECK(finding.remedy.find(words.get<std::string>()) != std::string::npos);
            }
        }
    }
}

/// Fire, or smoke and carbon monoxide in a living space: nothing of the kind in a sound run.
void hold_no_danger(const Assessment& answer) {
    for (const Finding& finding : answer.findings) {
        INFO(finding.matter->id << ": " << finding.message);
        CHECK(finding.severity != Severity::danger);
    }
}

/// The verdict by kind of harm: "fire": "falls short", and whether what counts passes.
void hold_verdict(const Json& expected, const Assessment& answer) {
    for (const auto& [harm, outcome] : expected.items()) {
        CAPTURE(harm, answer.sentence);
        if (harm == "works") {
            CHECK(answer.works() == outcome.get<bool>());
            continue;
        }
        const auto line = std::find_if(answer.verdict.harms.begin(),
                                       answer.verdict.harms.end(),
                                       [&](const HarmVerdict& v) { return name(v.harm) == harm; });
        REQUIRE(line != answer.verdict.harms.end());
        CAPTURE(line->sentence);
        CHECK(name(line->outcome) == outcome.get<std::string>());
    }
}

/// Every plan that is said to cure clears the finding, and check of the written plan agrees.
void hold_plans(const std::string& id, const Installation& written) {
    const auto made = improve(written, {});
    REQUIRE(made.has_value());
    REQUIRE_FALSE(made->plans.empty());
    std::size_t cures = 0;
    for (const Plan& plan : made->plans) {
        if (plan.cures) {
            CAPTURE(plan.steps.front().what);
            const Assessment then = checked(through_file(plan.changed));
            CHECK(then.works());
            CHECK_FALSE(finds(then, id));
            ++cures;
        }
    }
    CHECK(cures > 0);
}

} // namespace

TEST_CASE("the small cases get the answer a fitter would give") {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(cases)) {
        const std::string file = entry.path().filename().string();
        constexpr std::string_view ending = ".expected.json";
        if (file.ends_with(ending)) {
            names.push_back(file.substr(0, file.size() - ending.size()));
        }
    }
    std::sort(names.begin(), names.end());
    REQUIRE(names.size() >= 10);
    for (const std::string& name : names) {
        CAPTURE(name);
        const Json expected = Json::parse(text_of(cases / (name + ".expected.json")));
        CAPTURE(expected.at("why").get<std::string>());
        const Installation written = written_in(name);
        const Assessment answer = checked(written, Words::with);
        if (expected.contains("stretch")) {
            CHECK(stretches_of(answer) == expected["stretch"].get<std::string>());
        }
        hold_findings(expected, answer);
        if (expected.value("no_danger", false)) {
            hold_no_danger(answer);
        }
        hold_verdict(expected.value("verdict", Json::object()), answer);
        if (expected.contains("same_answer_as")) {
            const Assessment other =
                checked(written_in(expected["same_answer_as"].get<std::string>()), Words::with);
            CHECK(compare(other, answer).text().empty());
        }
        if (expected.contains("plan_clears")) {
            hold_plans(expected["plan_clears"].get<std::string>(), written);
        }
    }
}
