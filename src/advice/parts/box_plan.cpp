#include "box_plan.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <optional>
#include <utility>

namespace fluewright::parts {
namespace {

constexpr double box_rounding_m = 1e-6;
constexpr double whole_met_m = 0.002; ///< as for pieces that are bought whole
constexpr double cut_met_m = 1e-5;
constexpr long most_box_looks = 300000;

/// What plans are weighed by, the first figure first.
struct BoxCost {
    double off_m{};
    int off{}; ///< straights that are off
    int pieces{};
    int cuts{};

    [[nodiscard]] bool better_than(const BoxCost& other) const {
        constexpr double same_m = 1e-5;
        if (std::abs(off_m - other.off_m) > same_m) {
            return off_m < other.off_m;
        }
        if (off != other.off) {
            return off < other.off;
        }
        return pieces != other.pieces ? pieces < other.pieces : cuts < other.cuts;
    }

    void add(const BoxCost& more) {
        off_m += more.off_m;
        off += more.off;
        pieces += more.pieces;
        cuts += more.cuts;
    }
};

/// A length at hand, or what is left of one.
struct BoxItem {
    std::size_t length{};
    double rest_m{};
    std::vector<CutPiece> pieces; ///< cut off it so far
    bool spent{};
};

/// A piece of a filling: which item, and how long.
struct BoxLaid {
    std::size_t item{};
    double length_m{};
};

struct BoxFilling {
    std::vector<BoxLaid> laid;
    double off_m{};
    BoxCost cost;
};

class BoxSearch {
public:
    explicit BoxSearch(const BoxTask& task)
        : task_(task), met_m_(task.cuts ? cut_met_m : whole_met_m),
          fillings_(task.straights.size()) {
        for (std::size_t i = 0; i < task.lengths.size(); ++i) {
            const BarLength& length = task.lengths[i];
            for (std::size_t n = 0; length.at_hand && n < *length.at_hand; ++n) {
                items_.push_back({.length = i, .rest_m = length.length_m, .pieces = {}});
            }
        }
        std::stable_sort(items_.begin(), items_.end(), [](const BoxItem& a, const BoxItem& b) {
            return a.rest_m > b.rest_m;
        });
    }

    [[nodiscard]] BoxPlan plan() {
        const Open all = (Open{1} << task_.straights.size()) - 1U;
        const double bound_m = least_off_m(all);
        visit(all, {});
        BoxPlan result;
        // What no plan can go below is the nearest however far the search went.
        result.exact = looks_ < most_box_looks || best_cost_.off_m <= bound_m + cut_met_m;
        for (std::size_t i = 0; i < best_off_m_.size(); ++i) {
            result.off_m.push_back(best_off_m_[i]);
            if (best_off_m_[i] <= box_rounding_m - task_.straights[i].between_m) {
                result.plan.unfilled.push_back(i);
            }
        }
        for (const BoxItem& item : best_items_) {
            if (!item.pieces.empty()) {
                const bool sawn = task_.cuts && !task_.lengths[item.length].telescopes();
                const double offcut_m = sawn ? item.rest_m : 0.0;
                result.plan.bars.push_back({item.length, item.pieces, offcut_m});
                result.plan.offcut_m += offcut_m;
            }
        }
        result.plan.exact = result.exact;
        return result;
    }

private:
    using Open = std::uint32_t; ///< straights still to be laid, one bit each

    /// The least that the straights of `open` can be off, whatever is done with what is left.
    [[nodiscard]] double least_off_m(Open open) const {
        double need_m = 0.0;
        double lap_m = 1e9;
        for (std::size_t i = 0; i < task_.straights.size(); ++i) {
            if ((open >> i & 1U) != 0U) {
                need_m += task_.straights[i].between_m;
                lap_m = std::min(lap_m, task_.straights[i].lap_m);
            }
        }
        for (const BoxItem& item : items_) {
            need_m -= item.spent ? 0.0 : std::max(0.0, item.rest_m - lap_m);
        }
        return std::max(0.0, need_m - met_m_ * static_cast<double>(task_.straights.size()));
    }

