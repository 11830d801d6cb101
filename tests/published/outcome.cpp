#include "outcome.hpp"

#include "csv.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>
#include <stdexcept>

namespace published {
namespace {

double number(const std::string& text, const std::string& where) {
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    if (text.empty() || *end != '\0' || !std::isfinite(value)) {
        throw std::runtime_error(where + ": not a number: '" + text + "'");
    }
    return value;
}

void read_table(const std::filesystem::path& file, std::vector<Row>& rows) {
    const Table table = read_csv(file);
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        const auto cell = [&](const char* name) { return table.rows[i][table.column(name)]; };
        const std::string where = file.filename().string() + ":" + std::to_string(table.lines[i]);
        const std::string kind = cell("tolerance_kind");
        if (kind != "absolute" && kind != "relative") {
            throw std::runtime_error(where + ": tolerance_kind is absolute or relative");
        }
        rows.push_back({where,
                        cell("id"),
                        cell("check"),
                        cell("inputs"),
                        number(cell("expected"), where),
                        number(cell("tolerance"), where),
                        kind == "relative",
                        cell("reason"),
                        cell("source"),
                        cell("place"),
                        cell("mark"),
                        cell("topic")});
    }
}

std::vector<std::string> parted(const std::string& inputs) {
    std::vector<std::string> list;
    std::string one;
    for (const char c : inputs + ";") {
        if (c != ';') {
            one += c;
        } else if (!one.empty()) {
            list.push_back(one);
            one.clear();
        }
    }
    return list;
}

} // namespace

bool predicts(const Row& row) {
    constexpr double no_more = 0.3;
    const bool printed_digit = !row.relative && row.reason.starts_with("printed");
    const double share =
        row.relative ? row.tolerance : row.tolerance / std::max(std::abs(row.expected), 1e-12);
    return share < no_more || printed_digit;
}

std::string table_of_row(const Row& row) {
    return row.place_in_file.substr(0, row.place_in_file.find('.'));
}

double Outcome::deviation() const {
    const double difference = computed - row.expected;
    return row.relative ? difference / std::abs(row.expected) : difference;
}

bool Outcome::passes() const {
    return error.empty() && std::abs(deviation()) <= row.tolerance;
}

std::vector<Row> read_rows(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() == ".csv") {
            files.push_back(entry.path());
        }
    }
    std::sort(files.begin(), files.end());
    std::vector<Row> rows;
    for (const auto& file : files) {
        read_table(file, rows);
    }
    return rows;
}

std::map<std::string, std::string> read_sources(const std::filesystem::path& file) {
    const Table table = read_csv(file);
    std::map<std::string, std::string> sources;
    for (const auto& row : table.rows) {
        sources[row[table.column("id")]] =
            row[table.column("document")] + "; " + row[table.column("place")];
    }
    return sources;
}

std::vector<Outcome> compare(const std::vector<Row>& rows, const Registry& registry) {
    std::vector<Outcome> outcomes;
    for (const Row& row : rows) {
        Outcome outcome{row, "", "", 0.0, ""};
        const auto check = registry.find(row.check);
        if (check == registry.end()) {
            outcome.error = "no check named " + row.check;
        } else {
            outcome.quantity = check->second.quantity;
            outcome.unit = check->second.unit;
            try {
                const Inputs inputs(row.inputs);
                outcome.computed = check->second.compute(inputs);
                for (const auto& name : inputs.unused()) {
                    outcome.error = "input that the check does not use: " + name;
                }
                if (!std::isfinite(outcome.computed)) {
                    outcome.error = "the result is not finite";
                }
            } catch (const std::exception& problem) {
                outcome.error = problem.what();
            }
        }
        outcomes.push_back(std::move(outcome));
    }
    return outcomes;
}

std::vector<Outcome> compare_with(const std::vector<Outcome>& outcomes,
                                  const std::string& other_inputs,
                                  const Registry& registry) {
    std::set<std::string> names;
    std::vector<std::string> others = parted(other_inputs);
    for (const std::string& other : others) {
        names.insert(other.substr(0, other.find('=')));
    }
    std::vector<Row> rows;
    for (const Outcome& outcome : outcomes) {
        Row row = outcome.row;
        row.inputs = other_inputs;
        for (const std::string& own : parted(outcome.row.inputs)) {
            if (!names.contains(own.substr(0, own.find('=')))) {
                row.inputs += ";" + own;
            }
        }
        rows.push_back(std::move(row));
    }
    return compare(rows, registry);
}

std::vector<std::string> table_faults(const std::vector<Outcome>& outcomes,
                                      const std::map<std::string, std::string>& sources) {
    static const std::set<std::string> marks{
        "looked up", "computed", "judgement", "common practice", "from memory"};
    std::vector<std::string> faults;
    std::set<std::string> ids;
    std::map<std::string, std::string> unit_of_topic;
    for (const Outcome& outcome : outcomes) {
        const Row& row = outcome.row;
        const auto fault = [&](const std::string& text) {
            faults.push_back(row.place_in_file + ": row " + row.id + ": " + text);
        };
        if (!ids.insert(row.id).second) {
            fault("the id is used twice");
        }
        if (!marks.contains(row.mark)) {
            fault("no such mark: " + row.mark);
        }
        if (!sources.contains(row.source)) {
            fault("no such source: " + row.source);
        }
        if (row.reason.empty() || row.topic.empty()) {
            fault("reason and topic must not be empty");
        }
        if (row.relative && row.expected == 0.0) {
            fault("a relative tolerance of zero says nothing");
        }
        const auto [known, first] = unit_of_topic.emplace(row.topic, outcome.unit);
        if (!first && known->second != outcome.unit && outcome.error.empty()) {
            fault("the topic mixes units: " + known->second + " and " + outcome.unit);
        }
    }
    return faults;
}

} // namespace published
