#pragma once

#include <cmath>

namespace fluewright {

/// What a bracketed search found: the root, the bracket that still holds it and the cost.
struct Root {
    enum class Status { converged, no_sign_change, too_many_steps };

    double x;
    double low;
    double high;
    double residual;
    int steps;
    Status status;

    [[nodiscard]] bool converged() const { return status == Status::converged; }
};

struct RootGoal {
    double x_tolerance;        ///< stop when the bracket is this narrow
    double residual_tolerance; ///< or when |f| is this small
    int most_steps{100};
};

/// Root of a continuous `f` between `low` and `high`, where f(low) and f(high) differ in sign.
///
/// Chandrupatla's choice between inverse quadratic interpolation and bisection: never leaves the
/// bracket, never takes more than a few steps over plain bisection, superlinear near the root.
///
/// Source   Chandrupatla 1997, Advances in Engineering Software 28(3) 145-149
///          [chandrupatla-1997, from memory]
/// Notes    `f_low` and `f_high` are the values at the ends, so that callers who know them do not
///          pay twice.
template <class Function>
[[nodiscard]] Root find_root(
    const Function& f, double low, double high, double f_low, double f_high, const RootGoal& goal) {
    if (f_low == 0.0) {
        return {low, low, low, 0.0, 0, Root::Status::converged};
    }
    if (f_high == 0.0) {
        return {high, high, high, 0.0, 0, Root::Status::converged};
    }
    if (!(f_low * f_high < 0.0)) {
        return {low, low, high, f_low, 0, Root::Status::no_sign_change};
    }
    double a = high;
    double f_a = f_high;
    double b = low;
    double f_b = f_low;
    double c = a;
    double f_c = f_a;
    double t = 0.5;
    for (int step = 1; step <= goal.most_steps; ++step) {
        const double x = a + t * (b - a);
        const double f_x = f(x);
        if ((f_x < 0.0) == (f_a < 0.0)) {
            c = a;
            f_c = f_a;
        } else {
            c = b;
            f_c = f_b;
            b = a;
            f_b = f_a;
        }
        a = x;
        f_a = f_x;
        const bool a_is_best = std::abs(f_a) < std::abs(f_b);
        const double best = a_is_best ? a : b;
        const double f_best = a_is_best ? f_a : f_b;
        const double width = std::abs(b - a);
        if (std::abs(f_best) <= goal.residual_tolerance || width <= goal.x_tolerance) {
            return {best, a < b ? a : b, a < b ? b : a, f_best, step, Root::Status::converged};
        }
        const double xi = (a - b) / (c - b);
        const double phi = (f_a - f_b) / (f_c - f_b);
        if (phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi) {
            t = f_a / (f_b - f_a) * f_c / (f_b - f_c)
                + (c - a) / (b - a) * f_a / (f_c - f_a) * f_b / (f_c - f_b);
        } else {
            t = 0.5;
        }
        const double least = 0.5 * goal.x_tolerance / width;
        t = t > least ? t : least; // also where t is no number
        t = t < 1.0 - least ? t : 1.0 - least;
    }
    return {a, a < b ? a : b, a < b ? b : a, f_a, goal.most_steps, Root::Status::too_many_steps};
}

template <class Function>
[[nodiscard]] Root find_root(const Function& f, double low, double high, const RootGoal& goal) {
    return find_root(f, low, high, f(low), f(high), goal);
}

} // namespace fluewright
