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
    const std::vector<double>& had; ///< counts of the stock before anything was taken
    const PiecePrices& prices;
    bool thermometer{}; ///< asked for
    bool from_box{};    ///< no pipe is bought
    const Solution& solution;
    const Findings& findings; ///< what is not met of the run
};

/// What an adapter adds to the length of the run, and a reducer whose length the file does not
/// tell. Judgement: hold the real one against it.
inline constexpr double adapter_lays_m = 0.1;

/// Least that one of several pieces lays. Judgement: less is hard to hold, crimp and screw.
inline constexpr double stub_m = 0.1;

/// What a chimney may stand higher at its top so that nothing must be cut or telescope: a foot.
/// Judgement.
inline constexpr double taller_is_fine_m = 0.31;

/// "inch" or "metric", by the nearest trade size.
[[nodiscard]] std::string_view system_of(double diameter_m, UnitSystem units);

/// What the shop sells of one kind of pipe.
struct Sold {
    std::vector<BarLength> lengths; ///< bought, as many as wanted
    double lap_m{};
    bool cut{};
};

[[nodiscard]] Sold sold(const Job& job, const PipeStretch& stretch);

/// Whether nothing of it is pieced together: liner, but for rigid liner, which comes in lengths
/// with a crimped end as single-wall pipe does. Common practice, no source.
[[nodiscard]] bool is_one_piece(const PipeStretch& stretch);

/// The step of the measure-and-cut sheet: 1/16 in or 1 mm.
[[nodiscard]] double sheet_grid_m(UnitSystem units);

void stretches(const Job& job);     ///< face to face
void cuts(const Job& job);          ///< pieces, and which comes out of what
void growth(const Job& job);        ///< when hot, and which stretches must slide
void settle_growth(const Job& job); ///< once pieces lie in them: what slides
void pipe_lines(const Job& job);    ///< pipe and fittings, with their weight
void small_lines(const Job& job);   ///< screws, supports, adapters, sealant, cap
void price_lines(const Job& job);   ///< what the user's prices say of each line

} // namespace fluewright::parts
