#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/advice/parts/cut_list.hpp"
#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/advice/parts/piece_prices.hpp"
#include "fluewright/core/fault.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// From a run to what is bought, cut and put together.
namespace fluewright {

/// One piece of pipe as it is laid.
struct StretchPiece {
    double length_m{}; ///< overall, lap counted; of a telescoping piece, as set
    double from_m{};   ///< of the length it is or comes out of
    bool at_hand{};
    bool is_cut{};
    bool telescopes{};
};

/// An unbroken way of pipe of one wall and size between two fittings.
struct PipeStretch {
    std::vector<int> parts; ///< indices in the run
    std::string place;      ///< "straight 1", "straights 2 to 4"
    std::string wall;
    WallKind kind{}; ///< of the wall
    double diameter_m{};
    double drawn_m{};   ///< from centre to centre of the turns, as in the file
    double rise_m{};    ///< of that, upwards
    double between_m{}; ///< from face to face of the fittings
    double lap_m{};     ///< how far each piece goes into the next
    bool to_top{};
    bool level{};
    /// Hot it grows and both its ends are held, so that a piece of it must slide.
    bool must_slide{};
    bool has_slip_joint{};            ///< by the file
    std::vector<StretchPiece> pieces; ///< heater end first
    /// How much longer it comes out than drawn where no pieces make it up; shorter, under 0, where
    /// they do not reach.
    double off_m{};
    std::string note;
    std::string size; ///< as bore_name()

    [[nodiscard]] bool telescopes() const {
        return !pieces.empty() && pieces.back().telescopes; // it lies last
    }

    /// How much higher the chimney top comes by what it is off.
    [[nodiscard]] double lifts_m() const { return drawn_m > 0.0 ? off_m * rise_m / drawn_m : 0.0; }
};

/// The end of a length that a cut is measured from, and that the piece keeps.
enum class MeasuredEnd : std::uint8_t { crimped, socket, plain, either };

[[nodiscard]] std::string_view name(MeasuredEnd end);

/// One piece to cut.
struct Cut {
    std::string place;
    std::string wall;
    std::string size;
    std::size_t piece{}; ///< in the stretch, from 1 at the heater
    double length_m{};   ///< overall, lap counted; on the grid of the sheet
    double from_m{};     ///< length of the stock it comes out of
    std::size_t stock{}; ///< which of the lengths that are cut, from 1
    std::size_t turn{};  ///< which piece out of that length, from 1
    double rest_m{};     ///< what that length is before this cut
    bool at_hand{};
    bool from_offcut{};  ///< it is not the first out of that stock
    MeasuredEnd from{};  ///< the end to measure from; the piece keeps it
    bool crimp{};        ///< whether its other end is crimped after the cut
    std::string measure; ///< the same in words
};

/// The source of a line that nothing but the custom of the trade asks for.
inline constexpr std::string_view trade_practice = "practice"; // a key of the sources

struct PartsLine {
    std::string what{};
    std::string size{};
    double count{1.0};
    std::string unit{}; ///< "" for pieces, "kg", "m"
    double weight_kg{}; ///< of all of them; 0 where not estimated
    std::string where{};
    bool at_hand{};
    std::string why{};    ///< a sentence; empty where the run itself names the part
    std::string source{}; ///< of that: a key of the sources, or "trade practice"
    double diameter_m{};  ///< of a round part; 0 where it has none
    double length_m{};    ///< of one length of pipe
    bool pipe{};          ///< a length of pipe
    bool in_run{};        ///< the gas flows through it: without it the run stands open
    bool telescopes{};
    std::optional<double> price{}; ///< of all of them, by the user's prices
};

/// A length of pipe the shop sells, as the plan could have chosen it.
struct PricedLength {
    std::string wall;
    double diameter_m{};
    double length_m{};
    bool telescopes{};
};

/// How much an unbroken stretch grows when hot, and where it can go.
struct Growth {
    std::string place;
    double length_m{};
    double grows_m{};
    double mean_wall_k{};
    bool free{}; ///< something takes it up
    std::string where;
};

struct CutGroup {
    std::string wall;
    double diameter_m{};
    CutPlan plan;
    std::vector<BarLength> lengths;
    std::string size; ///< as bore_name()
};

/// What is not used of what is at hand.
struct LeftInBox {
    std::string what;
    std::string size;
    double count{};
    std::string why;
};

struct PartsList {
    std::vector<PresentDanger> dangers; ///< nothing on the list cures them
    std::string not_decided;            ///< fire_not_decided() of the run
    std::string falls_short;            ///< what keeps it from drawing; empty where nothing does
    std::vector<PartsLine> lines;
    std::vector<PipeStretch> stretches;
    std::vector<Cut> cuts;
    std::vector<CutGroup> groups;
    std::vector<Growth> growth;
    JointReport joints;
    double weight_kg{};
    double bought_m{};
    double offcut_m{};
    bool exact{true};
    bool from_box{}; ///< nothing of pipe is bought
    std::vector<LeftInBox> left_in_box;
    std::vector<PricedLength> sold;
    std::string currency;             ///< of the prices, as the user writes it
    std::optional<double> price;      ///< of all that is priced and bought; empty without prices
    std::size_t unpriced{};           ///< lines to buy that have no price
    std::vector<std::string> assumed; ///< sentences
};

/// What is wrong with stock for this run: pipe whose wall is not known, or not told. Pointers begin
/// at /stock.
[[nodiscard]] Faults
box_faults(const std::vector<StockPiece>& stock, const Installation& written, const Case& resolved);

/// What is known beside the file.
struct PartsWishes {
    std::vector<StockPiece> at_hand; ///< adds to the stock of the file
    PiecePrices prices;              ///< empty: the least length is bought
    bool thermometer{};              ///< whether one is asked for
    bool from_box{};                 ///< no pipe is bought: what the pieces at hand give alone
};

/// Stock that box_faults() finds fault with is not used.
/// Lengths come from the file's stock without a count,
/// else from the catalog by kind of wall and system of sizes.
///
/// Notes  Turns take their centre-to-face from the stretches beside them. All stretches of one
///        pipe are planned together by plan_cuts(); lengths are then rounded to the grid of the
///        sheet so that the sum of a stretch is off by no more than one step. Pipe that may not be
///        cut (double-wall, factory-built) is made up of fixed lengths and one telescoping piece; a
///        stretch that ends at the chimney top may stand a little taller instead. A liner is one
///        piece.
[[nodiscard]] PartsList parts_list(const Installation& written,
                                   const Case& resolved,
                                   const Solution& solution,
                                   const PartsWishes& wishes = {});

/// The same of a run that has been checked already.
[[nodiscard]] PartsList parts_list(const Installation& written,
                                   const Assessment& assessment,
                                   const PartsWishes& wishes = {});

/// Mass of a wall per length of flue [kg/m], from its layers; of a liner, its own sheet alone.
[[nodiscard]] double wall_mass_kg_m(const WallBuild& wall, double inside_diameter_m);

} // namespace fluewright
