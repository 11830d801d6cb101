#include "catch.hpp"
#include "fluewright/advice/parts/cut_list.hpp"

#include <algorithm>
#include <limits>
#include <random>
#include <set>

using namespace fluewright;

namespace {

/// Tries every way of putting the pieces into bars, one piece after the other.
class Exhaustive {
public:
    explicit Exhaustive(const CutTask& task) : task_(task) {
        for (const BarLength& length : task.lengths) {
            (length.at_hand ? hand_ : sold_).push_back(length);
        }
        for (const BarLength& length : hand_) {
            for (std::size_t i = 0; i < *length.at_hand; ++i) {
                bars_.push_back({length.length_m, 0.0, 0, false});
            }
        }
        place(0, 0.0);
    }

    [[nodiscard]] double least_m() const { return least_m_; }

private:
    struct Open {
        double length_m;
        double used_m;
        std::size_t count;
        bool bought;
    };

    void place(std::size_t item, double bought_m) {
        if (bought_m >= least_m_ - 1e-9) {
            return;
        }
        if (item == task_.wanted_m.size()) {
            least_m_ = bought_m;
            return;
        }
        const double wanted_m = task_.wanted_m[item];
        for (std::size_t i = 0; i < bars_.size(); ++i) {
            const Open before = bars_[i];
            const double used_m =
                before.used_m + wanted_m + (before.count > 0 ? task_.cut_loss_m : 0.0);
            if (used_m <= before.length_m + 1e-6 && before.count < task_.most_per_bar) {
                bars_[i].used_m = used_m;
                ++bars_[i].count;
                place(item + 1, bought_m);
                bars_[i] = before;
            }
        }
        for (const BarLength& length : sold_) {
            if (wanted_m <= length.length_m + 1e-6) {
                bars_.push_back({length.length_m, wanted_m, 1, true});
                place(item + 1, bought_m + length.length_m);
                bars_.pop_back();
            }
        }
    }

    const CutTask& task_;
    std::vector<BarLength> hand_;
    std::vector<BarLength> sold_;
    std::vector<Open> bars_;
    double least_m_{std::numeric_limits<double>::infinity()};
};

/// Every piece in one bar, no bar overfull, no more at hand than there are.
void check_sound(const CutTask& task, const CutPlan& plan) {
    std::multiset<std::size_t> seen;
    std::vector<std::size_t> used(task.lengths.size());
    double bought_m = 0.0;
    for (const Bar& bar : plan.bars) {
        double sum_m = 0.0;
        for (const std::size_t item : bar.items) {
            seen.insert(item);
            sum_m += task.wanted_m[item];
        }
        sum_m += task.cut_loss_m * static_cast<double>(bar.items.size() - 1);
        CHECK(sum_m <= task.lengths[bar.length].length_m + 1e-6);
        CHECK(bar.items.size() <= task.most_per_bar);
        CHECK(bar.offcut_m == Approx(task.lengths[bar.length].length_m - sum_m).margin(1e-6));
        ++used[bar.length];
        bought_m += task.lengths[bar.length].at_hand ? 0.0 : task.lengths[bar.length].length_m;
    }
    CHECK(bought_m == Approx(plan.bought_m));
    CHECK(seen.size() + plan.too_long.size() == task.wanted_m.size());
    CHECK(std::set<std::size_t>(seen.begin(), seen.end()).size() == seen.size());
    for (std::size_t i = 0; i < used.size(); ++i) {
        CHECK(used[i] <= task.lengths[i].at_hand.value_or(used[i]));
    }
}

CutTask random_task(std::mt19937& random, std::size_t pieces) {
    CutTask task;
    const auto share = [&] { return static_cast<double>(random() % 10000) / 10000.0; };
    task.lengths = {{0.6096, {}}, {0.9144, {}}, {1.2192, {}}};
    if (random() % 2 == 0) {
        task.lengths.push_back({0.4 + 0.8 * share(), random() % 3});
    }
    task.cut_loss_m = random() % 2 == 0 ? 0.0 : 0.003;
    for (std::size_t i = 0; i < pieces; ++i) {
        task.wanted_m.push_back(0.1 + 0.9 * share());
    }
    return task;
}

} // namespace

TEST_CASE("no plan of up to nine pieces buys more than an exhaustive search") {
    std::mt19937 random{3};
    for (int i = 0; i < 120; ++i) {
        const CutTask task = random_task(random, 1 + random() % 9);
        const CutPlan plan = plan_cuts(task);
        check_sound(task, plan);
        CHECK(plan.exact);
        CHECK(plan.bought_m == Approx(Exhaustive(task).least_m()).margin(1e-6));
    }
}

TEST_CASE("nor does one of ten to twelve pieces") {
    std::mt19937 random{11};
    for (std::size_t pieces = 10; pieces <= 12; ++pieces) {
        CutTask task = random_task(random, pieces);
        std::sort(task.wanted_m.rbegin(), task.wanted_m.rend());
        const CutPlan plan = plan_cuts(task);
        check_sound(task, plan);
        CHECK(plan.exact);
        CHECK(plan.bought_m == Approx(Exhaustive(task).least_m()).margin(1e-6));
    }
}

TEST_CASE("larger jobs stay sound and near the least that can be bought") {
    std::mt19937 random{5};
    for (int i = 0; i < 10; ++i) {
        const CutTask task = random_task(random, 13 + random() % 25);
        const CutPlan plan = plan_cuts(task);
        check_sound(task, plan);
        CHECK_FALSE(plan.exact);
        double wanted_m = 0.0;
        for (const double length_m : task.wanted_m) {
            wanted_m += length_m;
        }
        CHECK(plan.bought_m < 1.25 * wanted_m + 1.2192);
    }
}

TEST_CASE("an offcut without an end serves no second piece") {
    const CutTask task{{0.3, 0.3, 0.3}, {{1.0, {}}, {0.5, {}}}, 0.0, 1};
    const CutPlan plan = plan_cuts(task);
    check_sound(task, plan);
    CHECK(plan.bars.size() == 3);
    CHECK(plan.bought_m == Approx(1.5));
}

TEST_CASE("pieces at hand come first, and too long a piece is said") {
    const CutTask task{{0.5, 0.4, 3.0}, {{1.0, {}}, {0.95, 1}}, 0.0, 99};
    const CutPlan plan = plan_cuts(task);
    check_sound(task, plan);
    CHECK(plan.bought_m == Approx(0.0));
    CHECK(plan.too_long == std::vector<std::size_t>{2});
    CHECK(plan_cuts({}).bars.empty());
}
