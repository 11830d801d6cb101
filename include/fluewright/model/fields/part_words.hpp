#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

/// The closed vocabularies of the run: what a part is, where it stands, how it is made and joined.
/// Each has its words in words_of(), in the order of its enumerators.
namespace fluewright {

enum class PartKind : std::uint8_t {
    straight,
    elbow,
    tee,
    reducer,
    increaser,
    damper,
    screen,
    cap,
    obstruction,
    fitting,
    draft_regulator,
    draft_hood,
    collar, ///< of the appliance; no part of the file
};

enum class Zone : std::uint8_t { room, attic, chase, outdoors };

inline constexpr std::size_t zone_count = 4;

/// Which of the run's two stretches a part belongs to.
enum class Stretch : std::uint8_t { connector, chimney };

enum class WallKind : std::uint8_t { single, double_wall, insulated, masonry, liner };

/// Walls that chimneys are built of; the others are those of connectors.
[[nodiscard]] constexpr bool is_chimney_wall(WallKind kind) {
    return kind == WallKind::insulated || kind == WallKind::masonry || kind == WallKind::liner;
}

enum class PipeEnd : std::uint8_t {
    plain,   ///< cut square; takes a crimped end, goes into a socket
    crimped, ///< drawn in to go into a plain end or a socket
    socket,  ///< widened; takes a plain or crimped end
    flange,
    locking, ///< twist-lock of one make of pipe
    open,    ///< a hole in masonry with a thimble: takes any pipe; no end a file can name
};

/// How an elbow or a cap is made.
enum class Build : std::uint8_t { smooth, gored, mitered, open, plain, rain };

enum class TeeFlow : std::uint8_t { side, straight };

/// Section of a flue with a width and a depth; a round one has a diameter.
enum class SectionShape : std::uint8_t {
    rectangular,
    oval, ///< two half circles and the straights between them
};

enum class DepositKind : std::uint8_t { soot, flaky_creosote, glazed_creosote, ash };

/// What a part goes through.
enum class Passage : std::uint8_t { nothing, wall, floor, ceiling, attic, closet, roof };

/// What no stovepipe goes through; a wall it passes by a system made for it.
inline constexpr std::array floors_and_roofs{
    Passage::floor, Passage::ceiling, Passage::attic, Passage::closet, Passage::roof};

/// How a part goes through a wall.
enum class PassThrough : std::uint8_t {
    brick,
    insulated_length,
    ventilated_thimble,
    larger_insulated_length,
    wood_cut_back,
    noncombustible_wall, ///< nothing in it burns
    listed_system,       ///< listed with the pipe, which goes by its label
    none,
};

enum class ChimneyRating : std::uint8_t { ht, c650, other };

/// Fit of a joint, or the European tightness class of the wall.
enum class JointFit : std::uint8_t { sealed, tight, ordinary, loose, n1, n2, p1, p2, h1 };

[[nodiscard]] constexpr bool is_tightness_class(JointFit fit) {
    return fit >= JointFit::n1;
}

enum class Shield : std::uint8_t {
    brick,
    board_on_batts,
    sheet_steel_on_batts,
    spaced_brick,
    sheet_steel,
    board,
    two_sheets,
    batts_between_sheets,
};

[[nodiscard]] constexpr auto words_of(PartKind) {
    return std::to_array<std::string_view>({"straight",
                                            "elbow",
                                            "tee",
                                            "reducer",
                                            "increaser",
                                            "damper",
                                            "screen",
                                            "cap",
                                            "obstruction",
                                            "fitting",
                                            "draft regulator",
                                            "draft hood",
                                            "outlet"});
}

[[nodiscard]] constexpr auto words_of(Zone) {
    return std::to_array<std::string_view>({"room", "attic", "chase", "outdoors"});
}

[[nodiscard]] constexpr auto words_of(Stretch) {
    return std::to_array<std::string_view>({"connector", "chimney"});
}

[[nodiscard]] constexpr auto words_of(WallKind) {
    return std::to_array<std::string_view>({"single", "double", "insulated", "masonry", "liner"});
}

[[nodiscard]] constexpr auto words_of(PipeEnd) {
    return std::to_array<std::string_view>(
        {"plain", "crimped", "socket", "flange", "locking", "open"});
}

[[nodiscard]] constexpr auto words_of(Build) {
    return std::to_array<std::string_view>({"smooth", "gored", "mitered", "open", "plain", "rain"});
}

[[nodiscard]] constexpr auto words_of(TeeFlow) {
    return std::to_array<std::string_view>({"side", "straight"});
}

[[nodiscard]] constexpr auto words_of(SectionShape) {
    return std::to_array<std::string_view>({"rectangular", "oval"});
}

[[nodiscard]] constexpr auto words_of(DepositKind) {
    return std::to_array<std::string_view>({"soot", "flaky creosote", "glazed creosote", "ash"});
}

[[nodiscard]] constexpr auto words_of(Passage) {
    return std::to_array<std::string_view>(
        {"nothing", "wall", "floor", "ceiling", "attic", "closet", "roof"});
}

[[nodiscard]] constexpr auto words_of(PassThrough) {
    return std::to_array<std::string_view>({"brick",
                                            "insulated length",
                                            "ventilated thimble",
                                            "larger insulated length",
                                            "wood cut back",
                                            "noncombustible wall",
                                            "listed system",
                                            "none"});
}

[[nodiscard]] constexpr auto words_of(ChimneyRating) {
    return std::to_array<std::string_view>({"HT", "650 degC", "other"});
}

[[nodiscard]] constexpr auto words_of(JointFit) {
    return std::to_array<std::string_view>(
        {"sealed", "tight", "ordinary", "loose", "N1", "N2", "P1", "P2", "H1"});
}

[[nodiscard]] constexpr auto words_of(Shield) {
    return std::to_array<std::string_view>({"brick",
                                            "board on batts",
                                            "sheet steel on batts",
                                            "spaced brick",
                                            "sheet steel",
                                            "board",
                                            "two sheets",
                                            "batts between sheets"});
}

} // namespace fluewright