    void visit(Open open, const BoxCost& so_far) {
        if (open == 0U) {
            if (!found_ || so_far.better_than(best_cost_)) {
                found_ = true;
                best_cost_ = so_far;
                best_items_ = items_;
                best_off_m_.clear();
                for (const BoxFilling& filling : fillings_) {
                    best_off_m_.push_back(filling.off_m);
                }
            }
            return;
        }
        if (found_) {
            BoxCost bound = so_far;
            bound.off_m += least_off_m(open);
            if (looks_ >= most_box_looks || !bound.better_than(best_cost_)
                || seen_before(open, so_far)) {
                return;
            }
        }
        for (std::size_t i = 0; i < task_.straights.size(); ++i) {
            if ((open >> i & 1U) == 0U) {
                continue;
            }
            std::vector<BoxFilling> all = fillings_of(i);
            std::stable_sort(all.begin(), all.end(), [](const BoxFilling& a, const BoxFilling& b) {
                return a.cost.better_than(b.cost);
            });
            for (const BoxFilling& filling : all) {
                const std::vector<BoxItem> before = items_;
                lay(i, filling);
                fillings_[i] = filling;
                BoxCost cost = so_far;
                cost.add(filling.cost);
                visit(open & ~(Open{1} << i), cost);
                items_ = before;
                if (found_ && looks_ >= most_box_looks) {
                    return;
                }
            }
        }
    }

    /// Whether the same is left for the same straights, as cheaply, as was seen before.
    [[nodiscard]] bool seen_before(Open open, const BoxCost& so_far) {
        std::vector<long> rests;
        for (const BoxItem& item : items_) {
            if (!item.spent) {
                rests.push_back(std::lround(item.rest_m * 1e5) * 2
                                + (task_.lengths[item.length].telescopes() ? 1 : 0));
            }
        }
        std::sort(rests.begin(), rests.end());
        const auto [seen, fresh] = seen_.try_emplace({open, std::move(rests)}, so_far);
        if (fresh) {
            return false;
        }
        if (!so_far.better_than(seen->second)) {
            return true;
        }
        seen->second = so_far;
        return false;
    }

    [[nodiscard]] std::vector<BoxFilling> fillings_of(std::size_t straight) {
        std::vector<BoxFilling> all;
        std::vector<BoxLaid> laid;
        fill(straight, 0, task_.straights[straight].between_m, laid, all);
        return all;
    }

    [[nodiscard]] double lays_m(std::size_t item, std::size_t straight) const {
        return items_[item].rest_m - task_.straights[straight].lap_m;
    }

    [[nodiscard]] bool telescopes(std::size_t item) const {
        return task_.lengths[items_[item].length].telescopes();
    }

    [[nodiscard]] bool usable(std::size_t item, std::size_t straight) const {
        return !items_[item].spent && lays_m(item, straight) > box_rounding_m;
    }

    /// Whole pieces from `first` on; with every set of them, what ends it.
    void fill(std::size_t straight,
              std::size_t first,
              double open_m,
              std::vector<BoxLaid>& laid,
              std::vector<BoxFilling>& all) {
        ++looks_;
        finish(straight, open_m, laid, all);
        if ((found_ && looks_ >= most_box_looks) || (!task_.pieced && !laid.empty())) {
            return;
        }
        double tried_m = -1.0;
        for (std::size_t k = first; k < items_.size(); ++k) {
            const double lays = lays_m(k, straight);
            const bool stub = task_.cuts && lays < task_.stub_m - box_rounding_m
                              && (!laid.empty() || lays < open_m - box_rounding_m);
            // Of equal ones the first does, and what exceeds ends a straight: finish() lays it.
            if (stub || !usable(k, straight) || telescopes(k) || lays > open_m + box_rounding_m
                || std::abs(items_[k].rest_m - tried_m) < box_rounding_m) {
                continue;
            }
            tried_m = items_[k].rest_m;
            laid.push_back({k, items_[k].rest_m});
            fill(straight, k + 1, open_m - lays, laid, all);
            laid.pop_back();
        }
    }

    void finish(std::size_t straight,
                double open_m,
                std::vector<BoxLaid>& laid,
                std::vector<BoxFilling>& all) {
        offer(straight, -open_m, laid, 0, all);
        if (open_m <= met_m_ || (!task_.pieced && !laid.empty())) {
            return;
        }
        double tried_m = -1.0;
        for (std::size_t k = 0; k < items_.size(); ++k) {
            const bool taken = std::any_of(
                laid.begin(), laid.end(), [k](const BoxLaid& piece) { return piece.item == k; });
            if (taken || !usable(k, straight)) {
                continue;
            }
            const double lap_m = task_.straights[straight].lap_m;
            const double lays = lays_m(k, straight);
            if (telescopes(k)) {
                const double least_m = task_.lengths[items_[k].length].shortest_m - lap_m;
                if (least_m <= open_m + box_rounding_m) {
                    const double set_m = std::min(open_m, lays);
                    laid.push_back({k, set_m + lap_m});
                    offer(straight, set_m - open_m, laid, 0, all);
                    laid.pop_back();
                }
                continue;
            }
            if (lays <= open_m + box_rounding_m
                || std::abs(items_[k].rest_m - tried_m) < box_rounding_m) {
                continue;
            }
            tried_m = items_[k].rest_m;
            end_with(straight, k, open_m, laid, all);
        }
    }

