#include "../catch.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "session.hpp"

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using nlohmann::json;
using session::file_with;
using session::Folder;
using session::run;
using session::sound_file;
namespace fs = std::filesystem;

namespace {

std::string content(const std::string& file) {
    std::ifstream in(file);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::string short_file() {
    return file_with(sound_file(), R"("draft_needed": "12 Pa")", R"("draft_needed": "60 Pa")");
}

/// Wood behind a gas vent, which draws well.
std::string vent_behind_wood() {
    return file_with(sound_file(), R"("wall": "insulated 25 mm")", R"("wall": "type b vent")");
}

bool all_finite(const json& value) {
    if (value.is_number_float()) {
        return std::isfinite(value.get<double>());
    }
    return !value.is_structured() || std::all_of(value.begin(), value.end(), all_finite);
}

} // namespace

TEST_CASE("the status tells whether every state passes", "[check]") {
    const auto sound = run({"check", "-"}, sound_file());
    CHECK(sound.status == 0);
    CHECK(sound.err.empty());
    CHECK_THAT(sound.out, !Contains("SHORT"));
    const auto falling_short = run({"check", "-"}, short_file());
    CHECK(falling_short.status == 1);
    CHECK_THAT(falling_short.out, Contains("SHORT"));
    CHECK(run({"check", "-", "--json"}, short_file()).status == 1);
}

TEST_CASE("the report has its sections in order", "[check]") {
    const std::string text = run({"check", "-", "--details"}, sound_file()).out;
    std::size_t at = 0;
    for (const std::string title : {"This run passes",
                                    "Fire, CO ",
                                    "Draft ",
                                    "Reloading ",
                                    "Upkeep ",
                                    "What counts:",
                                    "frost:",
                                    "mild:",
                                    "Size\n",
                                    "Findings",
                                    "Spread\n",
                                    "Assumed",
                                    "Understood\n",
                                    "Before you build or light\n",
                                    "fluewright 0.1.0, from <stdin>\n"}) {
        const std::size_t next = text.find(title, at);
        CAPTURE(title);
        REQUIRE(next != std::string::npos);
        at = next;
    }
}

TEST_CASE("a spread in the file gives the chance that the run draws", "[check]") {
    const std::string file =
        file_with(sound_file(), R"("efficiency": "70 %")", R"("efficiency": "70 % ± 8 %")");
    const auto text = run({"check", "-", "--details"}, file);
    CHECK(text.status == 0);
    CHECK_THAT(text.out, Contains("With the ") && Contains("runs") && Contains("efficiency"));
    CHECK_THAT(session::in_one_line(run({"check", "-"}, file).out),
               Contains("fire in all 2000, draft in all 2000"));
    const auto tolerances = [&](std::vector<std::string> more) {
        std::vector<std::string> words{"check", "-", "--json", "--no-size-search"};
        words.insert(words.end(), more.begin(), more.end());
        return nlohmann::json::parse(run(words, file).out)["result"]["tolerances"];
    };
    CHECK(tolerances({"--jobs", "1"}) == tolerances({"--jobs", "3"}));
    CHECK(tolerances({}) != tolerances({"--seed", "2"}));
    CHECK(tolerances({"--samples", "300"})["runs"] == 300);
    CHECK(run({"check", "-", "--samples", "3"}, file).status == 2);
    CHECK_THAT(run({"check", "-", "--seed", "x"}, file).err, Contains("--seed"));
    CHECK(nlohmann::json::parse(
              run({"check", "-", "--json"}, sound_file()).out)["result"]["tolerances"]
              .is_null());
}

TEST_CASE("what is wrong with the input is told with its place", "[check]") {
    const std::string text = file_with(sound_file(), R"("efficiency")", R"("efficency")");
    const auto outcome = run({"check", "-"}, text);
    CHECK(outcome.status == 2);
    CHECK(outcome.out.empty());
    CHECK_THAT(outcome.err, Contains("<stdin>:"));
    CHECK_THAT(outcome.err, Contains("did you mean `efficiency`?"));
    CHECK_THAT(outcome.err, Contains("1 error; nothing was computed"));

    const auto as_json = run({"check", "-", "--json"}, text);
    CHECK(as_json.status == 2);
    CHECK(json::parse(as_json.out)["result"]["errors"].size() == 1);
}

TEST_CASE("faults only the physics sees have a place too, once each", "[check]") {
    const auto outcome =
        run({"check", "-"},
            file_with(sound_file(), R"("efficiency": "70 %")", R"("efficiency": "99 %")"));
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, Contains("at      /appliance/efficiency\n  found   \"99 %\""));
    CHECK_THAT(outcome.err, Contains("1 error; nothing was computed"));
}

