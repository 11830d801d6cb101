// What a box gives alone, against a search that tries every whole measure.
#include "advice/parts/box_plan.hpp"
#include "catch.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <tuple>

using namespace fluewright;
using fluewright::parts::BoxPlan;
using fluewright::parts::BoxTask;
using fluewright::parts::plan_from_box;

namespace {

BarLength held(double length_m, std::size_t count, double shortest_m = 0.0) {
    return {.length_m = length_m, .at_hand = count, .cost = 0.0, .shortest_m = shortest_m};
}

/// What is off, straights off, pieces.
using Weight = std::tuple<int, int, int>;

/// Every way to cut every piece into whole measures for every straight.
class BlindBox {
public:
    explicit BlindBox(const BoxTask& task) : task_(task) {
        for (const BarLength& length : task.lengths) {
            for (std::size_t n = 0; n < *length.at_hand; ++n) {
                bars_.push_back(static_cast<int>(length.length_m));
            }
        }
        for (const auto& straight : task.straights) {
            open_.push_back(static_cast<int>(straight.between_m));
            shortest_.emplace_back();
        }
        cut(0, bars_.empty() ? 0 : bars_[0], 0);
    }

    [[nodiscard]] const Weight& least() const { return least_; }

private:
    /// A straight takes one piece of a bar at most, so that they come in turn.
    void cut(std::size_t bar, int rest, std::size_t first) {
        if (bar == bars_.size()) {
            weigh();
            return;
        }
        cut(bar + 1, bar + 1 < bars_.size() ? bars_[bar + 1] : 0, 0);
        const int lap = static_cast<int>(task_.straights[0].lap_m);
        for (std::size_t i = first; i < open_.size(); ++i) {
            for (int lays = 1; lays <= std::min(open_[i], rest - lap); ++lays) {
                open_[i] -= lays;
                shortest_[i].push_back(lays);
                cut(bar, rest - lays - lap - static_cast<int>(task_.cut_loss_m), i + 1);
                shortest_[i].pop_back();
                open_[i] += lays;
            }
        }
    }

    void weigh() {
        Weight weight{0, 0, 0};
        auto& [off, straights, pieces] = weight;
        for (std::size_t i = 0; i < open_.size(); ++i) {
            const auto& laid = shortest_[i];
            const bool alone = laid.size() == 1 && open_[i] == 0;
            if (!laid.empty() && !alone
                && *std::min_element(laid.begin(), laid.end()) < static_cast<int>(task_.stub_m)) {
                return;
            }
            off += open_[i];
            straights += open_[i] > 0 ? 1 : 0;
            pieces += static_cast<int>(laid.size());
        }
        least_ = std::min(least_, weight);
    }

    const BoxTask& task_;
    std::vector<int> bars_;
    std::vector<int> open_;
    std::vector<std::vector<int>> shortest_;
    Weight least_{1000, 0, 0};
};

Weight weight_of(const BoxPlan& plan, const BoxTask& task) {
    Weight weight{0, 0, 0};
    std::vector<int> laid(task.straights.size());
    for (const Bar& bar : plan.plan.bars) {
        for (const CutPiece& piece : bar.pieces) {
            ++laid[piece.straight];
        }
    }
    for (std::size_t i = 0; i < laid.size(); ++i) {
        std::get<0>(weight) += static_cast<int>(std::lround(-plan.off_m[i]));
        std::get<1>(weight) += plan.off_m[i] < -0.5 ? 1 : 0;
        std::get<2>(weight) += laid[i];
    }
    return weight;
}

} // namespace

