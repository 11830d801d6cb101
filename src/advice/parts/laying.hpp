#pragma once

#include "stretches.hpp"

#include <vector>

/// What the stretches of one pipe can be made of.
namespace fluewright::parts {

/// What is met closer than this is met.
inline constexpr double met_m = 0.0025;

/// Pipe of one wall and size that is joined in the same way.
[[nodiscard]] bool same_pipe(const Job& job, const PipeStretch& a, const PipeStretch& b);

/// The stretches of one pipe that something lies in.
[[nodiscard]] std::vector<std::size_t> stretches_like(const Job& job, const PipeStretch& first);

/// What a stretch can be made of: the lengths sold, and those at hand.
struct Lengths {
    std::vector<BarLength> bars;
    std::vector<StockPiece*> at_hand; ///< of each; null of what is sold
};

[[nodiscard]] Lengths
lengths_for(const Job& job, const PipeStretch& first, std::vector<BarLength> sold);

/// Takes one out of the box; of what is sold nothing.
void take(StockPiece* piece);

/// A plan of the stretches of one pipe out of what is at hand alone; what each is off is told in
/// it. `sawn`: how the pipe is cut; null of pipe that may not be cut.
[[nodiscard]] CutPlan out_of_box(const Job& job,
                                 const std::vector<std::size_t>& owners,
                                 const std::vector<BarLength>& lengths,
                                 const CutTask* sawn);

/// Pipe that may not be cut: the stretches of the wall and size of `first`.
void assemble(const Job& job, const PipeStretch& first, const Sold& shop);

} // namespace fluewright::parts