TEST_CASE("what cannot be read gives status 3", "[check]") {
    const Folder folder;
    for (const std::string& file : {folder.file("absent.json"), folder.file(".")}) {
        const auto outcome = run({"check", file});
        CHECK(outcome.status == 3);
        CHECK_THAT(outcome.err, Contains("cannot read `" + file + "`: "));
    }
    CHECK(run({"check", "-"}, "").status == 2);
}

TEST_CASE("an output file is whole, replaces an old one and is never the input", "[check]") {
    const Folder folder;
    const std::string input = folder.write("run.json", sound_file());
    const std::string output = folder.write("report.txt", "old");
    const auto outcome = run({"check", input, "-o", output});
    CHECK(outcome.status == 0);
    CHECK(outcome.out.empty());
    CHECK(content(output) == run({"check", input}).out);
    CHECK(folder.count() == 2);

    const auto refused = run({"check", input, "--output", folder.file("./run.json")});
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Contains("is an input"));
    CHECK(content(input) == sound_file());

    CHECK(run({"check", input, "-o", folder.file("absent/report.txt")}).status == 3);
    CHECK(run({"check", input, "-o", folder.file(".")}).status == 3);
    CHECK(folder.count() == 2);
}

TEST_CASE("a file a link leads to is replaced, not the link", "[check]") {
    const Folder folder;
    const std::string real = folder.write("real.txt", "old");
    fs::create_symlink(real, folder.file("link.txt"));
    CHECK(run({"check", "-", "-o", folder.file("link.txt")}, sound_file()).status == 0);
    CHECK(fs::is_symlink(folder.file("link.txt")));
    CHECK(content(real).size() > 1000);
}

TEST_CASE("a full disk is noticed", "[check]") {
    if (!fs::exists("/dev/full")) {
        return;
    }
    // The program is told by ctest; the shell is what opens the full disk.
    constexpr const char* command = R"("${FLUEWRIGHT_PROGRAM:?}" template >/dev/full 2>/dev/null)";
    // NOLINTNEXTLINE(cert-env33-c,concurrency-mt-unsafe)
    CHECK(WEXITSTATUS(std::system(command)) == 3);
    CHECK(run({"template", "-o", "/dev/full"}).status == 3);
}

