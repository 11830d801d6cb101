#pragma once

#include "fluewright/model/fields/given.hpp"

/// What can be cut and bought.
namespace fluewright {

/// Pipe at hand, or a length the shop sells.
struct StockPiece {
    Word wall;
    Given diameter_m;
    Given length_m;
    Given shortest_m; ///< of a telescoping piece
    Given count;      ///< left out: as many as wanted, to be bought

    bool operator==(const StockPiece&) const = default;
};

} // namespace fluewright
