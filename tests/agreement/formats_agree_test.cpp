#include "../catch.hpp"
#include "../cli/session.hpp"
#include "../outdoor_top.hpp"
#include "../property/random_installation.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/reference/catalog_report.hpp"
#include "fluewright/io/results/columns.hpp"
#include "searched.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>

// Text, JSON and CSV of an answer hold the same figures, rounded the same way. What is wanted of
// text and CSV is worked out here from the JSON, without the writers' tables of columns.

using namespace fluewright;
using nlohmann::json;
using session::run;

namespace {

constexpr std::uint64_t many = 500;

/// A random installation as a file of one line.
std::string file_of(std::uint64_t seed) {
    return write_installation_line(with_outdoor_top(property::random_installation(seed)));
}

/// The records of RFC 4180.
std::vector<std::vector<std::string>> records_of(const std::string& csv) {
    std::vector<std::vector<std::string>> records;
    std::vector<std::string> record{""};
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char c = csv[i];
        if (quoted) {
            if (c != '"') {
                record.back() += c;
            } else if (i + 1 < csv.size() && csv[i + 1] == '"') {
                record.back() += csv[++i];
            } else {
                quoted = false;
            }
        } else if (c == '"') {
            quoted = true;
        } else if (c == ',') {
            record.emplace_back();
        } else if (c == '\n') {
            records.push_back(record);
            record = {""};
        } else if (c != '\r') {
            record.back() += c;
        }
    }
    return records;
}

/// Whether a cell says what a value of JSON says.
bool says(const std::string& cell, const json& value) {
    if (value.is_null()) {
        return cell.empty();
    }
    if (value.is_boolean()) {
        return cell == (value.get<bool>() ? "yes" : "no");
    }
    if (value.is_number()) {
        char* end = nullptr;
        const double read = std::strtod(cell.c_str(), &end);
        return !cell.empty() && *end == '\0' && read == value.get<double>();
    }
    if (value.is_string()) {
        return cell == value.get<std::string>();
    }
    std::string words;
    for (const json& each : value) {
        words += (words.empty() ? "" : " ") + each.get<std::string>();
    }
    return cell == words;
}

/// The lines of CSV against as many objects, by the keys of the heading.
void check_csv(const std::string& csv, const std::vector<json>& wanted) {
    const auto records = records_of(csv);
    REQUIRE(records.size() == wanted.size() + 1);
    const auto& keys = records.front();
    CHECK(std::map<std::string, int>([&] {
              std::map<std::string, int> seen;
              for (const std::string& key : keys) {
                  ++seen[key];
              }
              return seen;
          }())
              .size()
          == keys.size());
    for (std::size_t row = 0; row < wanted.size(); ++row) {
        const auto& cells = records[row + 1];
        REQUIRE(cells.size() == keys.size());
        for (std::size_t i = 0; i < keys.size(); ++i) {
            const json& value = wanted[row].contains(keys[i]) ? wanted[row][keys[i]] : json{};
            if (!says(cells[i], value)) {
                FAIL_CHECK("line " << row + 1 << ", " << keys[i] << ": CSV has " << cells[i]
                                   << ", JSON " << value);
            }
        }
    }
}

/// Each record with each of its states, the figures of both in one object.
std::vector<json> with_states(const json& list) {
    std::vector<json> lines;
    for (const json& record : list) {
        if (record["states"].is_null()) {
            lines.push_back(record);
            continue;
        }
        for (const json& state : record["states"]) {
            lines.push_back(record);
            lines.back().update(state);
        }
    }
    return lines;
}

bool holds(const json& value, results::Holds wanted) {
    switch (wanted) {
    case results::Holds::truth:
        return value.is_boolean();
    case results::Holds::whole:
        return value.is_number_integer();
    case results::Holds::number:
        return value.is_number();
    case results::Holds::text:
        return value.is_string();
    case results::Holds::record:
    case results::Holds::fragment:
        break;
    }
    return value.is_object();
}

/// What is amiss with a value under a column: of another kind, or null where it may not be. Empty
/// where nothing is.
std::string amiss(const json& value, const results::ColumnInfo& column, int lists);

