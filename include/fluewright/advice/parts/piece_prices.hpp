#pragma once

#include "fluewright/model/fields/given.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the parts of a run cost where the user buys.
namespace fluewright {

/// Of pipe by its wall, or of anything else by its name in the list of parts.
struct PiecePrice {
    Word wall;
    Word what;
    Given diameter_m;  ///< left out, of any size
    Given length_m;    ///< of one length sold
    bool telescopes{}; ///< that length does
    std::optional<double> each;
    std::optional<double> per_metre;
};

struct PiecePrices {
    std::string currency; ///< as the user writes it
    std::vector<PiecePrice> prices;

    /// Of a length of pipe: that of this length, else by its length. Empty where nothing prices it.
    [[nodiscard]] std::optional<double>
    of_length(std::string_view wall, double diameter_m, double length_m, bool telescopes) const;

    /// Of one of anything else (a kilogram of what is weighed), by its name.
    [[nodiscard]] std::optional<double> of_part(std::string_view what, double diameter_m) const;
};

} // namespace fluewright
