#include "report.hpp"

#include "csv.hpp"
#include "figures.hpp"
#include "scatter.hpp"
#include "trends.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <fmt/format.h>
#include <set>

namespace published {
namespace {

constexpr std::size_t longest_table = 40;
constexpr std::size_t worst_shown = 3;

using Topics = std::map<std::string, std::vector<Outcome>>;

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

/// Below this a deviation is round-off, which differs from machine to machine.
double round_off(const Outcome& outcome) {
    if (outcome.row.relative) {
        return 1e-4;
    }
    return std::max(1e-6 * outcome.row.tolerance, 1e-8 * std::abs(outcome.row.expected));
}

std::string deviation_of(const Outcome& outcome, double deviation) {
    if (outcome.row.relative) {
        return per_cent(deviation);
    }
    const std::string unit = outcome.unit.empty() ? "" : " " + outcome.unit;
    return signed_figure(deviation, round_off(outcome)) + unit;
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
    std::string text = "| id | inputs | published | computed | deviation | source | mark |\n"
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

/// Size of a deviation to six digits, so that equal ones are equal on every machine.
double rounded_size(const Outcome& outcome) {
    const double size = std::abs(outcome.deviation());
    if (size < round_off(outcome)) {
        return 0.0;
    }
    const double step = std::pow(10.0, std::floor(std::log10(size)) - 5.0);
    return std::round(size / step) * step;
}

/// The value that a share of the sorted sizes does not exceed.
double percentile(const std::vector<Outcome>& falling, double share) {
    const auto from_end =
        static_cast<std::size_t>(std::ceil(share * static_cast<double>(falling.size())));
    return rounded_size(falling[falling.size() - std::max<std::size_t>(from_end, 1)]);
}

/// A deviation without its sign, in the unit of the rows.
std::string size_text(const std::vector<Outcome>& outcomes, double size) {
    const std::string text = deviation_of(outcomes.front(), size);
    return text.front() == '+' ? text.substr(1) : text;
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

std::string note_of(const std::vector<Outcome>& outcomes, const Note* note) {
    if (note == nullptr) {
        return "";
    }
    const std::string trends = note->trends.empty() ? "" : "\n" + trends_of(outcomes, note->trends);
    return note->text + "\n" + trends + (trends.empty() ? "\n" : "");
}

std::string
section_of(const std::string& topic, const std::vector<Outcome>& outcomes, const Note* note) {
    std::set<std::string> checks;
    for (const auto& outcome : outcomes) {
        checks.insert(outcome.row.check);
    }
    const std::string& unit = outcomes.front().unit;
    return fmt::format(
        "## {0}\n\n{1}{2}; checks: {3}.\n\n{7}{4}\n{5}\n![Computed against published: "
        "{0}](validation/{6}.svg)\n\n",
        topic,
        outcomes.front().quantity,
        unit.empty() ? "" : " in " + unit,
        joined(checks),
        body_of(outcomes),
        tolerances_of(outcomes),
        file_name_of(topic),
        note_of(outcomes, note));
}

struct Spread {
    std::string median;
    std::string most; ///< the 95th percentile
};

/// Of the rows whose tolerance is of the same kind as that of most of them.
Spread spread_of(const std::vector<Outcome>& outcomes) {
    std::vector<Outcome> relative;
    std::vector<Outcome> absolute;
    for (const auto& outcome : outcomes) {
        (outcome.row.relative ? relative : absolute).push_back(outcome);
    }
    auto& kept = relative.size() >= absolute.size() ? relative : absolute;
    std::stable_sort(kept.begin(), kept.end(), [](const auto& a, const auto& b) {
        return rounded_size(a) > rounded_size(b);
    });
    return {size_text(kept, percentile(kept, 0.5)), size_text(kept, percentile(kept, 0.95))};
}

std::string head_of(const std::vector<Outcome>& outcomes, const Topics& topics) {
    std::map<std::string, std::size_t> marks;
    for (const auto& outcome : outcomes) {
        ++marks[outcome.row.mark];
    }
    std::string text = fmt::format(
        "# Validation\n\n"
        "Made by `published --report docs/validation.md` from the tables under tests/published; a "
        "test fails when this file and the tables part. Change the tables, then run it again.\n\n"
        "{} published figures are computed by fluewright and compared in {} topics. Each row says "
        "where its figure comes from:\n\n",
        outcomes.size(),
        topics.size());
    static const std::map<std::string, std::string> meaning{
        {"looked up", "the figure was read in the source"},
        {"computed", "another program computed it from the source's equations"},
        {"judgement", "the middle of a spread"},
        {"common practice", "a custom of the trade, no source"},
        {"from memory", "remembered; the source was not seen"}};
    for (const auto& [mark, count] : marks) {
        const auto found = meaning.find(mark);
        text += fmt::format(
            "- {} ({} rows): {}\n", mark, count, found == meaning.end() ? "" : found->second);
    }
    text += "\n| topic | rows | median deviation | 95th percentile |\n"
            "| --- | ---: | ---: | ---: |\n";
    for (const auto& [topic, rows] : topics) {
        const Spread spread = spread_of(rows);
        text +=
            fmt::format("| {} | {} | {} | {} |\n", topic, rows.size(), spread.median, spread.most);
    }
    return text + "\n";
}

} // namespace

std::map<std::string, Note> read_notes(const std::filesystem::path& file) {
    const Table table = read_csv(file);
    std::map<std::string, Note> notes;
    for (const auto& row : table.rows) {
        Note& note = notes[row[table.column("topic")]];
        note.text = row[table.column("note")];
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
                  const std::string& name) {
    Topics topics;
    std::set<std::string> used;
    for (const auto& outcome : outcomes) {
        topics[outcome.row.topic].push_back(outcome);
        used.insert(outcome.row.source);
    }
    Files files;
    std::string text = head_of(outcomes, topics);
    for (const auto& [topic, rows] : topics) {
        const auto note = notes.find(topic);
        text += section_of(topic, rows, note == notes.end() ? nullptr : &note->second);
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