std::string amiss(const json& value, const results::RecordInfo& record) {
    if (value.size() != record.columns.size()) {
        return record.name + " has " + std::to_string(value.size()) + " keys";
    }
    for (const results::ColumnInfo& column : record.columns) {
        if (!value.contains(column.key)) {
            return record.name + " lacks " + column.key;
        }
        const json& under = value[column.key];
        const std::string fault = under.is_null() ? (column.shape.may_be_null ? "" : "is null")
                                                  : amiss(under, column, column.shape.lists);
        if (!fault.empty()) {
            return record.name + '/' + column.key + ": " + fault;
        }
    }
    return {};
}

std::string amiss(const json& value, const results::ColumnInfo& column, int lists) {
    if (lists > 0) {
        for (const json& each : value) {
            if (const std::string fault = amiss(each, column, lists - 1); !fault.empty()) {
                return fault;
            }
        }
        return value.is_array() ? "" : "is no list";
    }
    if (!holds(value, column.shape.holds)) {
        return "is " + value.dump().substr(0, 60);
    }
    return column.shape.record ? amiss(value, column.shape.record()) : "";
}

/// What a command answers, held against the records that describe it.
json result_of(std::vector<std::string> words, const std::string& file) {
    words.emplace_back("--json");
    const json answer = json::parse(run(words, file).out);
    CHECK(amiss(answer, results::answer_record()).empty());
    json result = answer["result"];
    std::string faults = amiss(result, results::faults_record());
    for (const results::CommandResult& one : results::command_results()) {
        for (const results::RecordInfo* record : one.records) {
            if (one.command == words.front() && !faults.empty()) {
                const std::string fault = amiss(result, *record);
                faults = fault.empty() ? fault : faults + "; " + fault;
            }
        }
    }
    CHECK(faults.empty());
    if (!faults.empty()) {
        WARN(words.front() << ": " << faults << "\n" << file);
    }
    return result;
}

std::string csv_of(std::vector<std::string> words, const std::string& file) {
    words.insert(words.end(), {"--format", "csv"});
    return run(words, file).out;
}

std::string shown(const json& value, Kind kind, UnitSystem units, bool with_sign = false) {
    if (value.is_null()) {
        return "-";
    }
    const auto si = value.get<double>();
    const std::string text = format_quantity(si, kind, units);
    const std::string number = text.substr(0, text.find(' '));
    const bool zero = number.find_first_of("123456789") == std::string::npos;
    return (with_sign && si > 0.0 && !zero ? "+" : "") + number;
}

/// What the table of states has to show of a state with its door shut.
std::string line_of(const json& state, UnitSystem units) {
    const std::string kind = state["state"];
    const bool burning = kind == "high fire" || kind == "low fire";
    const bool bare = kind == "idle";
    const auto cell = [&](const char* key, Kind of, bool wanted, bool with_sign = false) {
        return ' ' + (wanted ? shown(state[key], of, units, with_sign) : std::string{"-"});
    };
    return kind + cell("burn_rate_kg_s", Kind::mass_rate, !bare)
           + cell("gas_flow_kg_s", Kind::gas_flow, !bare)
           + cell("gas_temperature_k", Kind::temperature, !bare)
           + cell("top_temperature_k", Kind::temperature, !bare)
           + cell("draft_pa", Kind::pressure, true)
           + cell("draft_needed_pa", Kind::pressure, !bare && kind != "cold start")
           + cell("margin_pa", Kind::pressure, burning, true) + ' ';
}

} // namespace

TEST_CASE("the table of states shows the figures of JSON") {
    int held = 0;
    for (std::uint64_t seed = 0; seed < many; ++seed) {
        const std::string file = file_of(seed);
        const json answer = result_of({"check", "-", "--no-size-search"}, file);
        if (answer.contains("errors")) {
            continue;
        }
        const UnitSystem units =
            answer["installation"]["units"] == "us" ? UnitSystem::us : UnitSystem::metric;
        const std::string text =
            session::in_one_line(run({"check", "-", "--no-size-search", "--details"}, file).out);
        for (const json& state : answer["states"]) {
            const std::string kind = state["state"];
            if (state["status"] != "solved" || kind.starts_with("reloading")) {
                continue;
            }
            ++held;
            if (text.find(line_of(state, units)) == std::string::npos) {
                FAIL_CHECK("seed " << seed << ": no line \"" << line_of(state, units) << '"');
            }
        }
        CHECK(text.starts_with(session::in_one_line(answer["sentence"].get<std::string>())));
    }
    CHECK(held > 1000);
}

