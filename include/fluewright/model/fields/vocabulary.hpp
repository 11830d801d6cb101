#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <type_traits>

/// The closed vocabularies of an installation. Each is an enumeration from the reader on, and each
/// has its words written down once, in words_of(): reader, writer, schema and reports all take them
/// from here. Free text is for titles and names only; names of fuels, walls, fittings and liners
/// are rows of the catalog or of the user's own.
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

enum class FuelGroup : std::uint8_t { wood, pellets, coal, oil, gas };

enum class ApplianceType : std::uint8_t { stove, fireplace, furnace, boiler, draft_hood };

enum class ApplianceStyle : std::uint8_t {
    radiant,
    jacketed,
    fireplace_stove,
    furnace,
    boiler,
    lined_range,
    unlined_range,
};

enum class BurnRateBasis : std::uint8_t { as_fired, dry };

enum class EfficiencyBasis : std::uint8_t { net, gross };

enum class FloorKind : std::uint8_t { burnable, noncombustible };

enum class FloorBuild : std::uint8_t { sheet, slab, close_masonry, hollow_masonry };

enum class PipeEnd : std::uint8_t {
    plain,   ///< cut square; takes a crimped end, goes into a socket
    crimped, ///< drawn in to go into a plain end or a socket
    socket,  ///< widened; takes a plain or crimped end
    flange,
    locking, ///< twist-lock of one make of pipe
    open,    ///< a hole in masonry with a thimble: takes any pipe; no end a file can name
};

/// How an elbow or a cap is made.
enum class Build : std::uint8_t { smooth, gored, mitred, open, plain, rain };

enum class TeeFlow : std::uint8_t { side, straight };

enum class DepositKind : std::uint8_t { soot, flaky_creosote, glazed_creosote, ash };

/// What a part goes through.
enum class Passage : std::uint8_t { nothing, wall, floor, ceiling, attic, closet, roof };

