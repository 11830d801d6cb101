#pragma once

#include "fluewright/io/batch/batch_row.hpp"

#include <array>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Many installations in few figures.
namespace fluewright {

/// What a tally keeps beside its counts: for a page the margins and the first rows that fail.
enum class TallyKeeps : bool { counts, rows };

/// Shares that pass by kind of harm, and what is found how often.
class BatchTally {
public:
    /// So many rows that fail are kept; the others are counted.
    static constexpr std::size_t most_failing = 200;

    explicit BatchTally(TallyKeeps keeps = TallyKeeps::counts) : keeps_(keeps) {}

    void add(const BatchRow& row);
    /// What comes behind this one.
    void add(const BatchTally& other);

    /// Lines with their end; what is found by how many, the most first.
    [[nodiscard]] std::string text() const;

    [[nodiscard]] std::size_t records() const { return records_; }

    /// Without those at fault.
    [[nodiscard]] std::size_t computed() const { return computed_; }

    [[nodiscard]] std::size_t count(Harm harm, HarmOutcome outcome) const {
        return outcomes_[static_cast<std::size_t>(harm)][static_cast<std::size_t>(outcome)];
    }

    /// By how many each matter is found, the most first.
    [[nodiscard]] std::vector<std::pair<std::string_view, std::size_t>> found() const;

    /// Least margin of draft of each [Pa].
    [[nodiscard]] const std::vector<double>& margins_pa() const { return margins_pa_; }

    /// Least share the door may be opened of each.
    [[nodiscard]] const std::vector<double>& opening_shares() const { return opening_shares_; }

    /// Those that fall short, are at fault or failed, in their order.
    [[nodiscard]] const std::vector<BatchRow>& failing() const { return failing_; }

    [[nodiscard]] std::size_t failing_count() const { return failing_count_; }

private:
    TallyKeeps keeps_;
    std::size_t records_{};
    std::size_t computed_{};
    std::size_t failing_count_{};
    std::array<std::array<std::size_t, harm_outcome_count>, harm_count> outcomes_{};
    std::map<std::string_view, std::size_t> found_; ///< by id of the matter
    std::vector<double> margins_pa_;
    std::vector<double> opening_shares_;
    std::vector<BatchRow> failing_;
};

} // namespace fluewright
