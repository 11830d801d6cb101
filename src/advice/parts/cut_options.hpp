#pragma once

#include "fluewright/advice/parts/cut_list.hpp"

#include <cstdint>
#include <limits>
#include <map>
#include <utility>
#include <vector>

/// What a group of straights can take, and what that buys.
namespace fluewright::cutting {

using Group = std::uint32_t;             ///< straights, one bit each
using Counts = std::vector<std::size_t>; ///< of each kind at hand

/// What a group takes, and how it comes out of it.
struct Option {
    Group group{};
    Counts taken;
    CutCost cost;
    std::vector<Bar> bars; ///< empty where it cannot be
    bool whole{};          ///< the search for it was not broken off
};

/// Finds and keeps the options of every group.
class Options {
public:
    explicit Options(const CutTask& task);

    /// Every set at hand that a group can take out of `left`, with the least to buy for the rest.
    /// What buys more than `limit`, or as much in more pieces, is of no use.
    void add(Group group, const Counts& left, const CutCost& limit, std::vector<Option>& options);

    /// The option of a straight alone that takes `taken`.
    const Option& alone(std::size_t straight, const Counts& taken);

    /// Least that anything costs that lays `need_m`.
    [[nodiscard]] double cover_cost(double need_m) const;

    /// Kinds at hand, the longest first: indices into the lengths of the task.
    [[nodiscard]] const std::vector<std::size_t>& hand() const { return hand_; }

    /// How much a length lays at most.
    [[nodiscard]] double lays_m(std::size_t length) const {
        return task_.lengths[length].length_m - least_lap_m_;
    }

    [[nodiscard]] double longest_lays_m() const { return longest_lays_m_; }

    [[nodiscard]] double between_m(Group group) const;

    /// Work done so far, in about tenths of a microsecond, and the work after which to break off.
    [[nodiscard]] bool is_over() const { return steps_ > budget_; }

    void step() { ++steps_; }

    void allow(long more) { budget_ = steps_ + more; }

    /// Whether each layout was looked for to the end.
    [[nodiscard]] bool complete() const { return complete_; }

private:
    struct Wanted {
        Group group{};
        std::vector<std::size_t> straights;
        double lap_m{};
        double need_m{};
        CutCost limit{std::numeric_limits<double>::infinity(), 0, 0};
    };

    [[nodiscard]] Wanted wanted_of(Group group) const;
    void make_cover();
    void take_at_hand(const Wanted& wanted,
                      const Counts& left,
                      double need_m,
                      std::size_t k,
                      int over,
                      Counts& taken,
                      std::vector<Option>& options);
    const Option& best_with(const Wanted& wanted, double need_m, const Counts& taken);
    void buy(const Wanted& wanted,
             double need_m,
             std::size_t first,
             double cost,
             std::vector<std::size_t>& bars,
             Option& option);

    const CutTask& task_;
    std::vector<std::size_t> hand_;
    std::vector<std::size_t> sold_;
    double least_lap_m_{std::numeric_limits<double>::infinity()};
    double longest_lays_m_{};
    double step_m_{};
    std::vector<double> cover_;
    std::map<std::pair<Group, Counts>, Option> options_;
    bool complete_{true};
    long steps_{};
    long budget_{};
};

} // namespace fluewright::cutting
