#include "advice/parts/whole/whole_pieces.hpp"
#include "catch.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

using namespace fluewright;
using namespace fluewright::parts;

namespace {

BarLength shop_length(double length_m, double shortest_m = 0.0) {
    return {length_m, {}, length_m, shortest_m};
}

double laid_m(const WholeFill& fill) {
    double sum_m = 0.0;
    for (const WholePiece& piece : fill.pieces) {
        sum_m += piece.set_m;
    }
    return sum_m;
}

WholeFill filled(double between_m, const std::vector<BarLength>& lengths, double may_exceed_m) {
    const WholePlan plan = plan_whole({{between_m, may_exceed_m}}, lengths);
    REQUIRE(plan.fills.size() == 1);
    CHECK(plan.exact);
    return plan.fills.front();
}

/// Tries every count of every length for every straight; all measures are in quarters of a metre.
struct Blind {
    const std::vector<WholeStraight>& straights;
    std::vector<BarLength> lengths;
    double off_m{std::numeric_limits<double>::infinity()};
    double bought_m{};
    int pieces{};

    void straight(std::size_t at, double off, double bought, int count) {
        if (at == straights.size()) {
            const bool same = std::abs(off - off_m) < 1e-9;
            const bool same_cost = same && std::abs(bought - bought_m) < 1e-9;
            if ((!same && off < off_m) || (same && !same_cost && bought < bought_m)
                || (same_cost && count < pieces)) {
                off_m = off;
                bought_m = bought;
                pieces = count;
            }
            return;
        }
        lay(at, 0, straights[at].between_m, off, bought, count);
    }

    void lay(std::size_t at, std::size_t k, double left, double off, double bought, int count) {
        if (left <= 1e-9) {
            const double beyond = std::max(0.0, -left - straights[at].may_exceed_m);
            straight(at + 1, off + beyond, bought, count);
            return;
        }
        if (k == lengths.size()) {
            return;
        }
        lay(at, k + 1, left, off, bought, count);
        if (!lengths[k].at_hand || *lengths[k].at_hand > 0) {
            if (lengths[k].at_hand) {
                --*lengths[k].at_hand;
            }
            lay(at,
                k,
                left - lengths[k].length_m,
                off,
                bought + (lengths[k].at_hand ? 0.0 : lengths[k].cost),
                count + 1);
            if (lengths[k].at_hand) {
                ++*lengths[k].at_hand;
            }
        }
    }
};

} // namespace

TEST_CASE("fixed lengths: least bought, a telescoping one, or a little taller") {
    const std::vector<BarLength> shop{
        shop_length(0.3048), shop_length(0.9144), shop_length(1.2192), shop_length(0.4572, 0.3302)};
    WholeFill made = filled(2.1336, shop, 0.0);
    CHECK(made.pieces.size() == 2);
    CHECK(made.off_m == Approx(0.0).margin(1e-9));
    made = filled(1.6, shop, 0.0);
    CHECK(laid_m(made) == Approx(1.6));
    CHECK(shop[made.pieces.back().length].telescopes());
    CHECK(made.pieces.back().set_m >= 0.3302 - 1e-9);
    CHECK(made.pieces.back().set_m <= 0.4572 + 1e-9);
    made = filled(1.3, shop, 0.31);
    CHECK(laid_m(made) == Approx(1.5240));
    CHECK(made.off_m == Approx(1.5240 - 1.3));
    made = filled(0.2, {shop_length(0.3048)}, 0.0);
    CHECK(made.pieces.size() == 1);
    CHECK(made.off_m == Approx(0.1048));
    CHECK(filled(1.0, {}, 0.0).off_m == Approx(-1.0));
}

TEST_CASE("pieces at hand stand where they save most, over all straights") {
    // Longest first would lay 0.5 in the first straight and buy 1 m for the second.
    std::vector<BarLength> lengths{shop_length(1.0), shop_length(0.25)};
    lengths.push_back({0.5, 1, 0.0, 0.0});
    lengths.push_back({0.25, 2, 0.0, 0.0});
    const WholePlan plan = plan_whole({{0.5, 0.0}, {0.5, 0.0}}, lengths);
    CHECK(plan.bought_m == Approx(0.0));
    // A telescoping piece at hand is used before one is bought.
    lengths = {shop_length(1.0), shop_length(0.4, 0.3), {0.5, 1, 0.0, 0.3}};
    const WholePlan slides = plan_whole({{1.4, 0.0}}, lengths);
    REQUIRE(slides.fills[0].pieces.size() == 2);
    CHECK(slides.fills[0].pieces[1].length == 2);
    CHECK(slides.fills[0].pieces[1].set_m == Approx(0.4));
}

