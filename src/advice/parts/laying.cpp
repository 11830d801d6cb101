#include "laying.hpp"

#include "box.hpp"
#include "box_plan.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace fluewright::parts {

bool same_pipe(const Job& job, const PipeStretch& a, const PipeStretch& b) {
    return a.wall == b.wall && a.size == b.size && is_socketed(job, a) == is_socketed(job, b);
}

std::vector<std::size_t> stretches_like(const Job& job, const PipeStretch& first) {
    constexpr double nothing_m = 0.002;
    std::vector<std::size_t> alike;
    for (std::size_t i = 0; i < job.list.stretches.size(); ++i) {
        const PipeStretch& stretch = job.list.stretches[i];
        if (same_pipe(job, stretch, first) && stretch.between_m > nothing_m) {
            alike.push_back(i);
        }
    }
    return alike;
}

CutPlan out_of_box(const Job& job,
                   const std::vector<std::size_t>& owners,
                   const std::vector<BarLength>& lengths,
                   const CutTask* sawn) {
    BoxTask task{.straights = {},
                 .lengths = lengths,
                 .cuts = sawn != nullptr,
                 .pieced = sawn == nullptr || !is_one_piece(job.list.stretches[owners.front()]),
                 .shares = sawn != nullptr && sawn->shares,
                 .cut_loss_m = sawn != nullptr ? sawn->cut_loss_m : 0.0,
                 .stub_m = sawn != nullptr ? sawn->stub_m : 0.0};
    for (const std::size_t i : owners) {
        const PipeStretch& s = job.list.stretches[i];
        task.straights.push_back(
            {s.between_m, s.lap_m, s.to_top && sawn == nullptr ? taller_is_fine_m : 0.0});
    }
    constexpr double sawn_met_m = 0.0005;
    const double near_m = sawn != nullptr ? sawn_met_m : met_m;
    BoxPlan plan = plan_from_box(task);
    for (std::size_t k = 0; k < owners.size(); ++k) {
        const double off_m = plan.off_m[k];
        job.list.stretches[owners[k]].off_m = std::abs(off_m) > near_m ? off_m : 0.0;
    }
    return std::move(plan.plan);
}

Lengths lengths_for(const Job& job, const PipeStretch& first, std::vector<BarLength> sold) {
    Lengths lengths{std::move(sold), {}};
    lengths.at_hand.resize(lengths.bars.size(), nullptr);
    const bool socketed = is_socketed(job, first);
    for (StockPiece& piece : job.stock) {
        const bool any = piece.count && *piece.count >= 0.5;
        if (any && why_not(piece, first, socketed, job.view.resolved.units).empty()) {
            lengths.bars.push_back({.length_m = *piece.length_m,
                                    .at_hand = static_cast<std::size_t>(std::lround(*piece.count)),
                                    .cost = 0.0,
                                    .shortest_m = piece.shortest_m.value_or(0.0)});
            lengths.at_hand.push_back(&piece);
        }
    }
    return lengths;
}

void take(StockPiece* piece) {
    if (piece != nullptr) {
        *piece->count -= 1.0;
    }
}

} // namespace fluewright::parts
