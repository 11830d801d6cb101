#include "../catch.hpp"
#include "cli/shell/command.hpp"
#include "session.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

using namespace fluewright::cli;

namespace every_option {
namespace {

using Words = std::vector<std::string>;

const std::string example_file = PROJECT_SOURCE_DIR "/examples/bindery.json";

/// A command line that is right, short of the option that is tried.
Words sound_line(const Command& command) {
    Words line{std::string{command.name}};
    if (command.name == "compare") {
        line.push_back(example_file);
        line.emplace_back("-");
    } else if (command.name == "explain") {
        line.emplace_back("draft-short");
    } else if (command.name == "diagnose") {
        line.push_back(example_file);
    } else if (command.word.required && !command.word.name.empty()) {
        line.emplace_back("-");
    }
    if (command.name == "sweep" || command.name == "vary") {
        line.insert(line.end(), {"--over", "moisture=10..20%:2"});
    }
    return line;
}

session::Outcome run(Words line, const Words& more) {
    line.insert(line.end(), more.begin(), more.end());
    return session::run(line, session::sound_file());
}

std::string in_words(const Words& line, const Words& more) {
    std::string words;
    for (const Words* part : {&line, &more}) {
        for (const std::string& word : *part) {
            words += word + ' ';
        }
    }
    return words;
}

/// One message, nothing of an answer.
void check_refused(const Words& line, const Words& more, int status) {
    INFO(in_words(line, more));
    const session::Outcome outcome = run(line, more);
    CHECK(outcome.status == status);
    CHECK(outcome.out.empty());
    CHECK(outcome.err.starts_with("fluewright: "));
    CHECK(std::count(outcome.err.begin(), outcome.err.end(), '\n') == 1);
}

bool is_number(const OptionInfo& option) {
    return option.value_name == "N" || option.value_name == "SECONDS";
}

bool is_range(const OptionInfo& option) {
    return option.value_name == "RANGE" || option.value_name == "NAME=RANGE";
}

} // namespace

TEST_CASE("every option of every command refuses what is no value of it") {
    std::size_t tried = 0;
    for (const Command* command : commands()) {
        const Words line = sound_line(*command);
        for (const OptionInfo* option : options_of(*command)) {
            const std::string name{option->name};
            ++tried;
            if (!option->takes_value()) {
                check_refused(line, {name + "=yes"}, 2);
                continue;
            }
            check_refused(line, {name}, 2);
            check_refused(line, {name, ""}, 2);
            if (!option->choices.empty()) {
                check_refused(line, {name, "no such choice"}, 2);
            } else if (is_number(*option)) {
                for (const char* wrong :
                     {"-1", "a few", "1e99", "nan", "99999999999999999999999"}) {
                    check_refused(line, {name, wrong}, 2);
                }
            } else if (is_range(*option)) {
                for (const char* wrong : {"a few",
                                          "moisture=",
                                          "moisture=20%..",
                                          "moisture=10..20%:0",
                                          "up=1..2m:1001"}) {
                    check_refused(line, {name, wrong}, 2);
                }
            } else if (option->value_name == "FILE" && name != "--output") {
                check_refused(line, {name, "no-such-file.json"}, 3);
            } else if (option->value_name == "LIST" || option->value_name == "NAMES") {
                check_refused(line, {name, "no such name"}, 2);
                check_refused(line, {name, ","}, 2);
            }
        }
    }
    CHECK(tried > 60);
}

TEST_CASE("numbers at the limits of an option and just beyond them") {
    const auto limits = [](const Words& line,
                           const char* option,
                           const char* low,
                           const char* below,
                           const char* above) {
        INFO(line.front() << ' ' << option);
        CHECK(run(line, {option, low}).status < 2);
        check_refused(line, {option, below}, 2);
        check_refused(line, {option, above}, 2);
    };
    limits({"check", "-"}, "--samples", "100", "99", "1000001");
    limits({"check", "-"}, "--jobs", "1", "0", "1025");
    limits({"improve", example_file}, "--most", "1", "0", "1001");
    limits({"warmup", "-"}, "--minutes", "1", "0.9", "10081");
    limits({"warmup", "-", "--minutes", "2"}, "--step", "0.5", "0.4", "3601");
    // A week in the finest steps, and a file with a hundred weeks of fire.
    check_refused({"warmup", "-"}, {"--minutes", "10080", "--step", "0.5"}, 2);
    limits({"vary", "-", "--over", "moisture=10..20%:2"}, "--samples", "1", "0", "100000001");
}

TEST_CASE("options that contradict each other are refused, none is passed over in silence") {
    check_refused({"check", "-"}, {"--json", "--format", "text"}, 2);
    check_refused({"size", "-"}, {"--format", "csv", "--json"}, 2);
    check_refused({"check", "-"}, {"--method", "en13384", "--rules", "us"}, 2);
    check_refused({"check", "-"}, {"--method", "handbook", "--require", "fire"}, 2);
    check_refused({"vary", "-", "--over", "moisture=10..20%:2"}, {"--seed", "3"}, 2);
    check_refused({"batch", "-"}, {"--resume"}, 2);
    check_refused({"batch", "-"}, {"--resume", "--force", "--output", "none.csv"}, 2);
    check_refused({"diagnose", example_file}, {"--ask", "--json"}, 2);
    check_refused({"diagnose", "-"}, {"--ask"}, 2);
    check_refused({"sweep", "-"}, {}, 2);
    check_refused({"check", "-"}, {"--requirements", "--json"}, 2);
    check_refused({"check", "-"}, {"--sizes", "inch", "--no-size-search"}, 2);
    check_refused({"draw", "-"}, {"--profile", "--show", "pressure"}, 2);
    check_refused({"parts", "-"}, {"--price-template", "--json"}, 2);
    check_refused({"parts", "-"}, {"--price-template", "--format", "csv"}, 2);
    check_refused({"parts", "-"}, {"--from-box"}, 2);
    CHECK_FALSE(std::filesystem::exists("none.csv"));
    // The same twice is no contradiction; of two values the last counts.
    CHECK(run({"check", "-"}, {"--json", "--json"}).status == 0);
    CHECK(run({"check", "-"}, {"--format", "text", "--format", "json"}).out.starts_with('{'));
}

TEST_CASE("a refused command leaves the file it was to write as it was") {
    const std::filesystem::path file =
        std::filesystem::temp_directory_path() / "fluewright_every_option.txt";
    std::ofstream(file) << "kept";
    const std::string name = file.string();
    for (const Words& more : {Words{"--output", name, "--samples", "0"},
                              Words{"--output", name, "--json", "--format", "text"}}) {
        check_refused({"check", "-"}, more, 2);
    }
    CHECK(session::run({"check", "-", "--output", name}, "{").status == 2);
    std::ifstream kept(file);
    std::string text;
    std::getline(kept, text);
    CHECK(text == "kept");
    std::filesystem::remove(file);
}

TEST_CASE("a batch tells of a burn rate that cannot be vented, without figures for it") {
    std::string file = session::sound_file();
    const auto at = file.find("\"high\":");
    REQUIRE(at != std::string::npos);
    const auto value = file.find('"', at + 7);
    const auto end = file.find('"', value + 1);
    file.replace(value, end - value + 1, "\"450 kg/h\"");
    std::string line;
    std::istringstream lines(file);
    for (std::string part; std::getline(lines, part);) {
        line += part.substr(0, part.find("//")) + ' ';
    }
    const session::Outcome batch = session::run({"batch", "-", "--format", "ndjson"}, line + '\n');
    INFO(batch.out << batch.err);
    CHECK(batch.status == 1);
    CHECK(batch.out.find("\"margin_status\":\"cannot vent\"") != std::string::npos);
    CHECK(batch.out.find("\"margin_pa\":null") != std::string::npos);
    const session::Outcome check = session::run({"check", "-"}, file);
    CHECK(check.status == 1);
    CHECK(session::in_one_line(check.out).find("The run cannot vent 450 kg/h")
          != std::string::npos);
    for (const char* command : {"size", "diagnose", "improve"}) {
        INFO(command);
        CHECK(session::run({command, "-"}, file).status < 2);
    }
}

} // namespace every_option
