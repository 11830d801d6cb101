#include "advice/parts/laying.hpp"
#include "whole_pieces.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::parts {
namespace {

WholePlan whole_out_of_box(const Job& job,
                           const std::vector<std::size_t>& owners,
                           const std::vector<BarLength>& lengths) {
    const CutPlan plan = out_of_box(job, owners, lengths, nullptr);
    WholePlan whole;
    whole.exact = plan.exact;
    for (std::size_t k = 0; k < owners.size(); ++k) {
        WholeFill fill{{}, job.list.stretches[owners[k]].off_m};
        for (const Bar& bar : plan.bars) {
            for (const CutPiece& piece : bar.pieces) {
                if (piece.straight == k) {
                    fill.pieces.push_back({bar.length, piece.length_m});
                }
            }
        }
        std::stable_sort(fill.pieces.begin(), fill.pieces.end(), [&](const auto& a, const auto& b) {
            const bool slides_a = lengths[a.length].telescopes();
            const bool slides_b = lengths[b.length].telescopes();
            return slides_a != slides_b ? slides_b : a.set_m > b.set_m;
        });
        whole.fills.push_back(std::move(fill));
    }
    return whole;
}

/// What is to be said of a stretch whose pieces cannot be cut.
std::string note_on_whole(const PipeStretch& stretch, bool from_box) {
    if (stretch.off_m < 0.0) {
        return stretch.pieces.empty() ? (from_box ? "nothing at hand fits it; it is short"
                                                  : "no length fills it; it is short")
                                      : "what is at hand leaves it short";
    }
    if (stretch.off_m > 0.0 && stretch.level) {
        return stretch.to_top ? "the chimney top is farther out than drawn"
                              : "no lengths make it up: set the heater farther off";
    }
    if (stretch.off_m > 0.0) {
        return stretch.to_top ? "the chimney top is higher than drawn"
                              : "no lengths make it up: it comes out longer than drawn, and so "
                                "the chimney top is higher";
    }
    if (!stretch.telescopes()) {
        return {};
    }
    const bool two =
        stretch.pieces.size() > 1 && stretch.pieces[stretch.pieces.size() - 2].telescopes;
    return two ? "the last two pieces telescope; set each to its length"
               : "the last piece telescopes; set it to its length";
}

} // namespace

void assemble(const Job& job, const PipeStretch& first, const Sold& shop) {
    const std::vector<std::size_t> owners = stretches_like(job, first);
    std::vector<WholeStraight> straights;
    for (const std::size_t i : owners) {
        const PipeStretch& stretch = job.list.stretches[i];
        straights.push_back(
            {stretch.between_m, stretch.to_top ? taller_is_fine_m : 0.0, stretch.must_slide});
    }
    const Lengths from = lengths_for(job, first, shop.lengths);
    const std::vector<BarLength>& lengths = from.bars;
    const WholePlan plan =
        job.from_box ? whole_out_of_box(job, owners, lengths) : plan_whole(straights, lengths);
    const double grid_m = sheet_grid_m(job.view.resolved.units);
    for (std::size_t k = 0; k < owners.size(); ++k) {
        PipeStretch& stretch = job.list.stretches[owners[k]];
        const WholeFill& fill = plan.fills[k];
        for (const WholePiece& piece : fill.pieces) {
            const BarLength& length = lengths[piece.length];
            const bool slides = length.telescopes();
            take(from.at_hand[piece.length]);
            stretch.pieces.push_back(
                {.length_m = slides ? std::round(piece.set_m / grid_m) * grid_m : piece.set_m,
                 .from_m = length.length_m,
                 .at_hand = length.at_hand.has_value(),
                 .is_cut = false,
                 .telescopes = slides});
        }
        stretch.off_m = std::abs(fill.off_m) > met_m ? fill.off_m : 0.0;
        stretch.note = note_on_whole(stretch, job.from_box);
    }
    job.list.bought_m += plan.bought_m;
    job.list.exact = job.list.exact && plan.exact;
}

} // namespace fluewright::parts
