#include "fluewright/advice/parts/cut_list.hpp"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <limits>
#include <numeric>

namespace fluewright {
namespace {

using Set = std::uint32_t;

constexpr double rounding_m = 1e-6;
constexpr std::size_t none = static_cast<std::size_t>(-1);

struct Cost {
    double bought_m{std::numeric_limits<double>::infinity()};
    int bars{};

    [[nodiscard]] bool better_than(const Cost& other) const {
        return bought_m < other.bought_m - rounding_m
               || (bought_m < other.bought_m + rounding_m && bars < other.bars);
    }
};

double needed_m(const CutTask& task, const std::vector<std::size_t>& items) {
    double sum_m = 0.0;
    for (const std::size_t item : items) {
        sum_m += task.wanted_m[item];
    }
    return sum_m + task.cut_loss_m * static_cast<double>(items.empty() ? 0 : items.size() - 1);
}

/// Shortest length sold that holds `need_m`; none where there is no such length.
std::size_t shortest_sold(const CutTask& task, double need_m) {
    std::size_t best = none;
    for (std::size_t i = 0; i < task.lengths.size(); ++i) {
        const BarLength& length = task.lengths[i];
        if (!length.at_hand && length.length_m >= need_m - rounding_m
            && (best == none || length.length_m < task.lengths[best].length_m)) {
            best = i;
        }
    }
    return best;
}

/// Pieces at hand one by one, shortest first, so that a short need does not use up a long one.
std::vector<std::size_t> pieces_at_hand(const CutTask& task) {
    std::vector<std::size_t> list;
    for (std::size_t i = 0; i < task.lengths.size(); ++i) {
        list.insert(list.end(), task.lengths[i].at_hand.value_or(0), i);
    }
    std::stable_sort(list.begin(), list.end(), [&](std::size_t a, std::size_t b) {
        return task.lengths[a].length_m < task.lengths[b].length_m;
    });
    return list;
}

/// The exact plan of the pieces `ids`, with the given pieces at hand.
class Exact {
public:
    Exact(const CutTask& task, std::vector<std::size_t> ids, std::vector<std::size_t> hand)
        : task_(task), ids_(std::move(ids)), hand_(std::move(hand)), all_((1U << ids_.size()) - 1U),
          need_(std::size_t{all_} + 1U) {
        for (Set set = 1; set <= all_; ++set) {
            need_[set] = needed_m(task_, members(set));
        }
    }

    [[nodiscard]] std::vector<Bar> bars() {
        solve_bought();
        for (const std::size_t piece : hand_) {
            take_piece_at_hand(piece);
        }
        std::vector<Bar> list;
        Set left = all_;
        for (std::size_t layer = hand_.size(); layer-- > 0;) {
            const Set used = taken_[layer][left];
            if (used != 0U) {
                list.push_back({hand_[layer], members(used), 0.0});
                left &= ~used;
            }
        }
        while (left != 0U) {
            list.push_back({shortest_sold(task_, need_[bought_with_[left]]),
                            members(bought_with_[left]),
                            0.0});
            left &= ~bought_with_[left];
        }
        return list;
    }

private:
    [[nodiscard]] std::vector<std::size_t> members(Set set) const {
        std::vector<std::size_t> list;
        for (std::size_t i = 0; i < ids_.size(); ++i) {
            if ((set >> i & 1U) != 0U) {
                list.push_back(ids_[i]);
            }
        }
        return list;
    }

    [[nodiscard]] bool fits_count(Set set) const {
        return static_cast<std::size_t>(std::popcount(set)) <= task_.most_per_bar;
    }

    /// cost_[set]: least to buy for the set, pieces at hand left aside.
    void solve_bought() {
        cost_.assign(std::size_t{all_} + 1U, {});
        cost_[0] = {0.0, 0};
        bought_with_.assign(std::size_t{all_} + 1U, 0U);
        std::vector<double> price(std::size_t{all_} + 1U);
        for (Set set = 1; set <= all_; ++set) {
            const std::size_t bar = fits_count(set) ? shortest_sold(task_, need_[set]) : none;
            price[set] =
                bar == none ? std::numeric_limits<double>::infinity() : task_.lengths[bar].length_m;
        }
        for (Set set = 1; set <= all_; ++set) {
            const Set first = set & (~set + 1U);
            // The bar that holds the first piece of the set, over every choice of its others.
            for (Set part = set; part != 0U; part = (part - 1U) & set) {
                if ((part & first) == 0U || price[part] > 1e300) {
                    continue;
                }
                const Cost& rest = cost_[set & ~part];
                const Cost here{rest.bought_m + price[part], rest.bars + 1};
                if (here.better_than(cost_[set])) {
                    cost_[set] = here;
                    bought_with_[set] = part;
                }
            }
        }
    }

    void take_piece_at_hand(std::size_t piece) {
        const double length_m = task_.lengths[piece].length_m;
        const std::vector<Cost> before = cost_;
        std::vector<Set> taken(std::size_t{all_} + 1U, 0U);
        for (Set set = 1; set <= all_; ++set) {
            for (Set part = set; part != 0U; part = (part - 1U) & set) {
                if (need_[part] > length_m + rounding_m || !fits_count(part)) {
                    continue;
                }
                const Cost& rest = before[set & ~part];
                const Cost here{rest.bought_m, rest.bars + 1};
                if (here.better_than(cost_[set])) {
                    cost_[set] = here;
                    taken[set] = part;
                }
            }
        }
        taken_.push_back(std::move(taken));
    }

