#pragma once

#include "registry.hpp"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace published {

/// One published figure and what it takes to compare it.
struct Row {
    std::string place_in_file; ///< "friction.csv:12"
    std::string id;
    std::string check;
    std::string inputs;
    double expected;
    double tolerance;
    bool relative; ///< whether the tolerance is a share of the expected value
    std::string reason;
    std::string source;
    std::string place;
    std::string mark;
    std::string topic;
};

/// Whether agreement within the row's tolerance tells what fluewright would say of the next case:
/// not where it may miss by 30 % or more. Half a unit of a printed last digit is no such miss.
[[nodiscard]] bool predicts(const Row& row);

/// "friction" of "friction.csv:12".
[[nodiscard]] std::string table_of_row(const Row& row);

struct Outcome {
    Row row;
    std::string quantity;
    std::string unit;
    double computed;
    std::string error; ///< why the row could not be computed; empty when it was

    /// Computed less expected; over expected where the tolerance is relative.
    [[nodiscard]] double deviation() const;

    [[nodiscard]] bool passes() const;
};

/// Every row of every table in a folder, file by file in the order of their names.
[[nodiscard]] std::vector<Row> read_rows(const std::filesystem::path& folder);

/// Document and place of every source by its key.
[[nodiscard]] std::map<std::string, std::string> read_sources(const std::filesystem::path& file);

[[nodiscard]] std::vector<Outcome> compare(const std::vector<Row>& rows, const Registry& registry);

/// The rows once more with other inputs, "elbow_loss=0.75;friction=0.03", in place of their own or
/// beside them.
[[nodiscard]] std::vector<Outcome> compare_with(const std::vector<Outcome>& outcomes,
                                                const std::string& other_inputs,
                                                const Registry& registry);

/// What is wrong with the tables themselves: unknown sources or marks, ids used twice, topics that
/// mix units. One line each.
[[nodiscard]] std::vector<std::string>
table_faults(const std::vector<Outcome>& outcomes,
             const std::map<std::string, std::string>& sources);

} // namespace published
