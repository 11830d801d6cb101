#include "fluewright/advice/parts/cut_list.hpp"

#include "cut_layout.hpp"
#include "cut_options.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <numeric>
#include <utility>

namespace fluewright {

bool CutCost::better_than(const CutCost& other) const {
    constexpr double same = 1e-6;
    if (std::abs(bought - other.bought) > same) {
        return bought < other.bought;
    }
    return pieces != other.pieces ? pieces < other.pieces : cuts < other.cuts;
}

namespace {

using cutting::Counts;
using cutting::Group;
using cutting::Option;
using cutting::rounding_m;

constexpr int infinite_pieces = 1 << 24;
/// Work after which the search is broken off, in about tenths of a microsecond.
constexpr long most_cut_steps = 2000000;
/// Up to so many straights any of them may share lengths; beyond, so many at a time.
constexpr std::size_t any_group = 6;
constexpr int most_in_group = 3;

class CutSearch {
public:
    explicit CutSearch(const CutTask& task) : task_(task), options_(task) {
        for (const std::size_t i : options_.hand()) {
            left_.push_back(*task.lengths[i].at_hand);
        }
    }

    [[nodiscard]] CutPlan plan() {
        const std::size_t count = task_.straights.size();
        CutPlan result;
        Group all = 0U;
        for (std::size_t i = 0; i < count; ++i) {
            // Pieces at hand may run out, so what is sold must fill every straight.
            if (can_fill(i)) {
                all |= Group{1} << i;
            } else {
                result.unfilled.push_back(i);
            }
        }
        search(all, count);
        // What no plan can go below is the least however far the search went.
        result.exact = best_
                       && ((!options_.is_over() && all_groups_ && options_.complete())
                           || best_cost_.bought <= at_least(all).bought + 1e-6);
        if (!best_) {
            if (all != 0U) {
                for (std::size_t i = 0; i < count; ++i) {
                    if ((all >> i & 1U) != 0U) {
                        result.unfilled.push_back(i);
                    }
                }
            }
            return result;
        }
        result.cost = best_cost_;
        for (const Option& option : *best_) {
            result.bars.insert(result.bars.end(), option.bars.begin(), option.bars.end());
        }
        return result;
    }

private:
    /// Something first, then better and better: straights alone, in pairs, in any group.
    void search(Group all, std::size_t count) {
        all_ = all;
        one_by_one(all);
        for (const int most : {1, 2, count <= any_group ? 32 : most_in_group}) {
            most_grouped_ = most;
            options_.allow(most_cut_steps / (most < 3 ? 4 : 1));
            all_groups_ = true;
            seen_.clear();
            visit(all, {});
            if (static_cast<std::size_t>(most) >= count) {
                return;
            }
        }
    }

    /// A plan of straights alone: each takes pieces of one kind at hand and buys the rest.
    void one_by_one(Group all) {
        options_.allow(most_cut_steps);
        CutCost cost;
        for (std::size_t i = 0; i < task_.straights.size(); ++i) {
            if ((all >> i & 1U) == 0U) {
                continue;
            }
            const CutStraight& s = task_.straights[i];
            const std::vector<std::size_t>& hand = options_.hand();
            Counts taken(hand.size(), 0);
            const Option* best = nullptr;
            const auto look = [&] {
                const Option& option = options_.alone(i, taken);
                if (!option.bars.empty()
                    && (best == nullptr || option.cost.better_than(best->cost))) {
                    best = &option;
                }
            };
            look();
            for (std::size_t k = 0; k < hand.size(); ++k) {
                const double lays = task_.lengths[hand[k]].length_m - s.lap_m;
                for (std::size_t n = 1; lays > rounding_m && n <= left_[k]; ++n) {
                    taken[k] = n;
                    look();
                    if (s.between_m <= static_cast<double>(n) * lays) {
                        break;
                    }
                }
                taken[k] = 0;
            }
            if (best == nullptr) {
                break;
            }
            take(*best, cost);
        }
        if (chosen_.size() == static_cast<std::size_t>(count_of(all)) && all != 0U) {
            best_ = chosen_;
            best_cost_ = cost;
        }
        while (!chosen_.empty()) {
            give_back();
        }
    }

    void take(const Option& option, CutCost& cost) {
        for (std::size_t k = 0; k < left_.size(); ++k) {
            left_[k] -= option.taken[k];
        }
        cost = sum(cost, option.cost);
        chosen_.push_back(option);
    }

    void give_back() {
        for (std::size_t k = 0; k < left_.size(); ++k) {
            left_[k] += chosen_.back().taken[k];
        }
        chosen_.pop_back();
    }

    static int count_of(Group group) {
        int count = 0;
        for (; group != 0U; group &= group - 1U) {
            ++count;
        }
        return count;
    }