TEST_CASE("a straight that grows has a piece that slides, and two only where one does not do") {
    const std::vector<BarLength> shop{
        shop_length(0.25), shop_length(0.5), shop_length(1.0), shop_length(0.4, 0.27)};
    // 1 m alone would meet 1 m, and one of 270 to 400 mm with fixed ones does not.
    WholePlan plan = plan_whole({{1.0, 0.0, true}}, shop);
    CHECK(laid_m(plan.fills[0]) == Approx(1.0));
    CHECK(shop[plan.fills[0].pieces.back().length].telescopes());
    CHECK_FALSE(shop[plan_whole({{1.0, 0.0}}, shop).fills[0].pieces.back().length].telescopes());
    // 1.2 m: neither fixed ones nor one of 270 to 400 mm with fixed ones.
    plan = plan_whole({{1.2, 0.0}}, shop);
    REQUIRE(plan.fills[0].pieces.size() == 3);
    CHECK(plan.fills[0].pieces[1].set_m == Approx(0.35));
    CHECK(plan.fills[0].pieces[2].set_m == Approx(0.35));
    CHECK(plan.fills[0].off_m == Approx(0.0).margin(1e-9));
    // Nothing slides in 250 mm; what is wanted gives way to what fits.
    plan = plan_whole({{0.25, 0.0, true}}, shop);
    REQUIRE(plan.fills[0].pieces.size() == 1);
    CHECK(plan.fills[0].off_m == Approx(0.0).margin(1e-9));
    // A gap of its own length takes it, drawn out all the way.
    plan = plan_whole({{0.4, 0.0, true}}, shop);
    REQUIRE(plan.fills[0].pieces.size() == 1);
    CHECK(plan.fills[0].pieces[0].set_m == Approx(0.4));
}

TEST_CASE("no choice of whole pieces is beaten by a blind search") {
    std::mt19937 random{2};
    const auto quarters = [&](unsigned most) {
        return 0.25 * static_cast<double>(1 + random() % most);
    };
    for (int i = 0; i < 300; ++i) {
        std::vector<WholeStraight> straights;
        for (std::size_t k = 1 + random() % 3; k-- > 0;) {
            straights.push_back({quarters(9), random() % 3 == 0 ? 0.25 : 0.0});
        }
        std::vector<BarLength> lengths{shop_length(0.5), shop_length(1.0)};
        if (random() % 2 == 0) {
            lengths.push_back({0.25, {}, random() % 2 == 0 ? 0.25 : 0.7, 0.0});
        }
        for (std::size_t k = random() % 3; k-- > 0;) {
            lengths.push_back({quarters(5), 1 + random() % 2, 0.0, 0.0});
        }
        const WholePlan plan = plan_whole(straights, lengths);
        Blind blind{straights, lengths};
        blind.straight(0, 0.0, 0.0, 0);
        INFO("job " << i);
        double off_m = 0.0;
        double cost = 0.0;
        int pieces = 0;
        for (std::size_t k = 0; k < straights.size(); ++k) {
            const WholeFill& fill = plan.fills[k];
            CHECK(laid_m(fill) == Approx(straights[k].between_m + fill.off_m).margin(1e-6));
            off_m += std::max(0.0, fill.off_m - straights[k].may_exceed_m);
            pieces += static_cast<int>(fill.pieces.size());
            for (const WholePiece& piece : fill.pieces) {
                cost += lengths[piece.length].at_hand ? 0.0 : lengths[piece.length].cost;
            }
        }
        CHECK(plan.exact);
        CHECK(off_m == Approx(blind.off_m).margin(1e-6));
        CHECK(cost == Approx(blind.bought_m).margin(1e-6));
        CHECK(pieces == blind.pieces);
    }
}