    /// A piece that is longer than what is open: cut, or laid as it is where it may not be cut.
    void end_with(std::size_t straight,
                  std::size_t item,
                  double open_m,
                  std::vector<BoxLaid>& laid,
                  std::vector<BoxFilling>& all) {
        const double lap_m = task_.straights[straight].lap_m;
        if (!task_.cuts) {
            laid.push_back({item, items_[item].rest_m});
            offer(straight, lays_m(item, straight) - open_m, laid, 0, all);
            laid.pop_back();
        } else if (laid.empty() || open_m >= task_.stub_m - box_rounding_m) {
            laid.push_back({item, open_m + lap_m});
            offer(straight, 0.0, laid, 1, all);
            laid.pop_back();
        } else if (lays_m(item, straight) >= task_.stub_m) {
            // The longest of the others gives way, so that no stub is laid.
            const auto longest =
                std::max_element(laid.begin(), laid.end(), [](const BoxLaid& a, const BoxLaid& b) {
                    return a.length_m < b.length_m;
                });
            const auto at = static_cast<std::size_t>(longest - laid.begin());
            const double shorter_m = task_.stub_m - open_m;
            if (longest->length_m - lap_m - shorter_m < task_.stub_m) {
                return;
            }
            laid[at].length_m -= shorter_m;
            laid.push_back({item, task_.stub_m + lap_m});
            offer(straight, 0.0, laid, 2, all);
            laid.pop_back();
            laid[at].length_m += shorter_m;
        }
    }

    void offer(std::size_t straight,
               double off_m,
               const std::vector<BoxLaid>& laid,
               int cuts,
               std::vector<BoxFilling>& all) const {
        const BoxStraight& s = task_.straights[straight];
        const double counted_m = off_m < 0.0 ? -off_m : std::max(0.0, off_m - s.may_exceed_m);
        const bool met = counted_m <= met_m_;
        all.push_back({laid,
                       off_m,
                       {.off_m = met ? 0.0 : counted_m,
                        .off = met ? 0 : 1,
                        .pieces = static_cast<int>(laid.size()),
                        .cuts = cuts}});
    }

    /// Takes the pieces out of the box; what is left of one that is cut stays in it.
    void lay(std::size_t straight, const BoxFilling& filling) {
        for (const BoxLaid& piece : filling.laid) {
            BoxItem& item = items_[piece.item];
            item.pieces.push_back({straight, piece.length_m});
            item.rest_m -= piece.length_m + task_.cut_loss_m;
            item.rest_m = std::max(0.0, item.rest_m);
            item.spent = !task_.cuts || !task_.shares || item.rest_m <= box_rounding_m
                         || task_.lengths[item.length].telescopes();
        }
    }

    const BoxTask& task_;
    double met_m_; ///< what is off by no more is met
    std::vector<BoxItem> items_;
    std::vector<BoxFilling> fillings_; ///< of each straight
    bool found_{};
    BoxCost best_cost_;
    std::vector<BoxItem> best_items_;
    std::vector<double> best_off_m_;
    std::map<std::pair<Open, std::vector<long>>, BoxCost> seen_;
    long looks_{};
};

} // namespace

BoxPlan plan_from_box(const BoxTask& task) {
    constexpr std::size_t most_straights = 24; // bits of a word tell them apart
    if (task.straights.empty()) {
        return {};
    }
    if (task.straights.size() <= most_straights) {
        return BoxSearch(task).plan();
    }
    BoxTask some = task;
    some.straights.resize(most_straights);
    BoxPlan plan = BoxSearch(some).plan();
    for (std::size_t i = most_straights; i < task.straights.size(); ++i) {
        plan.off_m.push_back(-task.straights[i].between_m);
        plan.plan.unfilled.push_back(i);
    }
    plan.exact = plan.plan.exact = false;
    return plan;
}

} // namespace fluewright::parts
