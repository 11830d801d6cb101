#include "fluewright/model/resolve/structure.hpp"

#include <fmt/core.h>

namespace fluewright {

Faults stock_faults(const std::vector<StockPiece>& stock) {
    Faults faults;
    const auto add = [&](std::size_t i, std::string message, std::string help) {
        faults.push_back(
            {fmt::format("/stock/{}", i), std::move(message), {}, {}, std::move(help)});
    };
    for (std::size_t i = 0; i < stock.size(); ++i) {
        const StockPiece& piece = stock[i];
        const StockKind kind = piece.kind();
        const bool straight = kind == StockKind::straight;
        const bool changes = kind == StockKind::reducer || kind == StockKind::increaser
                             || kind == StockKind::adapter;
        if (straight && !piece.length_m) {
            add(i, "a straight of the stock lacks its `length`", "add \"length\": \"1 m\"");
        }
        if (!straight && !piece.count) {
            add(i,
                fmt::format("the {} of the stock does not say how many there are",
                            words_of(kind)[static_cast<std::size_t>(kind)]),
                "add \"count\": 1");
        }
        if (kind == StockKind::elbow && !piece.angle_rad) {
            add(i, "an elbow of the stock lacks its `angle`", "add \"angle\": \"90 deg\"");
        }
        if ((kind == StockKind::reducer || kind == StockKind::increaser)
            && (!piece.diameter_m || !piece.to_diameter_m)) {
            add(i,
                "what changes the size lacks one of its two sizes",
                "give `diameter` below and `to_diameter` above");
        }
        if (!changes && piece.to_diameter_m) {
            add(i,
                "`to_diameter` goes with a reducer, increaser or adapter only",
                "take it out, or say what `part` it is");
        }
        if (piece.shortest_m && piece.length_m && *piece.shortest_m >= *piece.length_m) {
            add(i,
                "a telescoping piece is not longer than its `shortest`",
                "`length` is how far it pulls out");
        }
    }
    return faults;
}

} // namespace fluewright