TEST_CASE("no way to lay a box comes nearer by a blind search") {
    std::mt19937 random{5};
    for (int job = 0; job < 400; ++job) {
        BoxTask task{.straights = {}, .lengths = {}, .cuts = true, .shares = true};
        task.cut_loss_m = static_cast<double>(random() % 2);
        task.stub_m = static_cast<double>(random() % 3);
        const double lap_m = static_cast<double>(random() % 3);
        for (std::size_t n = 1 + random() % 3; n-- > 0;) {
            task.straights.push_back({static_cast<double>(2 + random() % 4), lap_m, 0.0});
        }
        const std::size_t most = task.straights.size() > 2 ? 2 : 3;
        for (std::size_t n = 1 + random() % most; n-- > 0;) {
            task.lengths.push_back(held(static_cast<double>(3 + random() % 5), 1));
        }
        const BoxPlan plan = plan_from_box(task);
        const BlindBox blind(task);
        INFO("job " << job);
        CHECK(plan.exact);
        const auto [off, straights, pieces] = weight_of(plan, task);
        const auto [least_off, least_straights, least_pieces] = blind.least();
        INFO(off << " off of " << least_off << ", " << straights << " straights of "
                 << least_straights << ", " << pieces << " pieces of " << least_pieces << ", lap "
                 << lap_m << ", stub " << task.stub_m << ", loss " << task.cut_loss_m);
        CHECK(weight_of(plan, task) <= blind.least());
        // And it lays what it says.
        std::vector<double> laid_m(task.straights.size());
        for (const Bar& bar : plan.plan.bars) {
            double used_m = -task.cut_loss_m;
            for (const CutPiece& piece : bar.pieces) {
                laid_m[piece.straight] += piece.length_m - lap_m;
                used_m += piece.length_m + task.cut_loss_m;
            }
            CHECK(used_m <= task.lengths[bar.length].length_m + 1e-9);
        }
        for (std::size_t i = 0; i < laid_m.size(); ++i) {
            CHECK(laid_m[i] == Approx(task.straights[i].between_m + plan.off_m[i]).margin(1e-9));
        }
    }
}

TEST_CASE("pipe that may not be cut comes as near as its lengths and what slides allow") {
    BoxTask task{.straights = {{1.0, 0.0, 0.0}}, .lengths = {held(0.5, 1), held(0.4, 1)}};
    CHECK(plan_from_box(task).off_m[0] == Approx(-0.1));
    task.lengths = {held(0.5, 2), held(1.2, 1)};
    CHECK(plan_from_box(task).off_m[0] == Approx(0.0).margin(1e-9));
    task.lengths = {held(0.7, 1), held(1.2, 1)}; // a little longer is nearer than much shorter
    CHECK(plan_from_box(task).off_m[0] == Approx(0.2));
    task.lengths = {held(0.7, 1), held(0.4, 1, 0.27)};
    const BoxPlan slides = plan_from_box(task);
    CHECK(slides.off_m[0] == Approx(0.0).margin(1e-9));
    CHECK(slides.plan.bars[1].pieces[0].length_m == Approx(0.3));
    task.straights[0].may_exceed_m = 0.31; // at the chimney top a foot more is as good
    task.lengths = {held(0.5, 1), held(1.2, 1)};
    CHECK(plan_from_box(task).off_m[0] == Approx(0.2));
    CHECK(plan_from_box(task).plan.bars.size() == 1);
}

TEST_CASE("what is short is shared out of the box, and a liner is never pieced") {
    BoxTask task{.straights = {{2.0, 0.05, 0.0}, {0.5, 0.05, 0.0}},
                 .lengths = {held(1.0, 1), held(0.6, 1)},
                 .cuts = true,
                 .shares = true};
    const BoxPlan plan = plan_from_box(task);
    // 0.95 + 0.55 m whole in the first; a cut for the second would waste a lap.
    CHECK(plan.off_m[0] + plan.off_m[1] == Approx(-1.0));
    CHECK(plan.plan.unfilled == std::vector<std::size_t>{1});
    task.pieced = false;
    task.straights.resize(1);
    CHECK(plan_from_box(task).off_m[0] == Approx(-1.05));
    task.lengths.clear();
    CHECK(plan_from_box(task).plan.unfilled.size() == 1);
    CHECK(plan_from_box({}).off_m.empty());
}
