#include "whole_pieces.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <utility>

namespace fluewright::parts {
namespace {

/// Lengths are counted in tenths of a millimetre, which holds inches and millimetres exactly.
constexpr double tick_m = 1e-4;
constexpr long meets_ticks = 20;
constexpr long most_looks = 400000;

long ticks(double length_m) {
    return std::lround(length_m / tick_m);
}

/// What pieces are weighed by, the first figure first.
struct WholeCost {
    long off{};  ///< ticks beyond what is as good as met
    int stiff{}; ///< straights without the piece that slides which they want
    double bought{};
    int slides{}; ///< telescoping pieces bought
    int pieces{};

    [[nodiscard]] bool better_than(const WholeCost& other) const {
        if (off != other.off) {
            return off < other.off;
        }
        if (stiff != other.stiff) {
            return stiff < other.stiff;
        }
        if (std::abs(bought - other.bought) > 1e-6) {
            return bought < other.bought;
        }
        return slides != other.slides ? slides < other.slides : pieces < other.pieces;
    }

    void add(const WholeCost& other) {
        off += other.off;
        stiff += other.stiff;
        bought += other.bought;
        slides += other.slides;
        pieces += other.pieces;
    }
};

/// Least to buy for every sum of the fixed lengths sold, and the last piece of each.
class SoldSums {
public:
    SoldSums(const std::vector<BarLength>& lengths, long most) : lengths_(lengths) {
        long longest = 0;
        for (std::size_t i = 0; i < lengths.size(); ++i) {
            if (!lengths[i].at_hand && !lengths[i].telescopes() && ticks(lengths[i].length_m) > 0) {
                fixed_.push_back(i);
                longest = std::max(longest, ticks(lengths[i].length_m));
            }
        }
        const auto size = static_cast<std::size_t>(most + std::max(longest, meets_ticks) + 1);
        cost_.assign(size, std::numeric_limits<double>::infinity());
        count_.assign(size, 0);
        last_.assign(size, 0);
        cost_[0] = 0.0;
        for (std::size_t sum = 1; sum < size; ++sum) {
            for (const std::size_t i : fixed_) {
                const auto length = static_cast<std::size_t>(ticks(lengths[i].length_m));
                if (length <= sum && cost_[sum - length] < 1e300) {
                    const double cost = cost_[sum - length] + lengths[i].cost;
                    const int count = count_[sum - length] + 1;
                    const bool same = std::abs(cost - cost_[sum]) < 1e-9;
                    if ((!same && cost < cost_[sum]) || (same && count < count_[sum])) {
                        cost_[sum] = cost;
                        count_[sum] = count;
                        last_[sum] = i;
                    }
                }
            }
        }
    }

    [[nodiscard]] bool reached(long sum) const {
        return sum >= 0 && sum < size() && cost_[static_cast<std::size_t>(sum)] < 1e300;
    }

    [[nodiscard]] long size() const { return static_cast<long>(cost_.size()); }

    [[nodiscard]] double cost(long sum) const { return cost_[static_cast<std::size_t>(sum)]; }

    [[nodiscard]] int count(long sum) const { return count_[static_cast<std::size_t>(sum)]; }

    [[nodiscard]] std::vector<WholePiece> pieces(long sum) const {
        std::vector<WholePiece> pieces;
        while (sum > 0) {
            const std::size_t i = last_[static_cast<std::size_t>(sum)];
            pieces.push_back({i, lengths_[i].length_m});
            sum -= ticks(lengths_[i].length_m);
        }
        return pieces;
    }

private:
    const std::vector<BarLength>& lengths_;
    std::vector<std::size_t> fixed_;
    std::vector<double> cost_;
    std::vector<int> count_;
    std::vector<std::size_t> last_;
};

constexpr std::size_t no_slide = static_cast<std::size_t>(-1);

/// How the rest of a straight is bought.
struct Rest {
    WholeCost cost;
    long sum{};                  ///< of fixed pieces sold
    std::size_t slide{no_slide}; ///< telescoping piece
    int slides{};                ///< how many of it
    long set{};                  ///< the length of all of them
    long off{};
};

using Counts = std::vector<std::size_t>;

class WholeSearch {
public:
    WholeSearch(const std::vector<WholeStraight>& straights, const std::vector<BarLength>& lengths)
        : straights_(straights), lengths_(lengths), sums_(lengths, longest(straights)) {
        for (std::size_t i = 0; i < lengths.size(); ++i) {
            if (lengths[i].at_hand && ticks(lengths[i].length_m) > 0) {
                hand_.push_back(i);
                left_.push_back(*lengths[i].at_hand);
            }
        }
    }

