#include "cut_layout.hpp"

#include <algorithm>
#include <cstdint>
#include <limits>

namespace fluewright::cutting {
namespace {

using Served = std::uint32_t;        ///< the straights a length serves, by their place in the group
using Shortened = std::vector<char>; ///< of each length, whether something may be left of it

/// Lengths and straights of a group, and which serves which.
class Pattern {
public:
    Pattern(const CutTask& task,
            const std::vector<std::size_t>& straights,
            const std::vector<std::size_t>& bars)
        : task_(task), straights_(straights), bars_(bars), served_(bars.size(), 0U),
          open_m_(straights.size()) {
        for (std::size_t i = 0; i < straights.size(); ++i) {
            open_m_[i] = straight(i).between_m;
        }
    }

    /// Tries every way in which the lengths serve the straights with `extra` more pieces than a
    /// tree has.
    [[nodiscard]] std::optional<Layout> search(int extra) {
        const int shared = static_cast<int>(straights_.size()) - 1 + extra;
        double left_m = -task_.cut_loss_m * static_cast<double>(shared);
        for (std::size_t bar = 0; bar < bars_.size(); ++bar) {
            left_m += length(bar).length_m;
        }
        double lap_m = 0.0;
        for (std::size_t i = 0; i < straights_.size(); ++i) {
            left_m -= straight(i).between_m;
            lap_m = std::max(lap_m, straight(i).lap_m);
        }
        left_m -= lap_m * static_cast<double>(bars_.size() + static_cast<std::size_t>(shared));
        const Shortened telescope = telescoping();
        const bool slides =
            std::any_of(telescope.begin(), telescope.end(), [](char one) { return one != 0; });
        least_cuts_ = shared + (left_m > rounding_m && !slides ? 1 : 0);
        choose(0, shared);
        return best_;
    }

    [[nodiscard]] bool complete() const { return work_ < most_work; }

    [[nodiscard]] long work() const { return work_; }

private:
    static constexpr long most_work = 400000;
    static constexpr long flow_work = 20;

    [[nodiscard]] const BarLength& length(std::size_t bar) const {
        return task_.lengths[bars_[bar]];
    }

    [[nodiscard]] const CutStraight& straight(std::size_t i) const {
        return task_.straights[straights_[i]];
    }

    /// `more`: pieces beyond one for each length that are still to be placed.
    void choose(std::size_t bar, int more) {
        // No layout of so many pieces has fewer cuts than the shared lengths ask for, and one where
        // something is left over.
        if (++work_ >= most_work || (best_ && best_->cuts <= least_cuts_)) {
            return;
        }
        if (bar == bars_.size()) {
            if (more == 0) {
                try_pattern();
            }
            return;
        }
        const auto all = static_cast<Served>((1U << straights_.size()) - 1U);
        const bool alone = length(bar).telescopes() || !task_.shares;
        // Equal lengths in equal parts change places for nothing.
        const bool twin = bar > 0 && bars_[bar] == bars_[bar - 1];
        for (Served set = 1; set <= all; ++set) {
            const int shared = count_of(set) - 1;
            if (shared > more || (alone && shared > 0) || (twin && set < served_[bar - 1])) {
                continue;
            }
            served_[bar] = set;
            if (reserve(bar, 1.0)) {
                choose(bar + 1, more - shared);
            }
            reserve(bar, -1.0);
        }
    }

    /// Takes the least pieces of a length off what is open; whether the length and its straights
    /// have room for them.
    bool reserve(std::size_t bar, double sign) {
        bool room = true;
        double need_m = task_.cut_loss_m * static_cast<double>(count_of(served_[bar]) - 1);
        for (std::size_t i = 0; i < straights_.size(); ++i) {
            if (serves(bar, i)) {
                const double least = least_m(bar, i);
                need_m += least + straight(i).lap_m;
                open_m_[i] -= sign * least;
                room = room && open_m_[i] > -rounding_m;
            }
        }
        return room && need_m < length(bar).length_m + rounding_m;
    }

    static int count_of(Served set) {
        int count = 0;
        for (; set != 0U; set &= set - 1U) {
            ++count;
        }
        return count;
    }

    [[nodiscard]] bool serves(std::size_t bar, std::size_t i) const {
        return (served_[bar] >> i & 1U) != 0U;
    }

    /// Least that the piece of `bar` lays in straight `i`.
    [[nodiscard]] double least_m(std::size_t bar, std::size_t i) const {
        const CutStraight& s = straight(i);
        return length(bar).telescopes() ? std::max(rounding_m, length(bar).shortest_m - s.lap_m)
                                        : std::min(task_.stub_m, s.between_m);
    }