    [[nodiscard]] bool can_fill(std::size_t i) const {
        return std::any_of(task_.lengths.begin(), task_.lengths.end(), [&](const BarLength& b) {
            return b.length_m > task_.straights[i].lap_m + rounding_m;
        });
    }

    /// What the straights of `rest` cost at least with all that is left at hand.
    [[nodiscard]] CutCost at_least(Group rest) const {
        double need_m = options_.between_m(rest);
        for (std::size_t k = 0; k < left_.size(); ++k) {
            need_m -=
                static_cast<double>(left_[k]) * std::max(0.0, options_.lays_m(options_.hand()[k]));
        }
        CutCost cost{options_.cover_cost(need_m), 0, 0};
        for (std::size_t i = 0; i < task_.straights.size(); ++i) {
            if ((rest >> i & 1U) != 0U) {
                cost.pieces +=
                    std::max(1,
                             static_cast<int>(std::ceil(
                                 task_.straights[i].between_m / options_.longest_lays_m() - 1e-6)));
            }
        }
        return cost;
    }

    /// Most that a group may buy in a plan as good as the best so far: it only shrinks, so that
    /// what was found under a wider one stays right.
    [[nodiscard]] CutCost limit_of(Group group) const {
        if (!best_) {
            return {std::numeric_limits<double>::infinity(), 0, 0};
        }
        double need_m = options_.between_m(all_ & ~group);
        for (const std::size_t i : options_.hand()) {
            need_m -=
                static_cast<double>(*task_.lengths[i].at_hand) * std::max(0.0, options_.lays_m(i));
        }
        return {best_cost_.bought - options_.cover_cost(need_m),
                best_cost_.pieces - at_least(all_ & ~group).pieces,
                0};
    }

    static CutCost sum(const CutCost& a, const CutCost& b) {
        return {a.bought + b.bought, a.pieces + b.pieces, a.cuts + b.cuts};
    }

    void visit(Group rest, const CutCost& so_far) {
        options_.step();
        if (options_.is_over()) {
            return;
        }
        if (rest == 0U) {
            if (!best_ || so_far.better_than(best_cost_)) {
                best_ = chosen_;
                best_cost_ = so_far;
            }
            return;
        }
        if (best_ && !sum(so_far, at_least(rest)).better_than(best_cost_)) {
            return;
        }
        CutCost& seen =
            seen_.try_emplace({rest, left_}, CutCost{1e300, infinite_pieces, 0}).first->second;
        if (!so_far.better_than(seen)) {
            return;
        }
        seen = so_far;
        std::vector<Option> options;
        const Group first = rest & (~rest + 1U);
        for (Group group = rest; group != 0U; group = (group - 1U) & rest) {
            if ((group & first) == 0U || (!task_.shares && group != first)) {
                continue;
            }
            if (count_of(group) > most_grouped_) {
                all_groups_ = false;
                continue;
            }
            options_.add(group, left_, limit_of(group), options);
        }
        std::stable_sort(options.begin(), options.end(), [&](const Option& a, const Option& b) {
            const CutCost one = per_straight(a);
            const CutCost other = per_straight(b);
            return one.better_than(other);
        });
        for (const Option& option : options) {
            if (options_.is_over()) {
                return;
            }
            CutCost cost = so_far;
            take(option, cost);
            visit(rest & ~option.group, cost);
            give_back();
        }
    }

    /// The order in which options are tried: what is bought for each length laid.
    [[nodiscard]] CutCost per_straight(const Option& option) const {
        CutCost cost = option.cost;
        cost.bought /= options_.between_m(option.group);
        return cost;
    }

    const CutTask& task_;
    cutting::Options options_;
    Counts left_; ///< of each kind at hand
    Group all_{};
    int most_grouped_{};
    bool all_groups_{true}; ///< none was left out for its size
    std::map<std::pair<Group, Counts>, CutCost> seen_;
    std::vector<Option> chosen_;
    std::optional<std::vector<Option>> best_;
    CutCost best_cost_;
};

} // namespace

CutPlan plan_cuts(const CutTask& task) {
    CutPlan plan;
    if (task.straights.empty()) {
        return plan;
    }
    plan = CutSearch(task).plan();
    for (const Bar& bar : plan.bars) {
        const BarLength& length = task.lengths[bar.length];
        plan.offcut_m += bar.offcut_m;
        plan.bought_m += length.at_hand ? 0.0 : length.length_m;
    }
    std::stable_sort(plan.bars.begin(), plan.bars.end(), [&](const Bar& a, const Bar& b) {
        const bool hand_a = task.lengths[a.length].at_hand.has_value();
        const bool hand_b = task.lengths[b.length].at_hand.has_value();
        return hand_a != hand_b ? hand_a
                                : task.lengths[a.length].length_m > task.lengths[b.length].length_m;
    });
    return plan;
}

} // namespace fluewright
