#include "catch.hpp"
#include "fluewright/advice/parts/cut_list.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <random>

using namespace fluewright;

namespace {

/// Tries every whole length of every piece of every straight out of every bar, straight after
/// straight; all measures of the task are whole. The order of the pieces in a straight is nothing,
/// so that their bars come in turn.
class Exhaustive {
public:
    explicit Exhaustive(const CutTask& task) : task_(task) {
        for (const BarLength& length : task.lengths) {
            for (std::size_t i = 0; i < length.at_hand.value_or(0); ++i) {
                bars_.push_back({&length, 0, 0});
            }
        }
        lay(0, whole(task.straights[0].between_m), 0, 0.0, 0);
    }

    [[nodiscard]] double least() const { return least_; }

    [[nodiscard]] int pieces() const { return pieces_; }

private:
    struct Open {
        const BarLength* length;
        int used;
        int count;
    };

    static int whole(double length_m) { return static_cast<int>(std::lround(length_m)); }

    void lay(std::size_t straight, int left, std::size_t from, double bought, int pieces) {
        if (bought > least_ + 1e-9 || (bought > least_ - 1e-9 && pieces >= pieces_)) {
            return;
        }
        if (left == 0) {
            if (straight + 1 == task_.straights.size()) {
                least_ = bought;
                pieces_ = pieces;
                return;
            }
            lay(straight + 1, whole(task_.straights[straight + 1].between_m), 0, bought, pieces);
            return;
        }
        for (std::size_t i = from; i < bars_.size(); ++i) {
            out_of(i, straight, left, bought, pieces);
        }
        for (const BarLength& length : task_.lengths) {
            if (!length.at_hand) {
                bars_.push_back({&length, 0, 0});
                out_of(bars_.size() - 1, straight, left, bought + length.cost, pieces);
                bars_.pop_back();
            }
        }
    }

    void out_of(std::size_t i, std::size_t straight, int left, double bought, int pieces) {
        const Open before = bars_[i];
        const BarLength& bar = *before.length;
        const int lap = whole(task_.straights[straight].lap_m);
        if (before.count > 0 && (!task_.shares || bar.telescopes())) {
            return;
        }
        for (int lays = left; lays >= 1; --lays) {
            // A piece is a stub unless it is all of its straight.
            const bool all = lays == whole(task_.straights[straight].between_m);
            const bool slides = bar.telescopes();
            if ((!slides && !all && lays < whole(task_.stub_m))
                || (slides && lays + lap < whole(bar.shortest_m))) {
                continue;
            }
            const int used =
                before.used + lays + lap + (before.count > 0 ? whole(task_.cut_loss_m) : 0);
            if (used > whole(bar.length_m)) {
                continue;
            }
            bars_[i] = {before.length, used, before.count + 1};
            lay(straight, left - lays, i + 1, bought, pieces + 1);
            bars_[i] = before;
        }
    }