TEST_CASE("color comes on a terminal only, and can be had or refused", "[check]") {
    const auto colored = [](const std::vector<std::string>& more,
                            const std::map<std::string, std::string, std::less<>>& variables,
                            bool terminal) {
        auto environment = session::plain_environment();
        environment.variables.insert(variables.begin(), variables.end());
        environment.output_is_terminal = terminal;
        std::vector<std::string> arguments{"check", "-"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return run(arguments, sound_file(), environment).out.find('\x1b') != std::string::npos;
    };
    CHECK_FALSE(colored({}, {}, false));
    CHECK(colored({}, {}, true));
    CHECK_FALSE(colored({}, {{"NO_COLOR", "1"}}, true));
    CHECK(colored({}, {{"NO_COLOR", ""}}, true));
    CHECK_FALSE(colored({}, {{"TERM", "dumb"}}, true));
    CHECK(colored({}, {{"FORCE_COLOR", "1"}}, false));
    CHECK(colored({}, {{"CLICOLOR_FORCE", "1"}}, false));
    CHECK_FALSE(colored({}, {{"CLICOLOR_FORCE", "0"}}, false));
    CHECK_FALSE(colored({"--color", "never"}, {{"FORCE_COLOR", "1"}}, true));
    CHECK(colored({"--color=always"}, {{"NO_COLOR", "1"}}, false));
    CHECK_FALSE(colored({"--json"}, {}, true));
}

TEST_CASE("color takes nothing away from the words", "[check]") {
    std::string colored = run({"check", "-", "--color", "always", "--details"}, short_file()).out;
    for (auto at = colored.find('\x1b'); at != std::string::npos; at = colored.find('\x1b')) {
        colored.erase(at, colored.find('m', at) - at + 1);
    }
    std::istringstream with(colored);
    std::istringstream without(run({"check", "-", "--details"}, short_file()).out);
    for (std::string a, b; std::getline(with, a) && std::getline(without, b);) {
        CHECK(a.substr(0, a.find_last_not_of(' ') + 1) == b);
    }
}

TEST_CASE("without a UTF-8 locale only ASCII is written", "[check]") {
    const std::string text = file_with(sound_file(), "Workshop stove", "Säge ½ – 工");
    CHECK_THAT(run({"check", "-"}, text).out, Contains("Säge ½ – 工"));
    fluewright::cli::Environment plain;
    const std::string ascii = run({"check", "-"}, text, plain).out;
    CHECK_THAT(ascii, Contains("Sage  1/2 - ?"));
    CHECK(std::all_of(ascii.begin(), ascii.end(), [](char c) { return c > 0; }));
    plain.variables["LC_ALL"] = "C";
    plain.variables["LANG"] = "de_DE.utf8";
    CHECK_THAT(run({"check", "-"}, text, plain).out, !Contains("Säge"));
}

TEST_CASE("what counts can be chosen, and decides the exit status", "[check]") {
    CHECK(run({"check", "-"}, short_file()).status == 1);
    CHECK(run({"check", "-", "--require", "fire"}, short_file()).status == 0);
    CHECK(run({"check", "-", "--require", "upkeep"}, sound_file()).status == 1);
    const auto refused = run({"check", "-", "--require", "fire,drat"}, sound_file());
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Contains("--require") && Contains("did you mean `draft`?"));
    CHECK_THAT(
        run({"check", "-", "--require", "fire"}, short_file()).out,
        StartsWith(
            "This run passes: nothing that counts is short. Not met, but not counted: draft"));
    const std::string weigh = std::string{PROJECT_SOURCE_DIR} + "/examples/weigh-house.json";
    CHECK(run({"batch", weigh}).status == 1);
    const auto batch = run({"batch", weigh, "--require", "reloading", "--format", "ndjson"});
    CHECK(batch.status == 0);
    CHECK_THAT(batch.out,
               Contains(R"("outcome":"pass")") && Contains(R"("fire_outcome":"falls short")"));
}

TEST_CASE("the answer to each example fits two screens", "[check]") {
    constexpr std::ptrdiff_t most_lines = 84; // two screens of 42
    for (const auto& entry :
         fs::directory_iterator(std::string{PROJECT_SOURCE_DIR} + "/examples")) {
        if (entry.path().extension() != ".json") {
            continue;
        }
        CAPTURE(entry.path().string());
        const std::string text = run({"check", entry.path().string()}).out;
        CHECK(std::count(text.begin(), text.end(), '\n') <= most_lines);
        std::size_t at = 0;
        for (const std::string label : {"Fire, CO ", "Draft ", "Upkeep "}) {
            at = text.find("\n  " + label, at);
            CHECK(at != std::string::npos);
        }
        // Only what stands behind a door is told of reloading.
        const bool has_door = text.find("\n  reloading ") != std::string::npos;
        CHECK((text.find("\n  Reloading ") != std::string::npos) == has_door);
        CHECK_THAT(text, !Contains("draws in every state"));
        CHECK_THAT(text, Contains("--details"));
    }
}

TEST_CASE("a sound run is answered on one screen and a half", "[check]") {
    const std::string file = std::string{PROJECT_SOURCE_DIR} + "/examples/greenhouse.json";
    const std::string text = run({"check", file}).out;
    CHECK(std::count(text.begin(), text.end(), '\n') <= 60);
}

TEST_CASE("a title cannot steer the terminal", "[check]") {
    const std::string text = file_with(sound_file(), "Workshop stove", "a\\u001b[31mb\\nc");
    CHECK(run({"check", "-"}, text).out.find('\x1b') == std::string::npos);
}

TEST_CASE("JSON is complete, finite and the same every time", "[check][json]") {
    for (const std::string& text : {sound_file(), short_file()}) {
        const auto outcome = run({"check", "-", "--format", "json"}, text);
        CHECK(outcome.err.empty());
        const json answer = json::parse(outcome.out);
        CHECK(answer["program"] == "fluewright");
        CHECK(answer["version"] == "0.1.0");
        CHECK(answer["input"]["command"] == "check");
        CHECK(answer["input"]["files"][0]["file"] == "<stdin>");
        CHECK(answer["cautions"].size() == fluewright::cautions(std::nullopt).size());
        CHECK(all_finite(answer));
        const json& report = answer["result"];
        CHECK(report["works"] == (outcome.status == 0));
        CHECK(report["states"].size() == 14);
        CHECK(report["installation"]["run"].size() == 8);
        for (const json& state : report["states"]) {
            CHECK(state["stations"].size() == report["installation"]["run"].size() + 1);
        }
        CHECK(run({"check", "--json", "-"}, text).out == outcome.out);
    }
    const json quick =
        json::parse(run({"check", "-", "--json", "--no-size-search"}, sound_file()).out);
    CHECK(quick["result"]["size"].is_null());
}

