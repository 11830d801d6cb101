#include "report.hpp"

#include "csv.hpp"
#include "figures.hpp"
#include "scatter.hpp"
#include "spread.hpp"
#include "trends.hpp"
#include "worth.hpp"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>
#include <set>

namespace published {
namespace {

constexpr std::size_t longest_table = 40;
constexpr std::size_t worst_shown = 3;

std::string joined(const std::set<std::string>& words) {
    std::string text;
    for (const auto& word : words) {
        text += text.empty() ? "" : ", ";
        text += word;
    }
    return text;
}

/// A file name made of the topic's letters and digits.
std::string file_name_of(const std::string& topic) {
    std::string name;
    for (const char c : topic) {
        if (std::isalnum(static_cast<unsigned char>(c)) != 0) {
            name += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        } else if (!name.empty() && name.back() != '-') {
            name += '-';
        }
    }
    while (!name.empty() && name.back() == '-') {
        name.pop_back();
    }
    return name;
}

/// The inputs of a row with room to break the line.
std::string inputs_of(const Outcome& outcome) {
    std::string text;
    for (const char c : outcome.row.inputs) {
        text += c == ';' ? std::string("; ") : std::string(1, c);
    }
    return text;
}

std::string table_of(const std::vector<Outcome>& outcomes) {
    std::string text = "| id | inputs | figure | fluewright | deviation | source | mark |\n"
                       "| --- | --- | ---: | ---: | ---: | --- | --- |\n";
    for (const auto& outcome : outcomes) {
        text += fmt::format("| {} | {} | {} | {} | {} | {} | {} |\n",
                            outcome.row.id,
                            inputs_of(outcome),
                            figure(outcome.row.expected),
                            figure(outcome.computed),
                            deviation_of(outcome, outcome.deviation()),
                            outcome.row.source,
                            outcome.row.mark);
    }
    return text;
}

/// Statistics of the rows whose tolerance is of one kind, and the worst of them.
std::string summary_of(std::vector<Outcome> outcomes) {
    std::stable_sort(outcomes.begin(), outcomes.end(), [](const auto& a, const auto& b) {
        return rounded_size(a) > rounded_size(b);
    });
    const auto show = [&](double size) { return size_text(outcomes, size); };
    std::set<std::string> sources;
    std::set<std::string> marks;
    for (const auto& outcome : outcomes) {
        sources.insert(outcome.row.source);
        marks.insert(outcome.row.mark);
    }
    std::string text =
        fmt::format("| rows | median deviation | 95th percentile | greatest | sources | marks |\n"
                    "| ---: | ---: | ---: | ---: | --- | --- |\n| {} | {} | {} | {} | {} | {} |\n\n"
                    "The three rows furthest off:\n\n",
                    outcomes.size(),
                    show(percentile(outcomes, 0.5)),
                    show(percentile(outcomes, 0.95)),
                    show(rounded_size(outcomes.front())),
                    joined(sources),
                    joined(marks));
    outcomes.resize(std::min(outcomes.size(), worst_shown));
    return text + table_of(outcomes);
}

std::string body_of(const std::vector<Outcome>& outcomes) {
    if (outcomes.size() <= longest_table) {
        return table_of(outcomes);
    }
    std::vector<Outcome> relative;
    std::vector<Outcome> absolute;
    for (const auto& outcome : outcomes) {
        (outcome.row.relative ? relative : absolute).push_back(outcome);
    }
    std::string text;
    for (const auto& part : {relative, absolute}) {
        if (!part.empty()) {
            text += text.empty() ? "" : "\n";
            text += summary_of(part);
        }
    }
    return text;
}

/// Which tolerances the rows carry and why.
std::string tolerances_of(const std::vector<Outcome>& outcomes) {
    std::map<std::string, std::size_t> counts;
    for (const auto& outcome : outcomes) {
        const std::string size = outcome.row.relative
                                     ? fmt::format("{:.3g} %", 100.0 * outcome.row.tolerance)
                                     : fmt::format("{:.3g}{}{}",
                                                   outcome.row.tolerance,
                                                   outcome.unit.empty() ? "" : " ",
                                                   outcome.unit);
        ++counts[size + ": " + outcome.row.reason];
    }
    std::string text = "Allowed deviation:\n\n";
    for (const auto& [reason, count] : counts) {
        text += fmt::format("- {} ({} {})\n", reason, count, count == 1 ? "row" : "rows");
    }
    return text;
}

/// What comes of the same rows with the handbook's values of constants that were set to them.
std::string handbook_of(const std::vector<Outcome>& outcomes, const Note& note, const Made& made) {
    if (note.handbook.empty()) {
        return "";
    }
    const Spread set = spread_of(outcomes);
    const Spread handbook = spread_of(compare_with(outcomes, note.handbook, made.registry));
    return fmt::format(
        "A constant in these figures was set to a table, so that they say little of it. With the "
        "handbook's values, {}, the median deviation is {} and the 95th percentile {}, instead of "
        "{} and {}. `check` uses neither.\n\n",
        note.handbook_words,
        handbook.median,
        handbook.most,
        set.median,
        set.most);
}

/// The same of all topics, for the first page.
std::string
set_constants(const Topics& topics, const std::map<std::string, Note>& notes, const Made& made) {
    std::string text =
        "## Constants set to a table\n\n"
        "What follows from a constant that was set to the table it is held against is no proof. "
        "Each "
        "stands here beside what the handbook's value gives. `check` uses none of them: its "
        "losses, "
        "its friction and its gas are those of the file and the catalog.\n\n"
        "| topic | handbook's values | median with them | 95th percentile | median as set | 95th "
        "percentile |\n| --- | --- | ---: | ---: | ---: | ---: |\n";
    for (const auto& [topic, rows] : topics) {
        const auto note = notes.find(topic);
        if (note == notes.end() || note->second.handbook.empty()) {
            continue;
        }
        const Spread set = spread_of(rows);
        const Spread handbook = spread_of(compare_with(rows, note->second.handbook, made.registry));
        text += fmt::format("| {} | {} | {} | {} | {} | {} |\n",
                            topic,
                            note->second.handbook_words,
                            handbook.median,
                            handbook.most,
                            set.median,
                            set.most);
    }
    return text + "\n";
}

std::string note_of(const std::vector<Outcome>& outcomes, const Note* note, const Made& made) {
    if (note == nullptr) {
        return "";
    }
    const std::string trends = note->trends.empty() ? "" : "\n" + trends_of(outcomes, note->trends);
    return note->text + "\n" + trends + (trends.empty() ? "\n" : "")
           + handbook_of(outcomes, *note, made);
}

std::string section_of(const std::string& topic,
                       const std::vector<Outcome>& outcomes,
                       const Note* note,
                       const Made& made) {
    std::set<std::string> checks;
    for (const auto& outcome : outcomes) {
        checks.insert(outcome.row.check);
    }
    const std::string& unit = outcomes.front().unit;
    return fmt::format(
        "## {0}\n\n{1}{2}; checks: {3}.\n\n{7}{4}\n{5}\n![Fluewright against the figures: "
        "{0}](validation/{6}.svg)\n\n",
        topic,
        outcomes.front().quantity,
        unit.empty() ? "" : " in " + unit,
        joined(checks),
        body_of(outcomes),
        tolerances_of(outcomes),
        file_name_of(topic),
        note_of(outcomes, note, made));
}

} // namespace

std::map<std::string, Note> read_notes(const std::filesystem::path& file) {
    const Table table = read_csv(file);
    std::map<std::string, Note> notes;
    for (const auto& row : table.rows) {
        Note& note = notes[row[table.column("topic")]];
        note.text = row[table.column("note")];
        note.handbook = row[table.column("handbook")];
        note.handbook_words = row[table.column("handbook_words")];
        std::string name;
        for (const char c : row[table.column("trends")] + "|") {
            if (c != '|') {
                name += c;
            } else if (!name.empty()) {
                note.trends.push_back(name);
                name.clear();
            }
        }
    }
    return notes;
}

Files make_report(const std::vector<Outcome>& outcomes,
                  const std::map<std::string, std::string>& sources,
                  const std::map<std::string, Note>& notes,
                  const Made& made,
                  const std::string& name) {
    Topics topics;
    std::set<std::string> used;
    for (const auto& outcome : outcomes) {
        topics[outcome.row.topic].push_back(outcome);
        used.insert(outcome.row.source);
    }
    Files files;
    std::string text = head_of(outcomes, topics, made.scripted, set_constants(topics, notes, made));
    for (const auto& [topic, rows] : topics) {
        const auto note = notes.find(topic);
        text += section_of(topic, rows, note == notes.end() ? nullptr : &note->second, made);
        files["validation/" + file_name_of(topic) + ".svg"] = scatter_svg(rows);
    }
    text += "## Sources\n\n";
    for (const auto& key : used) {
        const auto found = sources.find(key);
        text += fmt::format("- {}: {}\n", key, found == sources.end() ? "?" : found->second);
    }
    files[name] = text;
    return files;
}

} // namespace published