    void try_pattern() {
        const std::size_t bars = bars_.size();
        const std::size_t count = straights_.size();
        std::vector<double> spare_m(bars);
        const std::vector<double>& open_m = open_m_;
        int pieces = 0;
        for (std::size_t bar = 0; bar < bars; ++bar) {
            spare_m[bar] = length(bar).length_m
                           - task_.cut_loss_m * static_cast<double>(count_of(served_[bar]) - 1);
            for (std::size_t i = 0; i < count; ++i) {
                if (serves(bar, i)) {
                    spare_m[bar] -= straight(i).lap_m + least_m(bar, i);
                    ++pieces;
                }
            }
        }
        double spare_sum_m = 0.0;
        double open_sum_m = 0.0;
        for (const double spare : spare_m) {
            spare_sum_m += spare;
        }
        for (const double open : open_m) {
            open_sum_m += open;
        }
        const double left_m = spare_sum_m - open_sum_m;
        if (left_m < -rounding_m) {
            return;
        }
        const Shortened slides = telescoping();
        if (left_m <= rounding_m) {
            fill(spare_m, open_m, Shortened(bars, 0), pieces);
            return;
        }
        // As few of the lengths as can be are shortened; telescoping ones slide without a cut.
        if (fill(spare_m, open_m, slides, pieces)) {
            return;
        }
        bool one = false;
        for (std::size_t bar = 0; bar < bars; ++bar) {
            const bool twin =
                bar > 0 && bars_[bar] == bars_[bar - 1] && served_[bar] == served_[bar - 1];
            if (slides[bar] == 0 && !twin) {
                Shortened with = slides;
                with[bar] = 1;
                one = fill(spare_m, open_m, with, pieces) || one;
            }
        }
        if (!one) {
            shorten_one_by_one(spare_m, open_m, slides, pieces);
        }
    }

    /// Lets one length more be shortened until it fits: the first ones, since no single one does.
    void shorten_one_by_one(const std::vector<double>& spare_m,
                            const std::vector<double>& open_m,
                            Shortened with,
                            int pieces) {
        for (std::size_t bar = bars_.size(); bar-- > 0;) {
            with[bar] = 1;
            if (fill(spare_m, open_m, with, pieces)) {
                return;
            }
        }
    }

    [[nodiscard]] Shortened telescoping() const {
        Shortened set(bars_.size(), 0);
        for (std::size_t bar = 0; bar < bars_.size(); ++bar) {
            set[bar] = length(bar).telescopes() ? 1 : 0;
        }
        return set;
    }

    /// Whether all is used up where only the lengths of `shortened` may keep something over: a flow
    /// from lengths to straights and to what is left.
    bool fill(const std::vector<double>& spare_m,
              const std::vector<double>& open_m,
              const Shortened& shortened,
              int pieces) {
        work_ += flow_work;
        const std::size_t bars = bars_.size();
        const std::size_t sinks = straights_.size() + 1;
        double left_m = 0.0;
        std::vector<double> supply = spare_m;
        std::vector<double> demand = open_m;
        for (const double spare : spare_m) {
            left_m += spare;
        }
        for (const double open : open_m) {
            left_m -= open;
        }
        demand.push_back(std::max(0.0, left_m));
        std::vector<std::vector<double>> flow(bars, std::vector<double>(sinks, 0.0));
        const auto joined = [&](std::size_t bar, std::size_t sink) {
            return sink + 1 < sinks ? serves(bar, sink) : shortened[bar] != 0;
        };
        for (std::size_t from = 0; from < bars; ++from) {
            while (supply[from] > rounding_m) {
                if (!push(from, supply, demand, flow, joined)) {
                    return false;
                }
            }
        }
        take(flow, shortened, pieces);
        return true;
    }

    /// One path of the flow from `from` to a sink that is still open, by breadth.
    template <class Joined>
    static bool push(std::size_t from,
                     std::vector<double>& supply,
                     std::vector<double>& demand,
                     std::vector<std::vector<double>>& flow,
                     const Joined& joined) {
        const std::size_t bars = supply.size();
        const std::size_t sinks = demand.size();
        constexpr std::size_t unseen = static_cast<std::size_t>(-1);
        std::vector<std::size_t> bar_by(bars, unseen);
        std::vector<std::size_t> sink_by(sinks, unseen);
        std::vector<std::size_t> queue{from};
        bar_by[from] = from;
        for (std::size_t head = 0; head < queue.size(); ++head) {
            const std::size_t bar = queue[head];
            for (std::size_t sink = 0; sink < sinks; ++sink) {
                if (sink_by[sink] != unseen || !joined(bar, sink)) {
                    continue;
                }
                sink_by[sink] = bar;
                if (demand[sink] > 0.1 * rounding_m) {
                    send(from, sink, supply, demand, flow, bar_by, sink_by);
                    return true;
                }
                for (std::size_t other = 0; other < bars; ++other) {
                    if (bar_by[other] == unseen && flow[other][sink] > 0.1 * rounding_m) {
                        bar_by[other] = sink;
                        queue.push_back(other);
                    }
                }
            }
        }
        return false;
    }