    [[nodiscard]] WholePlan plan() {
        visit(0, {});
        WholePlan result;
        result.exact = looks_ <= most_looks;
        for (const WholeFill& fill : best_) {
            for (const WholePiece& piece : fill.pieces) {
                const BarLength& length = lengths_[piece.length];
                result.bought_m += length.at_hand ? 0.0 : length.length_m;
            }
        }
        result.fills = std::move(best_);
        return result;
    }

private:
    struct Choice {
        Counts taken;
        Rest rest;
    };

    static long longest(const std::vector<WholeStraight>& straights) {
        double most_m = 0.0;
        for (const WholeStraight& s : straights) {
            most_m = std::max(most_m, s.between_m + s.may_exceed_m);
        }
        return ticks(most_m);
    }

    /// The rest of a straight once pieces at hand lie in it; `held`: telescoping piece at hand.
    [[nodiscard]] std::optional<Rest>
    rest_of(const WholeStraight& straight, long left, std::size_t held) const {
        std::optional<Rest> best;
        const auto offer = [&](const Rest& rest) {
            if (!best || rest.cost.better_than(best->cost)) {
                best = rest;
            }
        };
        const long exceed = ticks(straight.may_exceed_m);
        const int stiff = straight.slides ? 1 : 0;
        if (held != no_slide) {
            slide(held, 1, left, offer);
            return best;
        }
        bool met = false;
        for (long sum = std::max(0L, left - meets_ticks); sum <= left + meets_ticks; ++sum) {
            if (sums_.reached(sum)) {
                offer({.cost = fixed(0, stiff, sum), .sum = sum, .off = sum - left});
                met = true;
            }
        }
        long above = -1;
        for (long sum = std::max(0L, left); sum < sums_.size(); ++sum) {
            if (!sums_.reached(sum)) {
                continue;
            }
            const long off = sum - left;
            above = above < 0 ? sum : above;
            if (off > exceed + 1) {
                break;
            }
            offer({.cost = fixed(0, stiff, sum), .sum = sum, .off = off});
            met = true;
        }
        const auto wants = [&](int count) {
            return count == 1 ? !met || straight.slides : !best || best->cost.stiff > 0;
        };
        for (int count = 1; count <= 2 && wants(count); ++count) {
            for (std::size_t i = 0; i < lengths_.size(); ++i) {
                if (!lengths_[i].at_hand && lengths_[i].telescopes()) {
                    slide(i, count, left, offer);
                }
            }
        }
        if (!best && above >= 0) {
            const long off = above - left;
            offer({.cost = fixed(std::max(0L, off - exceed), stiff, above),
                   .sum = above,
                   .off = off});
        }
        return best;
    }

    /// Of fixed pieces sold.
    [[nodiscard]] WholeCost fixed(long off, int stiff, long sum) const {
        return {.off = off,
                .stiff = stiff,
                .bought = sums_.cost(sum),
                .slides = 0,
                .pieces = sums_.count(sum)};
    }

    /// `count` of a telescoping piece and fixed ones.
    template <class Offer>
    void slide(std::size_t length, int count, long left, const Offer& offer) const {
        const BarLength& piece = lengths_[length];
        const long most = left - count * ticks(piece.shortest_m);
        const bool bought = !piece.at_hand;
        for (long sum = std::max(0L, left - count * ticks(piece.length_m)); sum <= most; ++sum) {
            if (sums_.reached(sum)) {
                WholeCost cost = fixed(0, 0, sum);
                cost.bought += bought ? count * piece.cost : 0.0;
                cost.slides = bought ? count : 0;
                cost.pieces += count;
                offer({.cost = cost,
                       .sum = sum,
                       .slide = length,
                       .slides = count,
                       .set = left - sum});
            }
        }
    }

