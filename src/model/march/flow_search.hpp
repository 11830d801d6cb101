#pragma once

#include "fluewright/core/numeric/root.hpp"
#include "model/march/run_in_room.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace fluewright {

struct FlowRange {
    double least_kg_s;
    double greatest_kg_s;
    /// Whether the march has no bends in the flow; leaks and gates have.
    bool smooth{true};
    /// Of the flow: what a balance may be off by, as far as curves can tell.
    double accepted_share{1e-5};
    /// Whether joints let in air: a march then depends on where its pressure is looked for.
    bool leaks{};
    /// About what a flow without end would be lifted by, and its density: with these one march
    /// foretells more than itself.
    double endless_lift_pa{};
    double endless_density_kg_m3{};
};

/// What is known at one flow.
struct FlowPoint {
    double flow_kg_s{};
    double lift_pa{};       ///< what drives: changes slowly with the flow
    double loss_pa{};       ///< what resists: nearly with the square of the flow
    double density_kg_m3{}; ///< of the gas where it starts, for balances that need it

    [[nodiscard]] double left_pa() const { return lift_pa - loss_pa; }
};

/// Flows at which something made of a march is balanced. A march is what costs: every one is kept,
/// and the search solves the balance on curves through those it has, of the lift and of the loss
/// over the square of the flow, before it pays for the next one. Several balances share what is
/// known.
template <class Evaluate>
class FlowSearch {
public:
    /// `evaluate(flow, left)` gives the FlowPoint of a flow; `left` is what the curves foretell of
    /// FlowPoint::left_pa(), nothing_foretold_pa where there is none.
    FlowSearch(const Evaluate& evaluate, const FlowRange& limits)
        : evaluate_(evaluate), limits_(limits) {}

    /// Takes over what is known already. Points too near to one another would make the curve's
    /// slopes out of the march's last digits: the newer one stays. Gives its place.
    std::size_t add(const FlowPoint& fresh) {
        for (std::size_t i = 0; i < count_; ++i) {
            if (std::abs(known_[i].flow_kg_s - fresh.flow_kg_s) < least_gap * fresh.flow_kg_s) {
                known_[i] = fresh;
                return i;
            }
        }
        if (count_ == 0 && fresh.density_kg_m3 > 0.0) {
            shift_kg_s_ =
                fresh.flow_kg_s
                * std::max(0.0, limits_.endless_density_kg_m3 / fresh.density_kg_m3 - 1.0);
        }
        std::size_t i = count_++;
        for (; i > 0 && known_[i - 1].flow_kg_s > fresh.flow_kg_s; --i) {
            known_[i] = known_[i - 1];
        }
        known_[i] = fresh;
        return i;
    }

    /// greatest_balance() with the march at it: `evaluate_fully(flow)` gives the FlowPoint of the
    /// answer, and is asked again where that shows the balance to lie elsewhere. Gives the flow of
    /// the last march.
    template <class Surplus, class EvaluateFully>
    std::optional<double>
    settle(const Surplus& surplus, double start_kg_s, const EvaluateFully& evaluate_fully) {
        constexpr int most_marches = 4;
        constexpr double foretold_over_accepted = 10.0; // its march tells better
        constexpr double settled_share = 2e-7;
        const double foretold_share = foretold_over_accepted * limits_.accepted_share;
        std::optional<double> flow = greatest_balance(surplus, start_kg_s, foretold_share);
        for (int march = 1; flow; ++march) {
            add(evaluate_fully(*flow, foretold_left_pa(*flow)));
            const std::optional<double> better =
                greatest_balance(surplus, start_kg_s, foretold_share);
            if (!better || march == most_marches
                || std::abs(*better - *flow) <= settled_share * *flow) {
                break;
            }
            flow = better;
        }
        return flow;
    }

    /// The greatest flow at which `surplus(point)` turns from plus to minus; the working point that
    /// a hot flue settles at. `start_kg_s` is where the search begins. Nothing when there is no
    /// surplus at any flow down to the least, the greatest flow when there is surplus at all.
    template <class Surplus>
    std::optional<double> greatest_balance(const Surplus& surplus, double start_kg_s) {
        return greatest_balance(surplus, start_kg_s, limits_.accepted_share);
    }

    /// The same to another share of the flow.
    template <class Surplus>
    std::optional<double>
    greatest_balance(const Surplus& surplus, double start_kg_s, double accepted_share) {
        if (count_ == 0) {
            add(evaluated(start_kg_s));
        }
        const std::optional<std::size_t> low = greatest_with(surplus);
        return low ? std::optional{above(surplus, *low, accepted_share)} : std::nullopt;
    }

private:
    static constexpr double step_up = 2.0;
    static constexpr double greatest_step_up = 5.0;
    static constexpr double step_down = 0.7;
    static constexpr double below_foretold = 0.99;
    static constexpr double least_gap = 1e-4;
    static constexpr double least_density_kg_m3 = 0.01; ///< a curve may lead too far
    static constexpr double root_share = 1e-7;          ///< of a balance on a curve
    /// What a point more leaves of the error of the curve without it, and two more; what remains of
    /// a distance between points that are far apart, or where leaks and gates bend the march.
    static constexpr double error_of_fewer = 0.3;
    static constexpr double error_of_fewest = 0.05;
    static constexpr double error_of_spacing = 0.02;
    static constexpr double error_with_bends = 0.1;
    static constexpr double error_with_leaks = 0.02; ///< a joint that turns bends it softly
    static constexpr double near_share = 0.01;       ///< farther off two curves may agree by chance
    static constexpr std::size_t most_known = 64;
    static constexpr std::size_t most_points = 4; ///< of a curve