    const CutTask& task_;
    std::vector<Open> bars_;
    double least_{std::numeric_limits<double>::infinity()};
    int pieces_{1 << 20};
};

/// Pieces put together give each straight; no bar is overfull, no more at hand than there are.
void check_sound(const CutTask& task, const CutPlan& plan) {
    std::map<std::size_t, double> laid_m;
    std::map<std::size_t, int> parts;
    std::vector<std::size_t> used(task.lengths.size());
    double bought = 0.0;
    int pieces = 0;
    int cuts = 0;
    for (const Bar& bar : plan.bars) {
        const BarLength& length = task.lengths[bar.length];
        double sum_m = task.cut_loss_m * static_cast<double>(bar.pieces.size() - 1);
        REQUIRE_FALSE(bar.pieces.empty());
        CHECK((task.shares || bar.pieces.size() == 1));
        for (const CutPiece& piece : bar.pieces) {
            laid_m[piece.straight] += piece.length_m - task.straights[piece.straight].lap_m;
            ++parts[piece.straight];
            sum_m += piece.length_m;
            ++pieces;
        }
        CHECK(sum_m <= length.length_m + 1e-5);
        if (length.telescopes()) {
            CHECK(bar.pieces.size() == 1);
            CHECK(bar.pieces.front().length_m >= length.shortest_m - 1e-6);
        } else {
            CHECK(bar.offcut_m == Approx(length.length_m - sum_m).margin(1e-5));
            cuts += static_cast<int>(bar.pieces.size()) - (bar.offcut_m > 1e-6 ? 0 : 1);
        }
        ++used[bar.length];
        bought += length.at_hand ? 0.0 : length.cost;
    }
    for (const Bar& bar : plan.bars) {
        for (const CutPiece& piece : bar.pieces) {
            const double lays_m = piece.length_m - task.straights[piece.straight].lap_m;
            CHECK((lays_m >= task.stub_m - 1e-6 || parts[piece.straight] == 1
                   || task.lengths[bar.length].telescopes()));
        }
    }
    CHECK(bought == Approx(plan.cost.bought).margin(1e-9));
    CHECK(pieces == plan.cost.pieces);
    CHECK(cuts == plan.cost.cuts);
    for (std::size_t i = 0; i < task.straights.size(); ++i) {
        if (std::count(plan.unfilled.begin(), plan.unfilled.end(), i) == 0) {
            CHECK(laid_m[i] == Approx(task.straights[i].between_m).margin(1e-5));
        }
    }
    for (std::size_t i = 0; i < used.size(); ++i) {
        CHECK(used[i] <= task.lengths[i].at_hand.value_or(used[i]));
    }
}

CutTask small_task(std::mt19937& random) {
    const auto upto = [&](unsigned most) { return static_cast<double>(1 + random() % most); };
    CutTask task;
    const double lap = static_cast<double>(random() % 2);
    const bool laps_differ = random() % 8 == 0;
    for (std::size_t i = 1 + random() % 3; i-- > 0;) {
        task.straights.push_back({upto(8), laps_differ ? static_cast<double>(random() % 2) : lap});
    }
    for (const double length : {3.0 + upto(2), 5.0 + upto(3)}) {
        task.lengths.push_back({length, {}, random() % 3 == 0 ? upto(9) : length, 0.0});
    }
    for (std::size_t kinds = random() % 3; kinds-- > 0;) {
        const double length = 2.0 + upto(5);
        const bool slides = random() % 4 == 0;
        task.lengths.push_back({length, 1 + random() % 2, 0.0, slides ? length - 2.0 + lap : 0.0});
    }
    task.cut_loss_m = random() % 3 == 0 ? 1.0 : 0.0;
    task.stub_m = upto(2);
    task.shares = random() % 5 != 0;
    return task;
}

CutTask job(std::vector<double> between_m, double lap_m) {
    CutTask task;
    for (const double b : between_m) {
        task.straights.push_back({b, lap_m});
    }
    task.cut_loss_m = 0.002;
    task.stub_m = 0.1;
    return task;
}

constexpr double inch_m = 0.0254;

CutTask inch_job(std::vector<double> between_in) {
    for (double& b : between_in) {
        b *= inch_m;
    }
    CutTask task = job(std::move(between_in), 2.0 * inch_m);
    for (const double length : {24.0, 36.0, 48.0}) {
        task.lengths.push_back({length * inch_m, {}, length * inch_m, 0.0});
    }
    return task;
}

} // namespace

TEST_CASE("no plan is beaten by an exhaustive search over every splitting") {
    std::mt19937 random{18};
    int planned = 0;
    for (int i = 0; i < 400; ++i) {
        const CutTask task = small_task(random);
        const CutPlan plan = plan_cuts(task);
        check_sound(task, plan);
        const Exhaustive blind(task);
        INFO("job " << i);
        if (blind.pieces() == 1 << 20) {
            CHECK_FALSE(plan.unfilled.empty());
            continue;
        }
        REQUIRE(plan.unfilled.empty());
        CHECK(plan.exact);
        CHECK(plan.cost.bought == Approx(blind.least()).margin(1e-6));
        CHECK(plan.cost.pieces == blind.pieces());
        ++planned;
    }
    CHECK(planned >= 300);
}

