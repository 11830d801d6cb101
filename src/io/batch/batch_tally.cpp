#include "fluewright/io/batch/batch_tally.hpp"

#include "fluewright/advice/checks/check.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace fluewright {

void BatchTally::add(const BatchRow& row) {
    ++records_;
    if (row.outcome != Outcome::pass) {
        ++failing_count_;
        if (keeps_ == TallyKeeps::rows && failing_.size() < most_failing) {
            failing_.push_back(row);
        }
    }
    if (row.outcome == Outcome::fault) {
        return;
    }
    if (keeps_ == TallyKeeps::rows && std::isfinite(row.margin_pa)) {
        margins_pa_.push_back(row.margin_pa);
    }
    if (keeps_ == TallyKeeps::rows && std::isfinite(row.opening_share)) {
        opening_shares_.push_back(row.opening_share);
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
    records_ += other.records_;
    failing_count_ += other.failing_count_;
    margins_pa_.insert(margins_pa_.end(), other.margins_pa_.begin(), other.margins_pa_.end());
    opening_shares_.insert(
        opening_shares_.end(), other.opening_shares_.begin(), other.opening_shares_.end());
    const auto room = static_cast<std::ptrdiff_t>(
        std::min(other.failing_.size(), most_failing - failing_.size()));
    failing_.insert(failing_.end(), other.failing_.begin(), other.failing_.begin() + room);
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

std::vector<std::pair<std::string_view, std::size_t>> BatchTally::found() const {
    std::vector<std::pair<std::string_view, std::size_t>> found(found_.begin(), found_.end());
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
        return a.second > b.second;
    });
    return found;
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
    const auto found = this->found();
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

} // namespace fluewright