    /// Newton's polynomials through the known points nearest to a gap, the farthest last. They are
    /// over the inverse of the flow, shifted so that the density of gas that is heated by a
    /// constant power becomes a straight line.
    struct Curve {
        double shift_kg_s{};
        std::array<double, most_points> node{};
        std::array<std::array<double, 3>, most_points> coefficient{};
        std::size_t points{};

        [[nodiscard]] FlowPoint at(double flow_kg_s) const { return at(flow_kg_s, points); }

        [[nodiscard]] FlowPoint at(double flow_kg_s, std::size_t points_used) const {
            const double place = 1.0 / (flow_kg_s + shift_kg_s);
            std::array<double, 3> sum = coefficient[points_used - 1];
            for (std::size_t i = points_used - 1; i-- > 0;) {
                for (std::size_t k = 0; k < sum.size(); ++k) {
                    sum[k] = sum[k] * (place - node[i]) + coefficient[i][k];
                }
            }
            return {.flow_kg_s = flow_kg_s,
                    .lift_pa = sum[0],
                    .loss_pa = sum[1] * flow_kg_s * flow_kg_s,
                    .density_kg_m3 = std::max(sum[2], least_density_kg_m3)};
        }
    };

    [[nodiscard]] FlowPoint evaluated(double flow_kg_s) const {
        return evaluate_(flow_kg_s, foretold_left_pa(flow_kg_s));
    }

    [[nodiscard]] double foretold_left_pa(double flow_kg_s) const {
        if (count_ == 0 || !limits_.leaks) {
            return nothing_foretold_pa;
        }
        std::size_t above = 0;
        while (above + 1 < count_ && known_[above].flow_kg_s < flow_kg_s) {
            ++above;
        }
        return curve_around(above > 0 ? above - 1 : 0, above).at(flow_kg_s).left_pa();
    }

    /// Index of the highest known flow with a surplus; looks for one where none is known.
    template <class Surplus>
    std::optional<std::size_t> greatest_with(const Surplus& surplus) {
        for (std::size_t i = count_; i-- > 0;) {
            if (surplus(known_[i]) >= 0.0) {
                return i;
            }
        }
        // More flow keeps the gas warmer: a deficit may be that of too small a flow.
        while (known_[count_ - 1].flow_kg_s * step_up <= limits_.greatest_kg_s
               && count_ < most_known && rises_at_the_top(surplus)) {
            add(evaluated(known_[count_ - 1].flow_kg_s * step_up));
            if (surplus(known_[count_ - 1]) >= 0.0) {
                return count_ - 1;
            }
        }
        while (count_ < most_known) {
            const double flow = known_[0].flow_kg_s * step_down_from(surplus);
            if (flow < limits_.least_kg_s) {
                return std::nullopt;
            }
            add(evaluated(flow));
            if (surplus(known_[0]) >= 0.0) {
                return 0;
            }
        }
        return std::nullopt;
    }

    /// Whether the surplus grows between the two highest known flows, or is known at one only.
    template <class Surplus>
    [[nodiscard]] bool rises_at_the_top(const Surplus& surplus) const {
        return count_ < 2 || surplus(known_[count_ - 1]) > surplus(known_[count_ - 2]);
    }

    /// Factor on the lowest known flow that leads just below the balance, if the curve foretells
    /// one within reach.
    template <class Surplus>
    [[nodiscard]] double step_down_from(const Surplus& surplus) const {
        const Curve curve = curve_around(0, 0);
        const auto modelled = [&](double flow) { return surplus(curve.at(flow)); };
        const double high = known_[0].flow_kg_s;
        const double low = step_down * high;
        const double at_low = modelled(low);
        if (count_ < 2 || at_low <= 0.0) {
            return step_down;
        }
        const double root = find_root(modelled,
                                      low,
                                      high,
                                      at_low,
                                      surplus(known_[0]),
                                      {.x_tolerance = 1e-3 * high, .residual_tolerance = 0.0})
                                .x;
        return std::max(step_down, below_foretold * root / high);
    }

