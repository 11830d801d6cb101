#pragma once

#include "fluewright/advice/parts/cut_list.hpp"

#include <vector>

/// Straights made up of pieces that may not be cut.
namespace fluewright::parts {

/// A straight to be made up.
struct WholeStraight {
    double between_m{};
    /// How much longer is as good as met: what the chimney top may stand higher.
    double may_exceed_m{};
    /// A telescoping piece is wanted in it, to take up what it grows.
    bool slides{};
};

struct WholePiece {
    std::size_t length{}; ///< index into the lengths
    double set_m{};       ///< its length; of a telescoping piece, as set
};

struct WholeFill {
    std::vector<WholePiece> pieces; ///< longest first, a telescoping one last
    double off_m{};                 ///< longer than asked; negative where no pieces are
};

struct WholePlan {
    std::vector<WholeFill> fills; ///< one for each straight
    double bought_m{};
    bool exact{true}; ///< shown that no choice buys less and meets the straights as well
};

/// Pieces for all straights of one pipe together: least off in sum, then least bought, then fewest
/// pieces; where a straight wants a piece that slides, that goes before what is bought. A straight
/// is met within 2 mm; where no pieces meet it, the next longer sum stands. A telescoping piece is
/// bought only where fixed ones do not meet a straight or it wants one; two stand in a straight
/// only where one does not meet it.
///
/// Notes  Sums of what is sold by dynamic programming in tenths of a millimetre; pieces at hand,
///        of which there are so many, by branch and bound.
/// [theory eq. 40]
[[nodiscard]] WholePlan plan_whole(const std::vector<WholeStraight>& straights,
                                   const std::vector<BarLength>& lengths);

} // namespace fluewright::parts