TEST_CASE("a batch writes the same row as a line of JSON and of CSV") {
    std::string stream;
    for (std::uint64_t seed = 0; seed < many; ++seed) {
        stream += file_of(seed);
    }
    const std::vector<std::string> words{"batch", "-", "--fields", "all", "--format"};
    const auto in_format = [&](const std::string& format) {
        auto more = words;
        more.push_back(format);
        return run(more, stream).out;
    };
    std::vector<json> rows;
    std::istringstream lines(in_format("ndjson"));
    for (std::string line; std::getline(lines, line);) {
        rows.push_back(json::parse(line));
    }
    CHECK(rows.size() == many);
    check_csv(in_format("csv"), rows);
}

TEST_CASE("CSV has the figures of JSON, whatever the command") {
    constexpr std::uint64_t usual_files = 60;
    const std::uint64_t few = agreement::searched(usual_files);
    int held = 0;
    for (std::uint64_t seed = 0; seed < few; ++seed) {
        const std::string file = file_of(seed);
        const json sizes = result_of({"size", "-"}, file);
        if (sizes.contains("errors")) {
            continue;
        }
        ++held;
        INFO("seed " << seed << ": " << file);
        check_csv(csv_of({"size", "-"}, file), with_states(sizes["sizes"]));
        const std::vector<std::string> sweep{"sweep", "-", "--over", "outdoor=-15..10degC:3"};
        json points = result_of(sweep, file)["points"];
        for (json& point : points) {
            point["outdoor_k"] = point["at"][0];
        }
        check_csv(csv_of(sweep, file), with_states(points));
        const std::vector<std::string> warmup{"warmup", "-", "--minutes", "5"};
        std::vector<json> moments;
        const json warmed = result_of(warmup, file);
        for (const json& course : warmed["weathers"]) {
            moments.insert(moments.end(), course["moments"].begin(), course["moments"].end());
        }
        check_csv(csv_of(warmup, file), moments);
        const json parts = result_of({"parts", "-"}, file);
        std::vector<json> lines;
        for (json line : parts["parts"]) {
            line["kind"] = "part";
            line["from_offcut"] = false;
            line["crimp"] = false;
            lines.push_back(line);
        }
        for (json cut : parts["cuts"]) {
            cut.update({{"kind", "cut"},
                        {"what", cut["place"]},
                        {"count", 1},
                        {"unit", ""},
                        {"where", cut["measure"]}});
            lines.push_back(cut);
        }
        check_csv(csv_of({"parts", "-"}, file), lines);
    }
    CHECK(held > 20);
}

TEST_CASE("layouts and plans have the figures of JSON in CSV") {
    const std::string folder = std::string{PROJECT_SOURCE_DIR} + "/examples/";
    const std::vector<std::string> compare{
        "compare", folder + "bindery.json", folder + "toll-house.json"};
    check_csv(csv_of(compare, ""), with_states(result_of(compare, "")["layouts"]));
    const std::vector<std::string> improve{"improve", folder + "toll-house.json"};
    const json answer = result_of(improve, "");
    json plans = answer["plans"];
    // The run as it stands goes before them.
    json present = answer["present"];
    present.update({{"rank", 0},
                    {"remedies", json::array()},
                    {"cost", 0.0},
                    {"gain", 0.0},
                    {"cures", false},
                    {"too_strong", false},
                    {"new_harm", false},
                    {"short_of_wanted", false},
                    {"on_front", false},
                    {"limiting_state", 0},
                    {"left_short", answer["present"]["falling_short"]},
                    {"findings_raised", json::array()},
                    {"findings_cleared", json::array()},
                    {"may_worsen", json::array()}});
    // The door of this heater opens far enough not to count.
    std::size_t least = 0;
    for (std::size_t i = 0; i < present["states"].size(); ++i) {
        if (present["states"][i]["harm"] == "draft"
            && present["states"][i]["relative_spare"]
                   < present["states"][least]["relative_spare"]) {
            least = i;
        }
    }
    present["limiting_state"] = least;
    plans.insert(plans.begin(), present);
    check_csv(csv_of(improve, ""), with_states(plans));
}

TEST_CASE("a table of the catalog has the figures of JSON in CSV") {
    for (const CatalogName& name : catalog_names()) {
        const std::vector<std::string> words{"catalog", std::string{name.id}};
        const json rows = result_of(words, "")["rows"];
        check_csv(csv_of(words, ""), {rows.begin(), rows.end()});
    }
}
