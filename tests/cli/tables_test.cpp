#include "../catch.hpp"
#include "cli/shell/command.hpp"
#include "fluewright/advice/checks/check.hpp"
#include "fluewright/io/reference/catalog_report.hpp"
#include "fluewright/io/reference/explain.hpp"
#include "fluewright/io/reference/schema.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "session.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>

using namespace fluewright;
using Catch::Matchers::Contains;
using nlohmann::json;
using session::run;

namespace {

/// Every text the program writes for people.
std::vector<std::string> all_texts() {
    std::vector<std::string> texts{
        run({}).out, run({"--help"}).out, run({"--version"}).out, run({"catalog"}).out};
    for (const cli::Command* command : cli::commands()) {
        texts.push_back(run({std::string{command->name}, "--help"}).out);
    }
    for (const CatalogName& name : catalog_names()) {
        for (const std::string units : {"us", "metric"}) {
            texts.push_back(run({"catalog", std::string{name.id}, "--units", units}).out);
        }
    }
    for (const std::string& id : explained_ids()) {
        texts.push_back(run({"explain", id}).out);
    }
    for (const std::string units : {"us", "metric"}) {
        const std::string file = run({"template", "--units", units}).out;
        texts.push_back(file);
        texts.push_back(run({"check", "-", "--details"}, file).out);
        const std::string starved = session::file_with(file, "150 mm", "80 mm");
        texts.push_back(run({"check", "-", "--details"}, starved).out);
    }
    return texts;
}

/// "/run/0/up" and the like for every number of the starting file.
std::vector<std::string> keys_of_sample() {
    Installation sample;
    sample.run.resize(1);
    sample.site.weather.resize(1);
    sample.observed.resize(1);
    sample.fuels.emplace_back().id = "peat";
    sample.walls.emplace_back().id = "brick";
    return value_pointers(sample);
}

} // namespace

TEST_CASE("no line of text passes 80 columns", "[text]") {
    for (const std::string& text : all_texts()) {
        std::istringstream lines(text);
        for (std::string line; std::getline(lines, line);) {
            if (shown_width(line) > 80 || line.ends_with(' ')) {
                FAIL_CHECK("too long, or ends in a blank: " << line << '|');
            }
        }
    }
}

TEST_CASE("nobody is told that anything is free of danger", "[text]") {
    const std::regex word("\\bsafe", std::regex::icase);
    for (const std::string& text : all_texts()) {
        std::smatch match;
        const bool found = std::regex_search(text, match, word);
        INFO((found ? match.prefix().str().substr(0, 0) + match.suffix().str().substr(0, 60) : ""));
        CHECK_FALSE(found);
    }
    for (const CatalogName& name : catalog_names()) {
        CHECK_FALSE(std::regex_search(run({"catalog", std::string{name.id}, "--json"}).out, word));
    }
    CHECK_FALSE(std::regex_search(run({"schema"}).out, word));
    CHECK_FALSE(std::regex_search(run({"check", "-", "--json"}, session::sound_file()).out, word));
}

TEST_CASE("every check and finding is explained with its source spelled out", "[explain]") {
    for (const Check& check : checks()) {
        for (const std::string_view id : {check.id, check.matter->id}) {
            const auto outcome = run({"explain", std::string{id}});
            CAPTURE(id);
            CHECK(outcome.status == 0);
            CHECK(outcome.err.empty());
            CHECK_THAT(outcome.out, Contains(std::string{check.matter->title}));
            CHECK_THAT(outcome.out, Contains("What to do"));
            CHECK_THAT(session::in_one_line(outcome.out), Contains(std::string{check.mark}));
            CHECK_THAT(session::in_one_line(outcome.out), Contains(std::string{check.rule}));
        }
    }
}

TEST_CASE("whatever has an id has a page", "[explain]") {
    const auto ids = explained_ids();
    CHECK(ids.size() > 250);
    for (const std::string& id : ids) {
        const auto outcome = run({"explain", id});
        CAPTURE(id);
        CHECK(outcome.status == 0);
        CHECK(outcome.err.empty());
        CHECK(std::count(outcome.out.begin(), outcome.out.end(), '\n') > 3);
    }
    CHECK(run({"explain", "Door open, embers"}).out == run({"explain", "door-open-embers"}).out);
    // A cause and a way of firing of one name have both their pages.
    const std::string both = run({"explain", "low-fire"}).out;
    CHECK_THAT(both, Contains("a condition") && Contains("a cause in"));
}

