#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/parts/parts_list.hpp"

#include <optional>
#include <string>
#include <vector>

/// Several layouts side by side, and which of them to build.
namespace fluewright {

/// One layout, checked.
struct Layout {
    std::string name;     ///< as the file is called
    Installation written; ///< as the file has it
    Assessment assessment;
    Score score;

    // Of the run:
    double rise_m{};        ///< chimney top over outlet
    double pipe_m{};        ///< along the pipe
    double level_m{};       ///< of pipe that goes further across than up
    double turns_rad{};     ///< of all elbows and tees together
    double least_area_m2{}; ///< narrowest pipe
    std::string sizes;      ///< inside diameters of the straights, in order
    std::size_t failures{}; ///< findings that are a danger or a failure, by their own severity
    std::size_t warnings{};

    PartsList parts;        ///< parts_list(), what is at hand left out of what is bought
    double pieces_bought{}; ///< of pipe, fittings and supports: all that has a diameter
};

/// A part of which the layouts do not buy alike.
struct PartDifference {
    std::string what;
    std::string size;
    std::string unit;           ///< as of a PartsLine
    std::vector<double> counts; ///< of each layout
};

struct Comparison {
    std::vector<Layout> layouts;    ///< in the order given
    std::size_t best{};             ///< index of the one to build, or of the nearest
    std::vector<std::size_t> tied;  ///< others that come to the same as the best
    bool alike{};                   ///< all of them come to the same
    std::string sentence;           ///< which and why, and what would speak for the next
    std::vector<std::string> added; ///< what was added to which file, so that all are held alike
};

/// A checked installation as a layout, with what is bought for it by these prices; the assessment
/// needs no size search.
/// [theory eq. 44]
[[nodiscard]] Layout layout_of(std::string name,
                               Installation written,
                               Assessment assessment,
                               const PiecePrices& prices = {});

/// What is bought for some of the layouts and not for others, or in another count, in the order of
/// the lists of parts.
[[nodiscard]] std::vector<PartDifference> part_differences(const Comparison& made);

/// Chooses among at least two layouts.
///
/// Order    those that work before those that do not, of both those with fewer dangers that count,
///          and of those that work the ones with fewer dangers and faults; then by what the
///          tightest state has to spare, of which more than `spare_wanted_share` counts as enough;
///          then fewer warnings, less cost where prices tell it, less pipe, fewer pieces to buy.
///          Of what is alike in all of these none is better.
[[nodiscard]] Comparison compare(std::vector<Layout> layouts);

} // namespace fluewright
