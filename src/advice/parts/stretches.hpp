#pragma once

#include "advice/checks/view.hpp"
#include "fluewright/advice/parts/parts_list.hpp"

/// The steps of parts_list().
namespace fluewright::parts {

/// What every step reads, and the list it adds to.
struct Job {
    const checking::View& view;
    std::vector<StockPiece>& stock; ///< of the file and at hand; whole pieces used are taken off
    PartsList& list;
};

/// "inch" or "metric", by the nearest trade size.
[[nodiscard]] std::string_view system_of(double diameter_m, UnitSystem units);

/// What the shop sells of one kind of pipe.
struct Sold {
    std::vector<FixedLength> lengths;
    double lap_m{};
    bool cut{};
};

[[nodiscard]] Sold sold(const Job& job, const PipeStretch& stretch);

/// Whether a piece of the stock is of the wall and size of a stretch.
[[nodiscard]] bool fits(const StockPiece& piece, const PipeStretch& stretch);

void stretches(const Job& job);   ///< face to face, pieces
void cuts(const Job& job);        ///< which piece comes out of what
void growth(const Job& job);      ///< when hot
void pipe_lines(const Job& job);  ///< pipe and fittings, with their weight
void small_lines(const Job& job); ///< screws, supports, adapters, sealant, cap

} // namespace fluewright::parts