TEST_CASE("every number of the input file is explained by its pointer", "[explain]") {
    const auto pointers = keys_of_sample();
    CHECK(pointers.size() > 80);
    for (const std::string& pointer : pointers) {
        const auto outcome = run({"explain", pointer});
        CAPTURE(pointer);
        CHECK(outcome.status == 0);
        CHECK_THAT(outcome.out, Contains("meaning") && Contains("example") && Contains("allowed"));
    }
    CHECK_THAT(run({"explain", "/appliance/outlet/diameter"}).out,
               Contains("50 mm to 1 m") && Contains("in, ft"));
    CHECK_THAT(run({"explain", "/run/build"}).out, Contains("mitered") && Contains("rain"));
    CHECK_THAT(run({"explain", "/site/room/temperature"}).out, Contains("en13384-1"));
    CHECK_THAT(run({"explain", "/appliance"}).out, Contains("burn_rate") && Contains("outlet"));
    CHECK(run({"explain", "/"}).status == 0);
}

TEST_CASE("every table comes as text, JSON and CSV with a source on every row", "[catalog]") {
    const auto listed = json::parse(run({"catalog", "--json"}).out)["result"];
    CHECK(listed["rows"].size() == catalog_names().size());
    for (const CatalogName& name : catalog_names()) {
        const std::string id{name.id};
        CAPTURE(id);
        CHECK(run({"catalog", id}).status == 0);
        const json table = json::parse(run({"catalog", id, "--format", "json"}).out)["result"];
        const std::string csv = run({"catalog", id, "--format", "csv"}).out;
        CHECK(table["table"] == id);
        REQUIRE(!table["rows"].empty());
        CHECK(catalog_table(id).rows.size() == table["rows"].size());
        std::size_t records = 0;
        for (std::size_t at = csv.find("\r\n"); at != std::string::npos;
             at = csv.find("\r\n", at + 2)) {
            ++records;
        }
        CHECK(records == table["rows"].size() + 1);
        for (const json& row : table["rows"]) {
            CHECK_FALSE(row["name"].get<std::string>().empty());
            if (id != "sources") {
                CHECK_FALSE(row["source"].get<std::string>().empty());
            }
        }
    }
    CHECK_THAT(
        run({"catalog", "sizes", "--format", "csv"}).out,
        Contains("name,system,inside_diameter_m,seldom_sold_as,source,mark\r\n3 in,inch,0.0762,"));
}

TEST_CASE("the starting file passes in both systems of units", "[template]") {
    for (const std::string units : {"us", "metric"}) {
        const auto file = run({"template", "--units", units});
        CHECK(file.status == 0);
        CHECK_THAT(file.out, !Contains("@/") && !Contains("<"));
        // The rules that come with US units ask more of fire than a file to start from can know.
        const auto outcome = run({"check", "-", "--rules", "none"}, file.out);
        CHECK(outcome.status == 0);
        CHECK(run({"check", "-", "--require", "draft"}, file.out).status == 0);
        CHECK(run({"check", "-"}, file.out).status == (units == "us" ? 1 : 0));
        CHECK_THAT(outcome.out, Contains(units == "us" ? "inH2O" : " Pa"));
    }
}

TEST_CASE("the schema is printed as it is published", "[schema]") {
    CHECK(run({"schema"}).out == input_schema());
    CHECK(run({"schema", "--of", "installation"}).out == input_schema());
    CHECK(run({"schema", "--of", "result"}).out == result_schema());
}

TEST_CASE("every option stands in a row, and every row belongs to a command", "[options]") {
    std::vector<const cli::OptionInfo*> used(cli::common_options().begin(),
                                             cli::common_options().end());
    used.push_back(&cli::option::version);
    for (const cli::Command* command : cli::commands()) {
        const auto its = cli::options_of(*command);
        used.insert(used.end(), its.begin(), its.end());
    }
    for (const cli::OptionInfo* option : cli::all_options()) {
        CAPTURE(option->name);
        CHECK(std::find(used.begin(), used.end(), option) != used.end());
        CHECK_FALSE(option->text.empty());
    }
    for (const cli::OptionInfo* option : used) {
        const auto rows = cli::all_options();
        CHECK(std::find(rows.begin(), rows.end(), option) != rows.end());
    }
}
