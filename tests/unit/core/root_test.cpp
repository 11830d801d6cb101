#include "catch.hpp"
#include "fluewright/core/numeric/root.hpp"

#include <cmath>
#include <functional>
#include <string>
#include <vector>

using namespace fluewright;

namespace {

struct Nasty {
    std::string name;
    std::function<double(double)> f;
    double low;
    double high;
    double root;
};

const std::vector<Nasty>& nasty_functions() {
    static const std::vector<Nasty> all{
        {"straight line", [](double x) { return 3.0 * x - 1.0; }, 0.0, 1.0, 1.0 / 3.0},
        {"falling line", [](double x) { return 1.0 - 3.0 * x; }, 0.0, 1.0, 1.0 / 3.0},
        {"cosine against x",
         [](double x) { return std::cos(x) - x; },
         0.0,
         1.0,
         0.7390851332151607},
        {"flat ninth power", [](double x) { return std::pow(x - 0.3, 9.0); }, -1.0, 2.0, 0.3},
        {"vertical cube root", [](double x) { return std::cbrt(x - 0.7); }, -5.0, 4.0, 0.7},
        {"signed square root",
         [](double x) { return std::copysign(std::sqrt(std::abs(x - 0.2)), x - 0.2); },
         -1.0,
         3.0,
         0.2},
        {"wall to the right",
         [](double x) { return std::exp(40.0 * (x - 0.9)) - 1.0; },
         0.0,
         2.0,
         0.9},
        {"pole near the end", [](double x) { return 1.0 / (x + 1e-9) - 4.0; }, 0.0, 1.0, 0.25},
        {"corner", [](double x) { return x < 0.4 ? x - 0.4 : 1000.0 * (x - 0.4); }, 0.0, 1.0, 0.4},
        {"step", [](double x) { return x < 0.123 ? -1.0 : 1.0; }, 0.0, 1.0, 0.123},
        {"huge and tiny", [](double x) { return x * x * x * 1e12 - 1e-3; }, 0.0, 1.0, 1e-5},
    };
    return all;
}

constexpr RootGoal tight{.x_tolerance = 1e-10, .residual_tolerance = 0.0};

} // namespace

TEST_CASE("the root of nasty functions is found, and the bracket still holds it") {
    for (const auto& one : nasty_functions()) {
        INFO(one.name);
        int calls = 0;
        const auto counted = [&](double x) {
            ++calls;
            return one.f(x);
        };
        const Root root = find_root(counted, one.low, one.high, tight);
        REQUIRE(root.converged());
        // A flat function is zero to round-off well beside its root.
        REQUIRE(root.x == Approx(one.root).margin(1e-9));
        REQUIRE(root.low <= one.root + 1e-9);
        REQUIRE(root.high >= one.root - 1e-9);
        REQUIRE(root.low >= one.low);
        REQUIRE(root.high <= one.high);
        REQUIRE(root.x >= root.low);
        REQUIRE(root.x <= root.high);
        REQUIRE(root.steps == calls - 2);
        REQUIRE(calls < 80);
    }
}

TEST_CASE("smooth functions take few steps") {
    const auto f = [](double x) { return std::exp(x) - 2.0; };
    const Root root = find_root(f, -2.0, 4.0, tight);
    REQUIRE(root.converged());
    REQUIRE(root.x == Approx(std::log(2.0)).epsilon(1e-9));
    REQUIRE(root.steps <= 15);
}

TEST_CASE("the search says so when the ends do not differ in sign") {
    const Root same = find_root([](double x) { return x * x + 1.0; }, -1.0, 1.0, tight);
    REQUIRE(same.status == Root::Status::no_sign_change);
    REQUIRE_FALSE(same.converged());
    const Root unknown = find_root([](double) { return std::nan(""); }, -1.0, 1.0, tight);
    REQUIRE(unknown.status == Root::Status::no_sign_change);
}

TEST_CASE("a root at an end costs no step") {
    const auto f = [](double x) { return x; };
    REQUIRE(find_root(f, 0.0, 1.0, tight).x == 0.0);
    REQUIRE(find_root(f, 0.0, 1.0, tight).steps == 0);
    REQUIRE(find_root(f, -1.0, 0.0, tight).x == 0.0);
    REQUIRE(find_root(f, -1.0, 0.0, tight).converged());
}

TEST_CASE("the search stops at the residual asked for, or after the steps allowed") {
    const auto f = [](double x) { return x * x * x - 0.2; };
    const Root rough = find_root(f, 0.0, 1.0, {.x_tolerance = 0.0, .residual_tolerance = 1e-3});
    REQUIRE(rough.converged());
    REQUIRE(std::abs(rough.residual) <= 1e-3);
    REQUIRE(std::abs(f(rough.x)) <= 1e-3);
    const Root cut =
        find_root(f, 0.0, 1.0, {.x_tolerance = 0.0, .residual_tolerance = 0.0, .most_steps = 3});
    REQUIRE(cut.status == Root::Status::too_many_steps);
    REQUIRE(cut.low <= std::cbrt(0.2));
    REQUIRE(cut.high >= std::cbrt(0.2));
}
