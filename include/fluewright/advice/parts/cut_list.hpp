#pragma once

#include <cstddef>
#include <optional>
#include <vector>

/// Which pieces come out of which lengths, so that the least is bought.
namespace fluewright {

/// A length the shop sells, or pieces at hand.
struct BarLength {
    double length_m{};
    std::optional<std::size_t> at_hand; ///< how many; empty: bought, as many as wanted
};

struct Bar {
    std::size_t length{};           ///< index into the lengths
    std::vector<std::size_t> items; ///< indices into the wanted pieces, longest first
    double offcut_m{};
};

struct CutPlan {
    std::vector<Bar> bars; ///< pieces at hand first
    double bought_m{};
    double offcut_m{};
    bool exact{true};                  ///< no plan buys less
    std::vector<std::size_t> too_long; ///< pieces that come out of no length
};

struct CutTask {
    std::vector<double> wanted_m;
    std::vector<BarLength> lengths;
    double cut_loss_m{};          ///< taken by each cut between two pieces
    std::size_t most_per_bar{99}; ///< 1 where an offcut lacks the end it would need
};

/// Up to this many pieces are planned exactly.
inline constexpr std::size_t most_exact_pieces = 12;

/// Least bought length, then fewest bars. Exact by dynamic programming over the sets of pieces up
/// to most_exact_pieces; beyond, best fit of the longest first, then every pair of bars planned
/// anew until none gets better.
/// [theory eq. 40]
[[nodiscard]] CutPlan plan_cuts(const CutTask& task);

} // namespace fluewright