    const CutTask& task_;
    std::vector<std::size_t> ids_;
    std::vector<std::size_t> hand_;
    Set all_;
    std::vector<double> need_;
    std::vector<Cost> cost_;
    std::vector<Set> bought_with_;
    std::vector<std::vector<Set>> taken_;
};

/// Longest first, each where it leaves least; pieces at hand are open from the start.
std::vector<Bar> best_fit(const CutTask& task, std::vector<std::size_t> ids) {
    std::stable_sort(ids.begin(), ids.end(), [&](std::size_t a, std::size_t b) {
        return task.wanted_m[a] > task.wanted_m[b];
    });
    std::size_t longest = none;
    for (std::size_t i = 0; i < task.lengths.size(); ++i) {
        if (!task.lengths[i].at_hand
            && (longest == none || task.lengths[i].length_m > task.lengths[longest].length_m)) {
            longest = i;
        }
    }
    std::vector<Bar> bars;
    for (const std::size_t piece : pieces_at_hand(task)) {
        bars.push_back({piece, {}, 0.0});
    }
    for (const std::size_t id : ids) {
        Bar* best = nullptr;
        double best_left_m = std::numeric_limits<double>::infinity();
        for (Bar& bar : bars) {
            std::vector<std::size_t> with = bar.items;
            with.push_back(id);
            const double left_m = task.lengths[bar.length].length_m - needed_m(task, with);
            if (left_m >= -rounding_m && with.size() <= task.most_per_bar && left_m < best_left_m) {
                best = &bar;
                best_left_m = left_m;
            }
        }
        if (best != nullptr) {
            best->items.push_back(id);
        } else if (longest != none) {
            bars.push_back({longest, {id}, 0.0});
        }
    }
    for (Bar& bar : bars) {
        if (!task.lengths[bar.length].at_hand) {
            bar.length = shortest_sold(task, needed_m(task, bar.items));
        }
    }
    bars.erase(
        std::remove_if(bars.begin(), bars.end(), [](const Bar& b) { return b.items.empty(); }),
        bars.end());
    return bars;
}

Cost cost_of(const CutTask& task, const std::vector<Bar>& bars) {
    Cost cost{0.0, static_cast<int>(bars.size())};
    for (const Bar& bar : bars) {
        cost.bought_m += task.lengths[bar.length].at_hand ? 0.0 : task.lengths[bar.length].length_m;
    }
    return cost;
}

/// Plans two bars anew together, until no pair gets better.
void improve(const CutTask& task, std::vector<Bar>& bars) {
    for (bool again = true; again;) {
        again = false;
        for (std::size_t i = 0; i < bars.size() && !again; ++i) {
            for (std::size_t j = i + 1; j < bars.size() && !again; ++j) {
                std::vector<std::size_t> ids = bars[i].items;
                ids.insert(ids.end(), bars[j].items.begin(), bars[j].items.end());
                if (ids.size() > most_exact_pieces) {
                    continue;
                }
                std::vector<std::size_t> hand;
                for (const std::size_t k : {i, j}) {
                    if (task.lengths[bars[k].length].at_hand) {
                        hand.push_back(bars[k].length);
                    }
                }
                std::vector<Bar> anew = Exact(task, ids, hand).bars();
                if (cost_of(task, anew).better_than(cost_of(task, {bars[i], bars[j]}))) {
                    bars.erase(bars.begin() + static_cast<std::ptrdiff_t>(j));
                    bars.erase(bars.begin() + static_cast<std::ptrdiff_t>(i));
                    bars.insert(bars.end(), anew.begin(), anew.end());
                    again = true;
                }
            }
        }
    }
}

} // namespace

CutPlan plan_cuts(const CutTask& task) {
    CutPlan plan;
    std::vector<std::size_t> ids;
    for (std::size_t i = 0; i < task.wanted_m.size(); ++i) {
        // Pieces at hand may run out, so what is sold must hold every piece.
        (shortest_sold(task, task.wanted_m[i]) == none ? plan.too_long : ids).push_back(i);
    }
    if (ids.empty()) {
        return plan;
    }
    plan.exact = ids.size() <= most_exact_pieces;
    if (plan.exact) {
        plan.bars = Exact(task, ids, pieces_at_hand(task)).bars();
    } else {
        plan.bars = best_fit(task, ids);
        improve(task, plan.bars);
    }
    for (Bar& bar : plan.bars) {
        std::stable_sort(bar.items.begin(), bar.items.end(), [&](std::size_t a, std::size_t b) {
            return task.wanted_m[a] > task.wanted_m[b];
        });
        const double length_m = task.lengths[bar.length].length_m;
        bar.offcut_m = std::max(0.0, length_m - needed_m(task, bar.items));
        plan.offcut_m += bar.offcut_m;
        plan.bought_m += task.lengths[bar.length].at_hand ? 0.0 : length_m;
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
