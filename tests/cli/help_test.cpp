#include "../catch.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "session.hpp"

#include <algorithm>

using namespace fluewright::cli;
using Catch::Matchers::Contains;
using session::run;

TEST_CASE("without arguments there is short help", "[help]") {
    const auto outcome = run({});
    CHECK(outcome.status == 0);
    CHECK(std::count(outcome.out.begin(), outcome.out.end(), '\n') < 36);
    CHECK_THAT(outcome.out, Contains("fluewright check"));
    CHECK(outcome.err.empty());
}

TEST_CASE("help on every level names an example and the exit statuses", "[help]") {
    for (const auto& arguments : {std::vector<std::string>{"--help"}, {"-h"}, {"help"}}) {
        const auto outcome = run(arguments);
        CHECK(outcome.status == 0);
        CHECK_THAT(outcome.out, Contains("Examples:\n  fluewright check run.json\n"));
        for (const Command* command : commands()) {
            CHECK_THAT(outcome.out, Contains("\n  " + std::string{command->name} + ' '));
        }
    }
    for (const Command* command : commands()) {
        const std::string name{command->name};
        CAPTURE(name);
        CHECK(command->example.starts_with("fluewright " + name));
        for (const auto& arguments : {std::vector<std::string>{name, "--help"},
                                      {name, "-h"},
                                      {"--help", name},
                                      {"help", name}}) {
            const auto outcome = run(arguments);
            CHECK(outcome.status == 0);
            CHECK_THAT(outcome.out, Contains("Usage: fluewright " + name));
            CHECK_THAT(outcome.out, Contains(std::string{command->example}));
            CHECK_THAT(outcome.out, Contains("Exit status:\n  0 "));
            for (const OptionInfo* option : options_of(*command)) {
                CHECK_THAT(outcome.out, Contains(std::string{option->name}));
            }
        }
    }
}

TEST_CASE("the examples of the help can be read as they stand", "[help]") {
    for (const Command* command : commands()) {
        std::vector<std::string> words;
        std::istringstream line{std::string{command->example}};
        for (std::string word; line >> word;) {
            words.push_back(word);
        }
        words.erase(words.begin());
        words.emplace_back("--help");
        CHECK(run(words).status == 0);
    }
}

TEST_CASE("the first line of the version is name and number alone", "[help]") {
    const auto outcome = run({"--version"});
    CHECK(outcome.status == 0);
    CHECK(outcome.out.substr(0, outcome.out.find('\n'))
          == "fluewright " + std::string{version_number()});
}

TEST_CASE("a misspelt word of the command line is told with the nearest right one", "[usage]") {
    struct Slip {
        std::vector<std::string> arguments;
        std::string told;
    };

    const std::vector<Slip> slips{
        {{"chek", "x"}, "`chek` is not a command; did you mean `check`?"},
        {{"help", "schmea"}, "`schmea` is not a command; did you mean `schema`?"},
        {{"ch", "x"}, "`ch` is not a command; `fluewright --help` lists the commands"},
        {{""}, "`` is not a command"},
        {{"--colr", "never", "check", "x"}, "`--colr` is not an option; did you mean `--color`?"},
        {{"check", "x", "--fromat", "json"},
         "`--fromat` is not an option of check; did you mean `--format`?"},
        {{"check", "x", "--form", "json"}, "`--form` is not an option of check"},
        {{"check", "x", "-z"}, "`-z` is not an option of check"},
        {{"check", "x", "--format", "jsn"},
         "`jsn` is not a value of --format; did you mean `json`?"},
        {{"check", "x", "--units", "furlongs"}, "it takes one of us, metric"},
        {{"check", "x", "--format"}, "--format needs a value; it takes one of text, json"},
        {{"check", "x", "--format="}, "--format needs a value"},
        {{"check", "x", "--output"}, "--output needs a value; write --output FILE"},
        {{"check", "x", "--json=no"}, "--json takes no value"},
        {{"check"}, "check needs FILE: the installation; - reads standard input"},
        {{"check", "x", "y"}, "`y` is one argument too many for check"},
        {{"schema", "x"}, "`x` is one argument too many for schema"},
        {{"explain"}, "explain needs ID"},
        {{"explain", "draft-shrt"}, "did you mean `draft-short`?"},
        {{"explain", "/appliance/outlt"}, "did you mean `outlet`?"},
        {{"explain", "/aplliance/outlet"}, "did you mean `appliance`?"},
        {{"catalog", "fuel"}, "did you mean `fuels`?"},
        {{"--units", "us"}, "needs a command"},
    };
    for (const Slip& slip : slips) {
        const auto outcome = run(slip.arguments);
        CAPTURE(slip.told);
        CHECK(outcome.status == 2);
        CHECK(outcome.out.empty());
        CHECK_THAT(outcome.err, Contains(slip.told));
        CHECK(std::count(outcome.err.begin(), outcome.err.end(), '\n') == 1);
    }
}

TEST_CASE("options stand before or behind the command and its word", "[usage]") {
    const std::string text = session::sound_file();
    const std::string want = run({"check", "-", "--units", "us"}, text).out;
    CHECK(want.find("inH2O") != std::string::npos);
    CHECK(run({"--units", "us", "check", "-"}, text).out == want);
    CHECK(run({"--units=us", "check", "-"}, text).out == want);
    CHECK(run({"check", "--units", "us", "-"}, text).out == want);
    CHECK(run({"check", "--units=us", "--", "-"}, text).out == want);
    CHECK(run({"check", "--units=metric", "-", "--units", "us"}, text).out == want);
}
