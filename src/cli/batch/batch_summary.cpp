#include "cli/batch/batch_summary.hpp"

#include "fluewright/advice/checks/check.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utility>
#include <vector>

namespace fluewright::cli {

std::string counted(const BatchProgress& all, const BatchProgress& before, double seconds) {
    std::string text = fmt::format("{} installations: {} pass, {} fall short, {} at fault",
                                   all.records,
                                   all.pass,
                                   all.short_of_draft,
                                   all.fault);
    if (all.failed > 0) {
        text += fmt::format(", {} without an answer of the solver", all.failed);
    }
    if (before.records > 0) {
        text += fmt::format("; {} of them were done before", before.records);
    }
    if (seconds > 1.0) {
        text += fmt::format("; {:.0f} a second",
                            static_cast<double>(all.records - before.records) / seconds);
    }
    return text + '\n';
}

void BatchTally::add(const BatchRow& row) {
    if (row.outcome == Outcome::fault) {
        return;
    }
    ++computed_;
    for (std::size_t harm = 0; harm < harm_count; ++harm) {
        ++outcomes_[harm][static_cast<std::size_t>(row.harms[harm])];
    }
    for (const std::string_view id : row.findings) {
        ++found_[id];
    }
}

void BatchTally::add(const BatchTally& other) {
    computed_ += other.computed_;
    for (std::size_t harm = 0; harm < harm_count; ++harm) {
        for (std::size_t i = 0; i < harm_outcome_count; ++i) {
            outcomes_[harm][i] += other.outcomes_[harm][i];
        }
    }
    for (const auto& [id, count] : other.found_) {
        found_[id] += count;
    }
}

std::string BatchTally::text() const {
    constexpr std::size_t most_found = 10;
    if (computed_ == 0) {
        return {};
    }
    const auto share = [this](std::size_t count) {
        return 100.0 * static_cast<double>(count) / static_cast<double>(computed_);
    };
    std::string text;
    for (const Harm harm : harms) {
        text += fmt::format("  {:<10}", name(harm));
        const auto& counts = outcomes_[static_cast<std::size_t>(harm)];
        const char* before = " ";
        for (std::size_t i = 0; i < harm_outcome_count; ++i) {
            if (counts[i] > 0) {
                text += fmt::format(
                    "{}{:.1f} % {}", before, share(counts[i]), name(static_cast<HarmOutcome>(i)));
                before = ", ";
            }
        }
        text += '\n';
    }
    std::vector<std::pair<std::string_view, std::size_t>> found(found_.begin(), found_.end());
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
        return a.second > b.second;
    });
    text += found.empty() ? "" : "found most often:\n";
    for (std::size_t i = 0; i < std::min(most_found, found.size()); ++i) {
        const Matter* matter = find_matter(found[i].first);
        text += fmt::format("  {:>5.1f} %  {} ({})\n",
                            share(found[i].second),
                            matter != nullptr ? matter->title : found[i].first,
                            found[i].first);
    }
    return text;
}

} // namespace fluewright::cli
