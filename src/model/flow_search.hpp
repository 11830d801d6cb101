#pragma once

#include "fluewright/core/root.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace fluewright {

struct FlowRange {
    double least_kg_s;
    double greatest_kg_s;
};

/// A quantity over the flow that costs a march to know, and the flows at which something made of it
/// is balanced. Every value is kept, and the search solves the balance on the curve through the
/// values it has before it pays for the next one; several balances share what is known.
template <class Evaluate>
class FlowSearch {
public:
    FlowSearch(const Evaluate& evaluate, const FlowRange& limits)
        : evaluate_(evaluate), limits_(limits) {}

    /// The greatest flow at which `surplus(flow, value)` turns from plus to minus; the working
    /// point that a hot flue settles at. `start_kg_s` is where the search begins. Nothing when
    /// there is no surplus at any flow down to the least, the greatest flow when there is surplus
    /// at all.
    template <class Surplus>
    std::optional<double> greatest_balance(const Surplus& surplus, double start_kg_s) {
        if (count_ == 0) {
            know(start_kg_s);
        }
        // What is known already: the highest flow with a surplus.
        std::size_t low = count_;
        for (std::size_t i = 0; i < count_; ++i) {
            if (surplus(known_[i].flow, known_[i].value) >= 0.0) {
                low = i;
            }
        }
        // More flow keeps the gas warmer: a deficit may be that of too small a flow.
        while (low == count_ && known_[count_ - 1].flow * step_up <= limits_.greatest_kg_s
               && count_ < known_.size() && rises_at_the_top(surplus)) {
            know(known_[count_ - 1].flow * step_up);
            if (surplus(known_[count_ - 1].flow, known_[count_ - 1].value) >= 0.0) {
                low = count_ - 1;
            } else {
                low = count_;
            }
        }
        if (low == count_) {
            while (true) {
                const double flow = known_[0].flow * step_down;
                if (flow < limits_.least_kg_s || count_ == known_.size()) {
                    return std::nullopt;
                }
                know(flow);
                if (surplus(known_[0].flow, known_[0].value) >= 0.0) {
                    low = 0;
                    break;
                }
            }
        }
        while (low + 1 == count_) {
            const double flow = known_[low].flow * step_up_from(surplus, low);
            if (flow > limits_.greatest_kg_s || count_ == known_.size()) {
                return known_[low].flow;
            }
            know(flow);
            if (surplus(known_[low + 1].flow, known_[low + 1].value) >= 0.0) {
                ++low;
            }
        }
        return between(surplus, low);
    }

private:
    struct Known {
        double flow;
        double value;
    };

    static constexpr double step_up = 2.0;
    static constexpr double least_step_up = 1.2;
    static constexpr double greatest_step_up = 5.0;
    static constexpr double beyond = 1.1; ///< past the extrapolated balance, to enclose it
    static constexpr double step_down = 0.7;
    static constexpr double accepted_share = 1e-5;
    static constexpr std::size_t most_known = 64;
    static constexpr double slack = 10.0; ///< a bracket's mean slope may be that much too small
    static constexpr std::size_t most_points = 4; ///< of the curve

    /// Newton's polynomial through the known points nearest to a gap.
    struct Curve {
        std::array<double, most_points> node{};
        std::array<double, most_points> coefficient{};
        std::size_t points{};

        [[nodiscard]] double at(double flow) const {
            double sum = coefficient[points - 1];
            for (std::size_t i = points - 1; i-- > 0;) {
                sum = sum * (flow - node[i]) + coefficient[i];
            }
            return sum;
        }
    };

    /// Whether the surplus grows between the two highest known flows, or is known at one only.
    template <class Surplus>
    [[nodiscard]] bool rises_at_the_top(const Surplus& surplus) const {
        if (count_ < 2) {
            return true;
        }
        const Known& a = known_[count_ - 2];
        const Known& b = known_[count_ - 1];
        return surplus(b.flow, b.value) > surplus(a.flow, a.value);
    }

