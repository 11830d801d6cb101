#pragma once

#include "fluewright/advice/parts/cut_list.hpp"
#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <optional>
#include <string>
#include <vector>

/// From a run to what is bought, cut and put together.
namespace fluewright {

/// An unbroken way of pipe of one wall and size between two fittings.
struct PipeStretch {
    std::vector<int> parts; ///< indices in the run
    std::string place;      ///< "straight 1", "straights 2 to 4"
    std::string wall;
    WallKind kind{}; ///< of the wall
    double diameter_m{};
    double drawn_m{};   ///< from centre to centre of the turns, as in the file
    double between_m{}; ///< from face to face of the fittings
    double lap_m{};     ///< how far each piece goes into the next
    bool to_mouth{};
    bool level{};
    std::vector<double> pieces_m; ///< overall lengths, heater end first
    std::size_t at_hand{};        ///< so many of them, from the first, need not be bought
    bool telescopes{};            ///< the last piece does
    /// How much longer (or shorter) it comes out than drawn, where no pieces make it up.
    double off_m{};
    std::string note;
    std::string size; ///< as bore_name()
};

/// One piece to cut.
struct Cut {
    std::string place;
    std::size_t piece{}; ///< in the stretch, from 1 at the heater
    double length_m{};   ///< overall, lap counted
    double from_m{};     ///< length of the stock it comes out of
    bool at_hand{};
    bool from_offcut{};  ///< it is not the first out of that stock
    std::string measure; ///< from which end, and what is kept
};

struct PartsLine {
    std::string what;
    std::string size;
    double count{1.0};
    std::string unit;   ///< "" for pieces, "kg", "m"
    double weight_kg{}; ///< of all of them; 0 where not estimated
    std::string where;
    bool at_hand{};
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

struct PartsList {
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
    std::vector<std::string> assumed; ///< sentences
};

/// `at_hand` adds to the stock of the file. Lengths come from the file's stock without a count,
/// else from the catalog by kind of wall and system of sizes.
///
/// Notes  Turns take their centre-to-face from the stretches beside them. Pieces are as few as the
///        longest length allows, no stub shorter than 100 mm; cuts by plan_cuts() over the whole
///        job. Pipe that may not be cut (double-wall, factory-built) is made up of fixed lengths
///        and one telescoping piece; a stretch that ends at the mouth may stand a little taller
///        instead.
[[nodiscard]] PartsList parts_list(const Installation& written,
                                   const Case& resolved,
                                   const Solution& solution,
                                   const std::vector<StockPiece>& at_hand);

/// Mass of a wall per length of flue [kg/m], from its layers; of a liner, its own sheet alone.
[[nodiscard]] double wall_mass_kg_m(const WallBuild& wall, double inside_diameter_m);

/// Lengths that make up `between_m` out of fixed ones with at most one telescoping piece.
struct MadeUp {
    std::vector<double> pieces_m; ///< telescoping piece last, as set
    bool telescopes{};
    double off_m{}; ///< longer than asked
};

struct FixedLength {
    double length_m{};
    double shortest_m{}; ///< of a telescoping piece; else as length_m
};

/// Fewest pieces that meet `between_m` within 2 mm; else the next longer. `may_exceed_m`: how much
/// longer is as good as a telescoping piece.
[[nodiscard]] MadeUp
make_up(double between_m, const std::vector<FixedLength>& lengths, double may_exceed_m);

} // namespace fluewright
