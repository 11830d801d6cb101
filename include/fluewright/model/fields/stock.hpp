#pragma once

#include "fluewright/model/fields/given.hpp"
#include "fluewright/model/fields/part_words.hpp"

#include <array>
#include <cstdint>
#include <string_view>

/// What can be cut and bought.
namespace fluewright {

/// What lies in a box of pipe.
enum class StockKind : std::uint8_t {
    straight,
    elbow,
    tee,
    reducer,
    increaser,
    adapter,
    damper,
    cap,
    thimble,
};

[[nodiscard]] constexpr auto words_of(StockKind) {
    return std::to_array<std::string_view>({"straight",
                                            "elbow",
                                            "tee",
                                            "reducer",
                                            "increaser",
                                            "adapter",
                                            "damper",
                                            "cap",
                                            "thimble"});
}

/// Pipe and fittings at hand, or a length the shop sells.
struct StockPiece {
    Choice<StockKind> part; ///< left out: a straight
    Word wall;
    Given diameter_m;
    Given to_diameter_m; ///< at the chimney end of a reducer, increaser or adapter
    Given length_m;      ///< of a straight
    Given shortest_m;    ///< of a telescoping piece
    Given angle_rad;     ///< of an elbow
    Choice<PipeEnd> heater_end;
    Choice<PipeEnd> chimney_end;
    Given count; ///< left out: as many as wanted, to be bought

    [[nodiscard]] StockKind kind() const { return part.value_or(StockKind::straight); }

    bool operator==(const StockPiece&) const = default;
};

} // namespace fluewright