TEST_CASE("details add the profile of every state and the sizes tried", "[check]") {
    const std::string text = run({"check", "-", "--details"}, sound_file()).out;
    CHECK_THAT(text, Contains("Along the run: high fire, frost"));
    CHECK_THAT(text, Contains("Along the run: idle, mild"));
    CHECK_THAT(text, Contains("draws air in"));
    CHECK_THAT(text, Contains("ruled out by"));
    CHECK_THAT(run({"check", "-"}, sound_file()).out, !Contains("Along the run"));
    CHECK_THAT(run({"check", "-", "--no-size-search"}, sound_file()).out,
               Contains("not computed (--no-size-search)"));
    CHECK_THAT(run({"check", "-", "--sizes", "inch", "--details"}, sound_file()).out,
               Contains("8 in"));
}

TEST_CASE("what the rules would ask is told before anything is built, along the run", "[check]") {
    // Somebody who has measured no distance yet.
    std::string unmeasured = sound_file();
    const std::string given = R"("clearance": "500 mm")";
    for (auto at = unmeasured.find(given); at != std::string::npos; at = unmeasured.find(given)) {
        unmeasured.replace(at, given.size(), R"("deposit_thickness": "0 mm")");
    }
    const auto outcome =
        run({"check", "-", "--rules", "us", "--requirements", "--no-size-search"}, unmeasured);
    CHECK(outcome.err.empty());
    const std::string text = session::in_one_line(outcome.out);
    // CMC 2013, table 303.3(2): 18 in, 457 mm.
    CHECK_THAT(text, Contains("clearance to combustibles at least 457 mm"));
    CHECK_THAT(text, Contains("Not in the file: `clearance` of part"));
    CHECK(text.find("- the heater:") < text.find("- straight 1"));
    CHECK(text.find("- straight 1") < text.find("- the chimney top"));
    CHECK(text.find("- the chimney top") < text.find("- the house"));
    std::istringstream lines(outcome.out);
    for (std::string line; std::getline(lines, line);) {
        CHECK(line.size() <= 80);
    }
    CHECK(run({"check", "-", "--rules", "us", "--requirements"}, sound_file()).status
          == run({"check", "-", "--rules", "us"}, sound_file()).status);
}

TEST_CASE("a file that names no body is told how to ask for one", "[check]") {
    const std::string none =
        session::in_one_line(run({"check", "-", "--rules", "none"}, sound_file()).out);
    CHECK_THAT(none, Contains("--rules us, uk, ca, au or de, or `site.rules` in the file"));
    CHECK_THAT(session::in_one_line(run({"check", "-", "--rules", "uk"}, sound_file()).out),
               !Contains("No body of rules is chosen"));
}

TEST_CASE("met checks are told with document, clause and mark", "[check]") {
    const std::string text =
        session::in_one_line(run({"check", "-", "--rules", "us", "--details"}, sound_file()).out);
    CHECK_THAT(text, Contains("met: connector-size-not-below-collar"));
    CHECK_THAT(text,
               Contains("[New York City Mechanical Code (current as read), 801.6; looked up]"));
}

TEST_CASE("a method, too, begins with the dangers of the run and what is not decided") {
    for (const std::string method : {"handbook", "en13384"}) {
        CAPTURE(method);
        const auto done = run({"check", "-", "--method", method}, vent_behind_wood());
        CHECK_THAT(done.out, StartsWith("No fire before this is put right"));
        CHECK(done.status == 1);
        const json answer =
            json::parse(run({"check", "-", "--method", method, "--json"}, vent_behind_wood()).out);
        CHECK_FALSE(answer["result"]["dangers"].empty());
        const std::string open =
            file_with(sound_file(), R"("clearance": "500 mm")", R"("screws": 3)");
        const auto undecided = run({"check", "-", "--method", method}, open);
        CHECK_THAT(undecided.out, StartsWith("Not decided: fire and carbon monoxide."));
        CHECK(undecided.status == 1);
    }
}
