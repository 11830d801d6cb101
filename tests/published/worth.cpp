#include "worth.hpp"

#include "spread.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace published {
namespace {

/// What a figure is worth by where it is from.
struct Worth {
    std::size_t published{};  ///< looked up: somebody else's figure, read in his document
    std::size_t computed{};   ///< by another program, from the source's equations
    std::size_t remembered{}; ///< from memory, by judgement or custom

    void count(const Outcome& outcome) {
        const std::string& mark = outcome.row.mark;
        ++(mark == "looked up" ? published : mark == "computed" ? computed : remembered);
    }
};

Worth worth_of(const std::vector<Outcome>& outcomes) {
    Worth worth;
    for (const Outcome& outcome : outcomes) {
        worth.count(outcome);
    }
    return worth;
}

std::vector<Outcome> those(const std::vector<Outcome>& outcomes, bool predicting) {
    std::vector<Outcome> list;
    std::copy_if(outcomes.begin(), outcomes.end(), std::back_inserter(list), [&](const auto& o) {
        return predicts(o.row) == predicting;
    });
    return list;
}

std::size_t with_mark(const std::vector<Outcome>& outcomes, std::string_view mark) {
    return static_cast<std::size_t>(std::count_if(
        outcomes.begin(), outcomes.end(), [&](const auto& o) { return o.row.mark == mark; }));
}

/// Computed rows by the table they stand in, with the script that makes it again.
std::string scripts_of(const std::vector<Outcome>& outcomes,
                       const std::set<std::string>& scripted) {
    std::map<std::string, std::size_t> with;
    std::size_t without = 0;
    for (const Outcome& outcome : outcomes) {
        if (outcome.row.mark != "computed") {
            continue;
        }
        const std::string table = table_of_row(outcome.row);
        if (scripted.contains(table)) {
            ++with[table];
        } else {
            ++without;
        }
    }
    std::string text;
    for (const auto& [table, count] : with) {
        text += fmt::format(
            "- {} rows of {}.csv, which tests/published/reference/{}.py computes anew\n",
            count,
            table,
            table);
    }
    return text
           + fmt::format("- {} rows whose calculation is not part of this tree: their source says "
                         "how they were made\n",
                         without);
}

std::string counts(const std::vector<Outcome>& outcomes, const std::set<std::string>& scripted) {
    const std::vector<Outcome> telling = those(outcomes, true);
    const Worth all = worth_of(outcomes);
    const Worth kept = worth_of(telling);
    std::string text = "| figures | rows | of them with predictive value |\n"
                       "| --- | ---: | ---: |\n";
    text +=
        fmt::format("| published: read in the source | {} | {} |\n", all.published, kept.published);
    text += fmt::format("| computed: by another program, from the source's equations | {} | {} |\n",
                        all.computed,
                        kept.computed);
    text += fmt::format("| remembered: the source was not seen, or there is none | {} | {} |\n\n",
                        all.remembered,
                        kept.remembered);
    text +=
        "Only the first line is agreement with figures that others printed. The second says that "
        "equations were put into code without a slip, not that they are true to a chimney. "
        "Computed are\n\n"
        + scripts_of(outcomes, scripted);
    text += fmt::format("\nOf the remembered ones {} are from memory, {} the middle of a spread by "
                        "judgement, and {} a custom of the trade.\n\n",
                        with_mark(outcomes, "from memory"),
                        with_mark(outcomes, "judgement"),
                        with_mark(outcomes, "common practice"));
    return text;
}

std::string topic_table(const Topics& topics) {
    std::string text = "| topic | published | computed | remembered | median deviation | 95th "
                       "percentile |\n| --- | ---: | ---: | ---: | ---: | ---: |\n";
    for (const auto& [topic, rows] : topics) {
        const std::vector<Outcome> telling = those(rows, true);
        if (telling.empty()) {
            continue;
        }
        const Worth worth = worth_of(telling);
        const Spread spread = spread_of(telling);
        text += fmt::format("| {} | {} | {} | {} | {} | {} |\n",
                            topic,
                            worth.published,
                            worth.computed,
                            worth.remembered,
                            spread.median,
                            spread.most);
    }
    return text;
}

/// The reasons of the rows, each once, without the word that classes them.
std::string reasons_of(const std::vector<Outcome>& outcomes) {
    std::set<std::string> reasons;
    for (const Outcome& outcome : outcomes) {
        const std::string& reason = outcome.row.reason;
        const std::size_t colon = reason.find(": ");
        const bool classed = reason.starts_with("method: ") || reason.starts_with("printed: ");
        reasons.insert(classed ? reason.substr(colon + 2) : reason);
    }
    std::string text;
    for (const std::string& reason : reasons) {
        text += (text.empty() ? "" : "; ") + reason;
    }
    return text;
}

std::string no_value_table(const Topics& topics) {
    std::string text =
        "| topic | rows | median deviation | why so wide |\n| --- | ---: | ---: | --- |\n";
    for (const auto& [topic, rows] : topics) {
        const std::vector<Outcome> wide = those(rows, false);
        if (!wide.empty()) {
            text += fmt::format("| {} | {} | {} | {} |\n",
                                topic,
                                wide.size(),
                                spread_of(wide).median,
                                reasons_of(wide));
        }
    }
    return text;
}

} // namespace

std::string head_of(const std::vector<Outcome>& outcomes,
                    const Topics& topics,
                    const std::set<std::string>& scripted,
                    const std::string& set_to_tables) {
    return fmt::format(
        "# Validation\n\n"
        "Made by `published --report docs/validation.md` from the tables under tests/published; a "
        "test fails when this file and the tables part. Change the tables, then run it again.\n\n"
        "{} figures of others are held against fluewright in {} topics. What agreement is worth "
        "depends on where a figure is from:\n\n{}"
        "## Topics\n\nRows that may miss by less than 30 %.\n\n{}\n{}"
        "## No predictive value\n\n"
        "{} rows may miss by 30 % or more and still pass. They show an order of magnitude or a "
        "difference between sources; nothing follows from them for the next case.\n\n{}\n",
        outcomes.size(),
        topics.size(),
        counts(outcomes, scripted),
        topic_table(topics),
        set_to_tables,
        those(outcomes, false).size(),
        no_value_table(topics));
}

} // namespace published