    /// The curve through the points nearest to the gap between two known ones; or to one of them
    /// and the flow without end, so that it leads beyond what is known.
    [[nodiscard]] Curve curve_around(std::size_t first, std::size_t last) const {
        const bool beside = first == last;
        const std::size_t wanted = beside ? most_points - 1 : most_points;
        const double middle = 0.5 * (known_[first].flow_kg_s + known_[last].flow_kg_s);
        while (last - first + 1 < std::min(wanted, count_)) {
            const bool below = first > 0;
            const bool above = last + 1 < count_;
            if (below
                && (!above
                    || middle - known_[first - 1].flow_kg_s
                           < known_[last + 1].flow_kg_s - middle)) {
                --first;
            } else {
                ++last;
            }
        }
        Curve curve;
        curve.shift_kg_s = shift_kg_s_;
        curve.points = last - first + 1;
        const std::size_t top_index = last;
        for (std::size_t i = 0; i < curve.points; ++i) {
            // The farther end of what is left comes last.
            const bool first_is_farther =
                middle - known_[first].flow_kg_s > known_[last].flow_kg_s - middle;
            const FlowPoint& point = known_[first_is_farther ? first++ : last--];
            const std::size_t place = curve.points - 1 - i;
            curve.node[place] = 1.0 / (point.flow_kg_s + shift_kg_s_);
            curve.coefficient[place] = {point.lift_pa,
                                        point.loss_pa / (point.flow_kg_s * point.flow_kg_s),
                                        point.density_kg_m3};
        }
        if (curve.points < most_points - 1) {
            const FlowPoint& top = known_[top_index];
            curve.coefficient[curve.points] = {limits_.endless_lift_pa,
                                               top.loss_pa / (top.flow_kg_s * top.flow_kg_s),
                                               limits_.endless_density_kg_m3};
            ++curve.points;
        }
        for (std::size_t order = 1; order < curve.points; ++order) {
            for (std::size_t i = curve.points - 1; i >= order; --i) {
                const double apart = 1.0 / (curve.node[i] - curve.node[i - order]);
                for (std::size_t k = 0; k < curve.coefficient[i].size(); ++k) {
                    curve.coefficient[i][k] =
                        (curve.coefficient[i][k] - curve.coefficient[i - 1][k]) * apart;
                }
            }
        }
        return curve;
    }

    /// The balance above known_[low], which has a surplus; the next one has none, if there is one.
    template <class Surplus>
    double above(const Surplus& surplus, std::size_t low, double accepted_share) {
        double width_before = std::numeric_limits<double>::infinity();
        for (int step = 0; count_ < most_known; ++step) {
            const bool open = low + 1 == count_;
            const double a = known_[low].flow_kg_s;
            const double b = open ? std::min(greatest_step_up * a, limits_.greatest_kg_s)
                                  : known_[low + 1].flow_kg_s;
            if (b <= a) {
                return a;
            }
            const Curve curve = open ? curve_around(low, low) : curve_around(low, low + 1);
            const auto modelled = [&](double flow) { return surplus(curve.at(flow)); };
            const double at_a = surplus(known_[low]);
            const double at_b = open ? modelled(b) : surplus(known_[low + 1]);
            const double flow =
                at_b >= 0.0 ? b
                            : find_root(modelled,
                                        a,
                                        b,
                                        at_a,
                                        at_b,
                                        {.x_tolerance = root_share * a, .residual_tolerance = 0.0})
                                  .x;
            const double off = (open ? flow - a : std::min(flow - a, b - flow)) / flow;
            const double per_flow = (at_a - at_b) / (b - a);
            if (error_share(surplus, curve, flow, off, per_flow) <= accepted_share) {
                return flow;
            }
            // A curve with a bend between may point to the same end again and again: halve then.
            const bool closing = open || step % 2 == 0 || b - a < 0.5 * width_before;
            if (step % 2 == 1) {
                width_before = b - a;
            }
            const double next = closing ? flow : 0.5 * (a + b);
            const std::size_t before = count_;
            const std::size_t fresh = add(evaluated(next));
            if (count_ == before) {
                return flow;
            }
            low = surplus(known_[fresh]) >= 0.0 ? fresh : fresh - 1;
        }
        return known_[low].flow_kg_s;
    }

    /// What a balance on the curve may err by, as a share of the flow: by what the curves without
    /// the farthest point, and without the two farthest, miss there.
    template <class Surplus>
    [[nodiscard]] double error_share(const Surplus& surplus,
                                     const Curve& curve,
                                     double flow,
                                     double off,
                                     double surplus_per_flow) const {
        if (!limits_.smooth) {
            return error_with_bends * off;
        }
        if (off > near_share || curve.points < 3) {
            return off;
        }
        const auto missed = [&](std::size_t points) {
            return std::abs(surplus(curve.at(flow, points)) / surplus_per_flow) / flow;
        };
        const double spacing = std::abs(1.0 / curve.node[1] - 1.0 / curve.node[0]) / flow;
        return std::max({error_of_fewer * missed(curve.points - 1),
                         error_of_fewest * missed(curve.points - 2),
                         error_of_spacing * spacing * off,
                         limits_.leaks ? error_with_leaks * off : 0.0});
    }

    const Evaluate& evaluate_;
    FlowRange limits_;
    std::array<FlowPoint, most_known> known_{};
    std::size_t count_{};
    double shift_kg_s_{}; ///< of the curves
};

} // namespace fluewright
