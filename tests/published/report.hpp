#pragma once

#include "outcome.hpp"

namespace published {

/// The report and its drawings: file names relative to the folder of the report, with their text.
using Files = std::map<std::string, std::string>;

/// What is said about a topic beside its figures.
struct Note {
    std::string text;
    std::vector<std::string> trends; ///< inputs over which the mean deviation is shown
};

/// Notes by topic; columns topic, trends (names parted by '|') and note.
[[nodiscard]] std::map<std::string, Note> read_notes(const std::filesystem::path& file);

/// `name` is the file name of the report itself, "validation.md".
[[nodiscard]] Files make_report(const std::vector<Outcome>& outcomes,
                                const std::map<std::string, std::string>& sources,
                                const std::map<std::string, Note>& notes,
                                const std::string& name);

} // namespace published