TEST_CASE("a box of short pieces is used before anything is bought") {
    CutTask task = inch_job({60.0});
    task.lengths.push_back({24.0 * inch_m, 10, 0.0, 0.0});
    const CutPlan plan = plan_cuts(task);
    check_sound(task, plan);
    CHECK(plan.bought_m == 0.0);
    CHECK(plan.cost.pieces == 3);
    CHECK(plan.cost.cuts == 1);
}

TEST_CASE("two straights share a length where that buys less") {
    // 22 in and 12 in with the saw's 2 mm come out of 36 in.
    const CutPlan shared = plan_cuts(inch_job({20.0, 10.0}));
    CHECK(shared.bought_m == Approx(36.0 * inch_m));
    CHECK(shared.bars.size() == 1);
    // Thick pipe has one socket for each length.
    CutTask thick = inch_job({20.0, 10.0});
    thick.shares = false;
    CHECK(plan_cuts(thick).bought_m == Approx(48.0 * inch_m));
}

TEST_CASE("a straight is parted where the lengths want it, with one cut and no stub") {
    CutTask task = job({1.03}, 0.05);
    for (const double length : {0.25, 0.5, 1.0}) {
        task.lengths.push_back({length, {}, length, 0.0});
    }
    const CutPlan plan = plan_cuts(task);
    check_sound(task, plan);
    CHECK(plan.bought_m == Approx(1.25));
    CHECK(plan.cost.cuts == 1);
    CHECK(plan_cuts(inch_job({46.0})).cost.cuts == 0);
}

TEST_CASE("a telescoping piece slides and is never cut") {
    CutTask task = job({0.5}, 0.05);
    task.lengths = {{1.0, {}, 1.0, 0.0}, {0.6, 1, 0.0, 0.4}};
    const CutPlan plan = plan_cuts(task);
    check_sound(task, plan);
    REQUIRE(plan.bars.size() == 1);
    CHECK(plan.bars[0].pieces[0].length_m == Approx(0.55));
    CHECK(plan.cost.cuts == 0);
    task.straights[0].between_m = 0.3; // shorter than it slides together
    CHECK(plan_cuts(task).bars[0].length == 0);
}

TEST_CASE("large jobs stay sound, and say so where nothing is shown to be best", "[many]") {
    std::mt19937 random{5};
    const auto share = [&] { return static_cast<double>(random() % 10000) / 10000.0; };
    for (int i = 0; i < 12; ++i) {
        CutTask task = inch_job({});
        for (std::size_t k = 4 + random() % 9; k-- > 0;) {
            task.straights.push_back({0.1 + 4.0 * share(), 2.0 * inch_m});
        }
        for (std::size_t k = random() % 6; k-- > 0;) {
            task.lengths.push_back({0.2 + share(), 1 + random() % 4, 0.0, 0.0});
        }
        task.cut_loss_m = 0.002;
        task.stub_m = 0.1;
        const CutPlan plan = plan_cuts(task);
        check_sound(task, plan);
        CHECK(plan.unfilled.empty());
    }
    CHECK(plan_cuts({}).bars.empty());
}

TEST_CASE("a long straight out of many short lengths is filled") {
    CutTask task = job({75.0, 0.8}, 2.0 * inch_m);
    task.lengths.push_back({24.0 * inch_m, {}, 24.0 * inch_m, 0.0});
    task.lengths.push_back({0.3, 40, 0.0, 0.0});
    const CutPlan plan = plan_cuts(task);
    check_sound(task, plan);
    CHECK(plan.unfilled.empty());
    CHECK(plan.cost.pieces > 130);
}
