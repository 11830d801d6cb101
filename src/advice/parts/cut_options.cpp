#include "cut_options.hpp"

#include "cut_layout.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::cutting {
namespace {

constexpr long look_steps = 5;

} // namespace

Options::Options(const CutTask& task) : task_(task) {
    for (std::size_t i = 0; i < task.lengths.size(); ++i) {
        (task.lengths[i].at_hand ? hand_ : sold_).push_back(i);
    }
    const auto longer = [&](std::size_t a, std::size_t b) {
        return task.lengths[a].length_m > task.lengths[b].length_m;
    };
    std::stable_sort(hand_.begin(), hand_.end(), longer);
    std::stable_sort(sold_.begin(), sold_.end(), longer);
    for (const CutStraight& s : task.straights) {
        least_lap_m_ = std::min(least_lap_m_, s.lap_m);
    }
    make_cover();
}

double Options::between_m(Group group) const {
    double sum_m = 0.0;
    for (std::size_t i = 0; i < task_.straights.size(); ++i) {
        sum_m += (group >> i & 1U) != 0U ? task_.straights[i].between_m : 0.0;
    }
    return sum_m;
}

/// Least cost of what covers each length, in steps rounded so that it is never too much.
void Options::make_cover() {
    double most_m = 0.0;
    for (const CutStraight& s : task_.straights) {
        most_m += s.between_m;
    }
    constexpr std::size_t most_entries = 100000;
    step_m_ = std::max(0.001, most_m / static_cast<double>(most_entries));
    cover_.assign(static_cast<std::size_t>(most_m / step_m_) + 2, 0.0);
    longest_lays_m_ = 0.0;
    for (const std::size_t i : sold_) {
        longest_lays_m_ = std::max(longest_lays_m_, lays_m(i));
    }
    for (const std::size_t i : hand_) {
        longest_lays_m_ = std::max(longest_lays_m_, lays_m(i));
    }
    for (std::size_t at = 1; at < cover_.size(); ++at) {
        double least = std::numeric_limits<double>::infinity();
        for (const std::size_t i : sold_) {
            const double lays = lays_m(i);
            if (lays <= rounding_m) {
                continue;
            }
            const auto steps = static_cast<std::size_t>(std::ceil(lays / step_m_)) + 1;
            least =
                std::min(least, task_.lengths[i].cost + (steps < at ? cover_[at - steps] : 0.0));
        }
        cover_[at] = least;
    }
}

double Options::cover_cost(double need_m) const {
    if (need_m <= rounding_m) {
        return 0.0;
    }
    const auto at = static_cast<std::size_t>(need_m / step_m_);
    return cover_[std::min(at, cover_.size() - 1)];
}

Options::Wanted Options::wanted_of(Group group) const {
    Wanted wanted;
    wanted.group = group;
    wanted.lap_m = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < task_.straights.size(); ++i) {
        if ((group >> i & 1U) != 0U) {
            wanted.straights.push_back(i);
            wanted.lap_m = std::min(wanted.lap_m, task_.straights[i].lap_m);
        }
    }
    wanted.need_m =
        between_m(group)
        + static_cast<double>(wanted.straights.size() - 1) * (wanted.lap_m + task_.cut_loss_m);
    return wanted;
}

void Options::add(Group group,
                  const Counts& left,
                  const CutCost& limit,
                  std::vector<Option>& options) {
    Wanted wanted = wanted_of(group);
    wanted.limit = limit;
    Counts taken(hand_.size(), 0);
    take_at_hand(wanted, left, wanted.need_m, 0, 0, taken, options);
}

const Option& Options::alone(std::size_t straight, const Counts& taken) {
    const Wanted wanted = wanted_of(Group{1} << straight);
    double need_m = wanted.need_m;
    for (std::size_t k = 0; k < hand_.size(); ++k) {
        need_m -= static_cast<double>(taken[k]) * (task_.lengths[hand_[k]].length_m - wanted.lap_m);
    }
    return best_with(wanted, need_m, taken);
}

void Options::take_at_hand(const Wanted& wanted,
                           const Counts& left,
                           double need_m,
                           std::size_t k,
                           int over,
                           Counts& taken,
                           std::vector<Option>& options) {
    if (is_over()) {
        return;
    }
    if (k == hand_.size()) {
        if (const Option& option = best_with(wanted, need_m, taken); !option.bars.empty()) {
            options.push_back(option);
        }
        return;
    }
    const double lays = task_.lengths[hand_[k]].length_m - wanted.lap_m;
    const std::size_t most = lays > rounding_m ? left[k] : 0;
    for (std::size_t n = 0; n <= most; ++n) {
        // One more than covers the need may make room for the shortest pieces; two lie idle.
        if (n > 0 && need_m - static_cast<double>(n - 1) * lays <= rounding_m) {
            if (over > 0) {
                break;
            }
            ++over;
        }
        taken[k] = n;
        take_at_hand(
            wanted, left, need_m - static_cast<double>(n) * lays, k + 1, over, taken, options);
    }
    taken[k] = 0;
}

/// The option of a group that takes `taken`, kept; without bars where there is none.
const Option& Options::best_with(const Wanted& wanted, double need_m, const Counts& taken) {
    steps_ += look_steps;
    const auto [found, fresh] = options_.try_emplace({wanted.group, taken});
    Option& option = found->second;
    if (!fresh && option.whole) {
        return option;
    }
    option.group = wanted.group;
    option.taken = taken;
    std::vector<std::size_t> bars;
    for (std::size_t k = 0; k < hand_.size(); ++k) {
        bars.insert(bars.end(), taken[k], hand_[k]);
    }
    buy(wanted, need_m, 0, 0.0, bars, option);
    option.whole = !is_over();
    return option;
}

void Options::buy(const Wanted& wanted,
                  double need_m,
                  std::size_t first,
                  double cost,
                  std::vector<std::size_t>& bars,
                  Option& option) {
    if ((++steps_ > budget_)) {
        return;
    }
    const int least_pieces = static_cast<int>(bars.size() + wanted.straights.size()) - 1;
    constexpr double same = 1e-6;
    const double least = cost + cover_cost(need_m);
    const bool as_much = least > wanted.limit.bought - same;
    if (least > wanted.limit.bought + same || (as_much && least_pieces > wanted.limit.pieces)) {
        return;
    }
    if (!option.bars.empty()
        && !CutCost{cost + cover_cost(need_m), least_pieces, 0}.better_than(option.cost)) {
        return;
    }
    if (need_m <= rounding_m) {
        LayoutSearch made = lay_out(task_, wanted.straights, bars);
        steps_ += made.work;
        complete_ = complete_ && made.complete;
        if (made.found) {
            const CutCost here{cost, made.found->pieces, made.found->cuts};
            if (option.bars.empty() || here.better_than(option.cost)) {
                option.cost = here;
                option.bars = std::move(made.found->bars);
            }
            return;
        }
        // The shortest pieces stand in the way: one more length may make room.
        if (need_m < -2.0 * longest_lays_m_) {
            return;
        }
    }
    for (std::size_t i = first; i < sold_.size(); ++i) {
        const BarLength& length = task_.lengths[sold_[i]];
        if (length.length_m - wanted.lap_m <= rounding_m) {
            continue;
        }
        bars.push_back(sold_[i]);
        buy(wanted, need_m - (length.length_m - wanted.lap_m), i, cost + length.cost, bars, option);
        bars.pop_back();
    }
}

} // namespace fluewright::cutting
