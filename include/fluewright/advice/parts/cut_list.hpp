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
    double cost{};                      ///< of one that is bought: its price, or else its length
    /// Shortest it slides together, of a telescoping piece, which is never cut; 0 of any other.
    double shortest_m{};

    [[nodiscard]] bool telescopes() const { return shortest_m > 0.0; }
};

/// A way of straight pipe to be filled, from face to face of its fittings.
struct CutStraight {
    double between_m{};
    double lap_m{}; ///< how far each of its pieces goes into the next
};

/// One piece of a straight.
struct CutPiece {
    std::size_t straight{};
    double length_m{}; ///< overall, lap counted
};

struct Bar {
    std::size_t length{};         ///< index into the lengths
    std::vector<CutPiece> pieces; ///< that with the factory end first
    double offcut_m{};
};

/// What a plan is weighed by, the first figure first.
struct CutCost {
    double bought{}; ///< sum of the costs of what is bought
    int pieces{};    ///< in all straights
    int cuts{};      ///< strokes of the saw

    [[nodiscard]] bool better_than(const CutCost& other) const;
};

struct CutPlan {
    std::vector<Bar> bars; ///< pieces at hand first
    CutCost cost;
    double bought_m{};
    double offcut_m{};
    bool exact{true};                  ///< shown that no plan buys less
    std::vector<std::size_t> unfilled; ///< straights that no lengths fill
};

struct CutTask {
    std::vector<CutStraight> straights;
    std::vector<BarLength> lengths;
    double cut_loss_m{}; ///< taken by each cut between two pieces
    double stub_m{};     ///< least that a piece of several lays; a straight shorter than it is one
    /// False where an offcut lacks the end it would need, so that a length gives one piece.
    bool shares{true};
};

/// All straights of one pipe planned together: least bought, then fewest pieces, then fewest cuts.
///
/// Notes  Pieces are of any length: a straight is not parted beforehand. Straights that share
///        lengths are a group; pieces between c lengths and d straights that form no ring are
///        c + d - 1, so that a group fits once sum(length - lap) >= sum(between) + (d - 1)(lap +
///        loss); whether the shortest pieces allow it is a flow with lower bounds. Branch and bound
///        over the groups and what each takes. `exact` is false where the search was broken off
///        after a fixed amount of work.
/// [theory eq. 40]
[[nodiscard]] CutPlan plan_cuts(const CutTask& task);

} // namespace fluewright
