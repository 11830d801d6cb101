#pragma once

#include "fluewright/core/root.hpp"

#include <algorithm>
#include <array>
#include <cmath>
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
            const double flow = known_[low].flow * step_up;
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
        double log_flow;
        double value;
    };

    static constexpr double step_up = 2.0;
    static constexpr double step_down = 0.7;
    static constexpr double accepted_share = 1e-6;
    static constexpr std::size_t most_known = 64;
    static constexpr std::size_t most_points = 5; ///< of the curve
    static constexpr int trusted_steps = 6;       ///< of the curve before halving helps out

    /// Newton's polynomial through the known points nearest to a gap.
    struct Curve {
        std::array<double, most_points> node{};
        std::array<double, most_points> coefficient{};
        std::size_t points{};

        [[nodiscard]] double at(double log_flow) const {
            double sum = coefficient[points - 1];
            for (std::size_t i = points - 1; i-- > 0;) {
                sum = sum * (log_flow - node[i]) + coefficient[i];
            }
            return sum;
        }
    };

    std::size_t know(double flow) {
        const Known fresh{flow, std::log(flow), evaluate_(flow)};
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
        const double middle = 0.5 * (known_[low].log_flow + known_[low + 1].log_flow);
        while (last - first + 1 < std::min(most_points, count_)) {
            const bool below = first > 0;
            const bool above = last + 1 < count_;
            if (below
                && (!above
                    || middle - known_[first - 1].log_flow < known_[last + 1].log_flow - middle)) {
                --first;
            } else {
                ++last;
            }
        }
        Curve curve;
        curve.points = last - first + 1;
        for (std::size_t i = 0; i < curve.points; ++i) {
            curve.node[i] = known_[first + i].log_flow;
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
        double last = 0.0;
        for (int step = 0; count_ < known_.size(); ++step) {
            const Known a = known_[low];
            const Known b = known_[low + 1];
            const Curve curve = curve_around(low);
            const auto modelled = [&](double flow) {
                return surplus(flow, curve.at(std::log(flow)));
            };
            double flow = find_root(modelled,
                                    a.flow,
                                    b.flow,
                                    surplus(a.flow, a.value),
                                    surplus(b.flow, b.value),
                                    {.x_tolerance = 0.01 * accepted_share * a.flow,
                                     .residual_tolerance = 0.0})
                              .x;
            if (std::abs(flow - last) <= accepted_share * flow
                || b.flow - a.flow <= accepted_share * flow) {
                return flow;
            }
            if (step >= trusted_steps) {
                flow = 0.5 * (a.flow + b.flow);
            }
            last = flow;
            const std::size_t i = know(flow);
            low = surplus(flow, known_[i].value) >= 0.0 ? i : i - 1;
        }
        return known_[low].flow;
    }

    const Evaluate& evaluate_;
    FlowRange limits_;
    std::array<Known, most_known> known_{};
    std::size_t count_{};
};

} // namespace fluewright