    static void send(std::size_t from,
                     std::size_t sink,
                     std::vector<double>& supply,
                     std::vector<double>& demand,
                     std::vector<std::vector<double>>& flow,
                     const std::vector<std::size_t>& bar_by,
                     const std::vector<std::size_t>& sink_by) {
        double most_m = std::min(supply[from], demand[sink]);
        for (std::size_t at = sink_by[sink]; at != from; at = sink_by[bar_by[at]]) {
            most_m = std::min(most_m, flow[at][bar_by[at]]);
        }
        std::size_t to = sink;
        for (std::size_t at = sink_by[sink];; at = sink_by[to]) {
            flow[at][to] += most_m;
            if (at == from) {
                break;
            }
            to = bar_by[at];
            flow[at][to] -= most_m;
        }
        supply[from] -= most_m;
        demand[sink] -= most_m;
    }

    void
    take(const std::vector<std::vector<double>>& flow, const Shortened& shortened, int pieces) {
        Layout layout;
        layout.pieces = pieces;
        for (std::size_t bar = 0; bar < bars_.size(); ++bar) {
            Bar made;
            made.length = bars_[bar];
            for (std::size_t i = 0; i < straights_.size(); ++i) {
                if (serves(bar, i)) {
                    made.pieces.push_back(
                        {straights_[i], straight(i).lap_m + least_m(bar, i) + flow[bar][i]});
                }
            }
            const bool kept = shortened[bar] != 0 && flow[bar].back() > rounding_m;
            layout.cuts += static_cast<int>(made.pieces.size()) - 1;
            if (!length(bar).telescopes()) {
                const auto count = static_cast<int>(made.pieces.size());
                layout.cut_pieces += kept || count > 1 ? count : 0;
                layout.cuts += kept ? 1 : 0;
                made.offcut_m = kept ? flow[bar].back() : 0.0;
            }
            std::stable_sort(
                made.pieces.begin(), made.pieces.end(), [](const CutPiece& a, const CutPiece& b) {
                    return a.length_m > b.length_m;
                });
            layout.bars.push_back(std::move(made));
        }
        // Of equal cuts those that leave more lengths whole, so that a straight has one cut piece.
        if (!best_ || layout.cuts < best_->cuts
            || (layout.cuts == best_->cuts && layout.cut_pieces < best_->cut_pieces)) {
            best_ = std::move(layout);
        }
    }

    const CutTask& task_;
    const std::vector<std::size_t>& straights_;
    const std::vector<std::size_t>& bars_;
    std::vector<Served> served_;
    std::vector<double> open_m_; ///< of each straight, the least of its pieces taken off
    std::optional<Layout> best_;
    int least_cuts_{};
    long work_{};
};

} // namespace

LayoutSearch lay_out(const CutTask& task,
                     const std::vector<std::size_t>& straights,
                     const std::vector<std::size_t>& bars) {
    LayoutSearch result;
    const auto most_extra =
        static_cast<int>((bars.size() - 1) * (straights.size() - 1)); // beyond a tree
    // Each piece more costs a lap and, in a length that is shared anyhow, the loss of a cut.
    double spare_m = -task.cut_loss_m * static_cast<double>(straights.size() - 1);
    double lap_m = std::numeric_limits<double>::infinity();
    for (const std::size_t i : straights) {
        spare_m -= task.straights[i].between_m;
        lap_m = std::min(lap_m, task.straights[i].lap_m);
    }
    spare_m -= lap_m * static_cast<double>(bars.size() + straights.size() - 1);
    for (const std::size_t bar : bars) {
        spare_m += task.lengths[bar].length_m;
    }
    for (int extra = 0; extra <= most_extra && !result.found; ++extra) {
        if (spare_m < static_cast<double>(extra) * (lap_m + task.cut_loss_m) - rounding_m) {
            break;
        }
        Pattern pattern(task, straights, bars);
        result.found = pattern.search(extra);
        result.complete = result.complete && pattern.complete();
        result.work += pattern.work();
    }
    return result;
}

} // namespace fluewright::cutting