    void visit(std::size_t at, const WholeCost& so_far) {
        if (at == straights_.size()) {
            if (!found_ || so_far.better_than(best_cost_)) {
                found_ = true;
                best_cost_ = so_far;
                best_ = fills_;
            }
            return;
        }
        if (found_ && !so_far.better_than(best_cost_)) {
            return;
        }
        const auto [seen, fresh] = seen_.try_emplace({at, left_}, so_far);
        if (!fresh) {
            if (!so_far.better_than(seen->second)) {
                return;
            }
            seen->second = so_far;
        }
        std::vector<Choice> choices;
        Counts taken(hand_.size(), 0);
        take_at_hand(at, ticks(straights_[at].between_m), 0, no_slide, taken, choices);
        std::stable_sort(choices.begin(), choices.end(), [](const Choice& a, const Choice& b) {
            return a.rest.cost.better_than(b.rest.cost);
        });
        if (choices.empty()) {
            fills_.push_back({{}, -straights_[at].between_m});
            WholeCost cost = so_far;
            cost.add({.off = ticks(straights_[at].between_m)});
            visit(at + 1, cost);
            fills_.pop_back();
            return;
        }
        for (const Choice& choice : choices) {
            for (std::size_t k = 0; k < left_.size(); ++k) {
                left_[k] -= choice.taken[k];
            }
            fills_.push_back(fill_of(choice));
            WholeCost cost = so_far;
            cost.add(choice.rest.cost);
            visit(at + 1, cost);
            fills_.pop_back();
            for (std::size_t k = 0; k < left_.size(); ++k) {
                left_[k] += choice.taken[k];
            }
        }
    }

    void take_at_hand(std::size_t at,
                      long left,
                      std::size_t k,
                      std::size_t held,
                      Counts& taken,
                      std::vector<Choice>& choices) {
        if (looks_ > most_looks && !choices.empty()) {
            return;
        }
        if (k == hand_.size()) {
            ++looks_;
            if (auto rest = rest_of(straights_[at], left, held)) {
                int pieces = 0;
                for (const std::size_t n : taken) {
                    pieces += static_cast<int>(n);
                }
                rest->cost.pieces += pieces - (held != no_slide ? 1 : 0);
                choices.push_back({taken, *rest});
            }
            return;
        }
        const BarLength& length = lengths_[hand_[k]];
        const bool slides = length.telescopes();
        const long each = slides ? 0 : ticks(length.length_m);
        for (std::size_t n = 0; n <= left_[k]; ++n) {
            const long then = left - static_cast<long>(n) * each;
            const bool idle = !slides && n > 0 && then + each <= meets_ticks;
            if ((slides && n > 0 && (n > 1 || held != no_slide)) || idle) {
                break;
            }
            taken[k] = n;
            take_at_hand(at, then, k + 1, slides && n > 0 ? hand_[k] : held, taken, choices);
        }
        taken[k] = 0;
    }

    [[nodiscard]] WholeFill fill_of(const Choice& choice) const {
        WholeFill fill;
        for (std::size_t k = 0; k < hand_.size(); ++k) {
            if (!lengths_[hand_[k]].telescopes()) {
                fill.pieces.insert(
                    fill.pieces.end(), choice.taken[k], {hand_[k], lengths_[hand_[k]].length_m});
            }
        }
        const std::vector<WholePiece> sold = sums_.pieces(choice.rest.sum);
        fill.pieces.insert(fill.pieces.end(), sold.begin(), sold.end());
        std::stable_sort(
            fill.pieces.begin(), fill.pieces.end(), [](const WholePiece& a, const WholePiece& b) {
                return a.set_m > b.set_m;
            });
        for (int k = 0; k < choice.rest.slides; ++k) {
            fill.pieces.push_back(
                {choice.rest.slide,
                 static_cast<double>(choice.rest.set) * tick_m / choice.rest.slides});
        }
        fill.off_m = static_cast<double>(choice.rest.off) * tick_m;
        return fill;
    }

    const std::vector<WholeStraight>& straights_;
    const std::vector<BarLength>& lengths_;
    SoldSums sums_;
    std::vector<std::size_t> hand_;
    Counts left_;
    std::vector<WholeFill> fills_;
    std::vector<WholeFill> best_;
    WholeCost best_cost_;
    bool found_{};
    long looks_{};
    std::map<std::pair<std::size_t, Counts>, WholeCost> seen_;
};

} // namespace

WholePlan plan_whole(const std::vector<WholeStraight>& straights,
                     const std::vector<BarLength>& lengths) {
    return straights.empty() ? WholePlan{} : WholeSearch(straights, lengths).plan();
}

} // namespace fluewright::parts