    /// Factor on the highest known flow that should lead just past the balance: by the secant of
    /// the two highest.
    template <class Surplus>
    [[nodiscard]] double step_up_from(const Surplus& surplus, std::size_t low) const {
        if (low == 0) {
            return step_up;
        }
        const Known& a = known_[low - 1];
        const Known& b = known_[low];
        const double at_a = surplus(a.flow, a.value);
        const double at_b = surplus(b.flow, b.value);
        if (!(at_a > at_b)) {
            return step_up;
        }
        const double ahead = at_b * (b.flow - a.flow) / (at_a - at_b);
        return std::clamp(1.0 + beyond * ahead / b.flow, least_step_up, greatest_step_up);
    }

    std::size_t know(double flow) {
        const Known fresh{flow, evaluate_(flow)};
        std::size_t i = count_++;
        for (; i > 0 && known_[i - 1].flow > flow; --i) {
            known_[i] = known_[i - 1];
        }
        known_[i] = fresh;
        return i;
    }

    [[nodiscard]] Curve curve_around(std::size_t low) const {
        std::size_t first = low;
        std::size_t last = low + 1;
        const double middle = 0.5 * (known_[low].flow + known_[low + 1].flow);
        while (last - first + 1 < std::min(most_points, count_)) {
            const bool below = first > 0;
            const bool above = last + 1 < count_;
            if (below
                && (!above || middle - known_[first - 1].flow < known_[last + 1].flow - middle)) {
                --first;
            } else {
                ++last;
            }
        }
        Curve curve;
        curve.points = last - first + 1;
        for (std::size_t i = 0; i < curve.points; ++i) {
            curve.node[i] = known_[first + i].flow;
            curve.coefficient[i] = known_[first + i].value;
        }
        for (std::size_t order = 1; order < curve.points; ++order) {
            for (std::size_t i = curve.points - 1; i >= order; --i) {
                curve.coefficient[i] = (curve.coefficient[i] - curve.coefficient[i - 1])
                                       / (curve.node[i] - curve.node[i - order]);
            }
        }
        return curve;
    }

    /// Surplus at known_[low], none at the next.
    template <class Surplus>
    double between(const Surplus& surplus, std::size_t low) {
        double width_before = std::numeric_limits<double>::infinity();
        for (int step = 0; count_ < known_.size(); ++step) {
            const Known a = known_[low];
            const Known b = known_[low + 1];
            const double at_a = surplus(a.flow, a.value);
            const double at_b = surplus(b.flow, b.value);
            const double width = b.flow - a.flow;
            const Curve curve = curve_around(low);
            const auto modelled = [&](double flow) { return surplus(flow, curve.at(flow)); };
            const double flow = find_root(modelled,
                                          a.flow,
                                          b.flow,
                                          at_a,
                                          at_b,
                                          {.x_tolerance = 0.01 * accepted_share * a.flow,
                                           .residual_tolerance = 0.0})
                                    .x;
            // Near enough to a flow that is known, and what is known there is next to nothing?
            const double allowed = accepted_share * flow;
            const double per_flow = (at_a - at_b) / width;
            if (width <= allowed || (flow - a.flow <= allowed && at_a <= slack * allowed * per_flow)
                || (b.flow - flow <= allowed && -at_b <= slack * allowed * per_flow)) {
                return flow;
            }
            // A curve with a bend between may point to the same end again and again: halve then.
            const bool closing = step % 2 == 0 || width < 0.5 * width_before;
            if (step % 2 == 1) {
                width_before = width;
            }
            const std::size_t i =
                know(closing ? std::clamp(flow, a.flow + 0.1 * allowed, b.flow - 0.1 * allowed)
                             : 0.5 * (a.flow + b.flow));
            low = surplus(known_[i].flow, known_[i].value) >= 0.0 ? i : i - 1;
        }
        return known_[low].flow;
    }

    const Evaluate& evaluate_;
    FlowRange limits_;
    std::array<Known, most_known> known_{};
    std::size_t count_{};
};

} // namespace fluewright
