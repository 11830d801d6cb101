#include "catch.hpp"
#include "fluewright/advice/checks/check.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"

#include <array>
#include <cstdlib>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace fluewright;
using nlohmann::json;

/// docs/rules.md, made from the table of rules and from the cases it is tested with.
namespace {

constexpr std::array<std::string_view, 6> body_columns{"any", "us", "uk", "ca", "au", "de"};

std::string figures_of_rule(const catalog::Rule& rule) {
    std::string words;
    for (const double figure : {rule.figure, rule.second}) {
        if (figure > 0.0) {
            words += (words.empty() ? "" : ", ") + format_number(figure, 4);
        }
    }
    const bool bare = rule.unit == "1" || rule.unit == "count" || words.empty();
    return bare ? words : words + ' ' + std::string{rule.unit};
}

std::string source_of_rule(const catalog::Rule& rule) {
    const catalog::Source& source = *catalog::find_source(rule.source);
    std::string words{source.document};
    words += rule.clause.empty() ? "" : ", " + std::string{rule.clause};
    words += source.year.empty() ? "" : " (" + std::string{source.year} + ')';
    return words + (source.newer.empty() ? "" : "; newer: " + std::string{source.newer});
}

/// "`straight` {...}"; why there is none.
std::string case_words(const json& given) {
    if (given.is_string()) {
        return given.get<std::string>();
    }
    return '`' + given[0].get<std::string>() + "` `" + given[1].dump() + '`';
}

json lines_by_rule() {
    std::ifstream file{PROJECT_SOURCE_DIR "/tests/unit/advice/rule_cases.json"};
    json by = json::object();
    const json table = json::parse(file);
    for (const json& line : table["cases"]) {
        by[line["rule"].get<std::string>()] = line;
    }
    return by;
}

/// Which rule of which body speaks of which matter.
std::string matrix() {
    std::string text = "| what is bad |";
    for (const std::string_view body : body_columns) {
        text += ' ' + std::string{body} + " |";
    }
    text += "\n| --- | --- | --- | --- | --- | --- | --- |\n";
    for (const Matter& matter : matters()) {
        std::map<std::string_view, std::string> cells;
        for (const catalog::Rule& rule : catalog::rules()) {
            if (rule.matter == matter.id) {
                std::string& cell = cells[rule.body];
                cell += (cell.empty() ? "" : ", ") + std::string{rule.id};
                cell += rule.strength == "rule" ? "" : " (" + std::string{rule.strength} + ')';
            }
        }
        if (cells.empty()) {
            continue;
        }
        text += "| " + std::string{matter.id} + " |";
        for (const std::string_view body : body_columns) {
            text += ' ' + cells[body] + " |";
        }
        text += '\n';
    }
    return text;
}

std::string rules_markdown() {
    const json by = lines_by_rule();
    std::string text =
        "# Rules of installation\n\nMade by a program from `data/rules.csv`, `data/sources.csv` "
        "and the cases in `tests/unit/advice/rule_cases.json`; a test holds it fresh. Met means "
        "that a figure of a file meets a figure of a rule, and nothing more: listing and "
        "instructions of heater and pipe come first, then local law, then these. Strength: rule, "
        "what a code, law or listing asks for; advice, trade practice, or a figure nobody has "
        "looked up; local, one town's old figure, which is told and decides nothing. Figures are "
        "in SI.\n\n## Who speaks of what\n\n"
        + matrix()
        + "\n## Rule by rule\n\nThe cases change a base installation of the file of "
          "cases; keys are JSON pointers.\n";
    for (const catalog::Rule& rule : catalog::rules()) {
        const json& line = by[std::string{rule.id}];
        const std::string figures = figures_of_rule(rule);
        text += "\n### " + std::string{rule.id} + "\n\n" + std::string{rule.body} + ", "
                + std::string{rule.strength} + ", " + std::string{rule.severity} + ". "
                + std::string{rule.says} + ". For: " + std::string{rule.applies} + ".\n\n"
                + "| figure | source | mark |\n| --- | --- | --- |\n| "
                + (figures.empty() ? "none, or by a table" : figures) + " | " + source_of_rule(rule)
                + " | " + std::string{rule.mark} + " |\n\n";
        if (!rule.disagrees.empty()) {
            text += "Another source: " + std::string{rule.disagrees} + ".\n\n";
        }
        text += "| outcome | tested by |\n| --- | --- |\n";
        for (const auto& [key, words] : {std::pair{"met", "met"},
                                         std::pair{"not_met", "not met"},
                                         std::pair{"undetermined", "undetermined"},
                                         std::pair{"does_not_apply", "does not apply"}}) {
            text += "| " + std::string{words} + " | " + case_words(line[key]) + " |\n";
            for (const json& neighbor : line.value("neighbors", json::array())) {
                if (neighbor["outcome"] == key) {
                    text += "| " + std::string{words} + " | " + neighbor["why"].get<std::string>()
                            + ": " + case_words(neighbor["case"]) + " |\n";
                }
            }
        }
    }
    return text;
}

} // namespace

TEST_CASE("the document of rules is fresh", "[rules]") {
    const std::string path = PROJECT_SOURCE_DIR "/docs/rules.md";
    const std::string fresh = rules_markdown();
    if (std::getenv("FLUEWRIGHT_UPDATE_DOCS") != nullptr) {
        std::ofstream{path} << fresh;
    }
    std::ifstream file{path};
    std::ostringstream committed;
    committed << file.rdbuf();
    INFO("docs/rules.md is stale; run this test with FLUEWRIGHT_UPDATE_DOCS=1");
    CHECK(committed.str() == fresh);
}

TEST_CASE("every rule has a document behind it, and what nobody looked up is no rule", "[rules]") {
    for (const catalog::Rule& rule : catalog::rules()) {
        INFO(rule.id);
        CHECK(catalog::find_source(rule.source) != nullptr);
        CHECK((rule.strength != "rule" || rule.mark != "from memory"));
    }
}
