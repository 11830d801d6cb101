#pragma once

#include "outcome.hpp"

namespace published {

/// The report and its drawings: file names relative to the folder of the report, with their text.
using Files = std::map<std::string, std::string>;

/// What is said about a topic beside its figures.
struct Note {
    std::string text;
    std::vector<std::string> trends; ///< inputs over which the mean deviation is shown
    /// The handbook's values of what was set to the tables, as inputs of a row; empty where nothing
    /// was.
    std::string handbook;
    std::string handbook_words;
};

/// What the report needs beside the rows.
struct Made {
    const Registry& registry;
    std::set<std::string> scripted; ///< tables that a committed script makes again
};

/// Notes by topic; columns topic, trends (names parted by '|'), note, and for constants that were
/// set to the tables the handbook's values as inputs and in words.
[[nodiscard]] std::map<std::string, Note> read_notes(const std::filesystem::path& file);

/// `name` is the file name of the report itself, "validation.md".
[[nodiscard]] Files make_report(const std::vector<Outcome>& outcomes,
                                const std::map<std::string, std::string>& sources,
                                const std::map<std::string, Note>& notes,
                                const Made& made,
                                const std::string& name);

} // namespace published