/// How a part goes through a wall that burns.
enum class PassThrough : std::uint8_t {
    brick,
    insulated_length,
    ventilated_thimble,
    larger_insulated_length,
    wood_cut_back,
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

enum class NearThingKind : std::uint8_t { building, opening, tree };

enum class RoofCovering : std::uint8_t { tiles, metal, felt, thatch, shingles };

enum class HouseSide : std::uint8_t { windward, lee };

enum class ChimneyTopPosition : std::uint8_t { clear, near_ridge, adverse };

enum class RuleSet : std::uint8_t { us, uk, ca, au, de, none };

enum class FileUnits : std::uint8_t { metric, us };

/// Where or when smoke comes into the room.
enum class SmokePlace : std::uint8_t { joints, door, lighting, wind, fan, none };

enum class TroubleCourse : std::uint8_t { over_weeks, overnight, steady };

enum class SmokeStick : std::uint8_t { in, out, still };

enum class LookedAt : std::uint8_t { cap, flue, joints, damper, door_seal, baffle, sizes };

enum class FoundState : std::uint8_t { good, bad };

enum class WindowState : std::uint8_t { open, shut };

enum class FanState : std::uint8_t { running, off };

enum class WindState : std::uint8_t { windy, calm };

/// The ways of firing in which a run must work.
enum class StateKind : std::uint8_t {
    high_fire,        ///< flow set by the high burn rate
    low_fire,         ///< flow set by the low burn rate
    free_burn,        ///< the flow at which run and appliance balance
    door_open_high,   ///< loading door open on a high fire
    door_open_embers, ///< loading door open on embers: the reload
    standing,         ///< no fire
    cold_start,       ///< the first minutes of kindling, walls still cold
};

/// The words of a vocabulary, in the order of its enumerators: words_of(Zone{}).
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

[[nodiscard]] constexpr auto words_of(FuelGroup) {
    return std::to_array<std::string_view>({"wood", "pellets", "coal", "oil", "gas"});
}

[[nodiscard]] constexpr auto words_of(ApplianceType) {
    return std::to_array<std::string_view>(
        {"stove", "fireplace", "furnace", "boiler", "draft-hood"});
}

[[nodiscard]] constexpr auto words_of(ApplianceStyle) {
    return std::to_array<std::string_view>({"radiant",
                                            "jacketed",
                                            "fireplace stove",
                                            "furnace",
                                            "boiler",
                                            "range with lined firepot",
                                            "range with unlined firepot"});
}

[[nodiscard]] constexpr auto words_of(BurnRateBasis) {
    return std::to_array<std::string_view>({"as fired", "dry"});
}

[[nodiscard]] constexpr auto words_of(EfficiencyBasis) {
    return std::to_array<std::string_view>({"net", "gross"});
}

[[nodiscard]] constexpr auto words_of(FloorKind) {
    return std::to_array<std::string_view>({"burnable", "noncombustible"});
}

[[nodiscard]] constexpr auto words_of(FloorBuild) {
    return std::to_array<std::string_view>({"sheet", "slab", "close masonry", "hollow masonry"});
}

[[nodiscard]] constexpr auto words_of(PipeEnd) {
    return std::to_array<std::string_view>(
        {"plain", "crimped", "socket", "flange", "locking", "open"});
}

[[nodiscard]] constexpr auto words_of(Build) {
    return std::to_array<std::string_view>({"smooth", "gored", "mitred", "open", "plain", "rain"});
}

[[nodiscard]] constexpr auto words_of(TeeFlow) {
    return std::to_array<std::string_view>({"side", "straight"});
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

[[nodiscard]] constexpr auto words_of(NearThingKind) {
    return std::to_array<std::string_view>({"building", "opening", "tree"});
}

[[nodiscard]] constexpr auto words_of(RoofCovering) {
    return std::to_array<std::string_view>({"tiles", "metal", "felt", "thatch", "shingles"});
}

[[nodiscard]] constexpr auto words_of(HouseSide) {
    return std::to_array<std::string_view>({"windward", "lee"});
}

[[nodiscard]] constexpr auto words_of(ChimneyTopPosition) {
    return std::to_array<std::string_view>({"clear", "near ridge", "adverse"});
}

[[nodiscard]] constexpr auto words_of(RuleSet) {
    return std::to_array<std::string_view>({"us", "uk", "ca", "au", "de", "none"});
}

[[nodiscard]] constexpr auto words_of(FileUnits) {
    return std::to_array<std::string_view>({"metric", "us"});
}

[[nodiscard]] constexpr auto words_of(SmokePlace) {
    return std::to_array<std::string_view>({"joints", "door", "lighting", "wind", "fan", "none"});
}

[[nodiscard]] constexpr auto words_of(TroubleCourse) {
    return std::to_array<std::string_view>({"over weeks", "overnight", "steady"});
}

[[nodiscard]] constexpr auto words_of(SmokeStick) {
    return std::to_array<std::string_view>({"in", "out", "still"});
}

[[nodiscard]] constexpr auto words_of(LookedAt) {
    return std::to_array<std::string_view>(
        {"cap", "flue", "joints", "damper", "door seal", "baffle", "sizes"});
}

[[nodiscard]] constexpr auto words_of(FoundState) {
    return std::to_array<std::string_view>({"good", "bad"});
}

[[nodiscard]] constexpr auto words_of(WindowState) {
    return std::to_array<std::string_view>({"open", "shut"});
}

[[nodiscard]] constexpr auto words_of(FanState) {
    return std::to_array<std::string_view>({"running", "off"});
}

[[nodiscard]] constexpr auto words_of(WindState) {
    return std::to_array<std::string_view>({"windy", "calm"});
}

[[nodiscard]] constexpr auto words_of(StateKind) {
    return std::to_array<std::string_view>({"high fire",
                                            "low fire",
                                            "free burn",
                                            "door open, high fire",
                                            "door open, embers",
                                            "standing",
                                            "cold start"});
}

/// A vocabulary: an enumeration whose words are written down above.
template <class E>
concept Vocabulary = std::is_enum_v<E> && requires(E word) {
    words_of(word);
};

template <Vocabulary E>
inline constexpr auto vocabulary_words = words_of(E{});

/// The words of a vocabulary as a view that lasts.
template <Vocabulary E>
[[nodiscard]] constexpr std::span<const std::string_view> all_words() {
    return vocabulary_words<E>;
}

/// The words from one value to another, both counted in.
template <Vocabulary E>
[[nodiscard]] constexpr std::span<const std::string_view> words_between(E first, E last) {
    const auto from = static_cast<std::size_t>(first);
    return all_words<E>().subspan(from, static_cast<std::size_t>(last) - from + 1);
}

/// The word of a value; "?" for a number that is no value of the enumeration, which a program that
/// builds an installation could make by a cast and which check_structure() refuses.
template <Vocabulary E>
[[nodiscard]] constexpr std::string_view name(E value) {
    const auto words = all_words<E>();
    const auto index = static_cast<std::size_t>(value);
    return index < words.size() ? words[index] : std::string_view{"?"};
}

/// The place of a word among some; empty for a word that is none of them.
[[nodiscard]] constexpr std::optional<std::size_t>
place_of(std::string_view word, std::span<const std::string_view> words) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == word) {
            return i;
        }
    }
    return std::nullopt;
}

/// The value of a word; empty for a word that is none of them.
template <Vocabulary E>
[[nodiscard]] constexpr std::optional<E> from_word(std::string_view word) {
    const auto place = place_of(word, all_words<E>());
    return place ? std::optional{static_cast<E>(*place)} : std::nullopt;
}

/// A value that an embedded table writes as its word. An unknown word stops the compiler.
template <Vocabulary E>
class Worded {
public:
    // Implicit both ways: a row is written with the word and read as the value.
    // NOLINTNEXTLINE(google-explicit-constructor,hicpp-explicit-conversions)
    consteval Worded(const char* word) : value_{from_word<E>(word).value()} {}

    // NOLINTNEXTLINE(google-explicit-constructor,hicpp-explicit-conversions)
    constexpr operator E() const { return value_; }

    [[nodiscard]] constexpr E value() const { return value_; }

private:
    E value_;
};

} // namespace fluewright
