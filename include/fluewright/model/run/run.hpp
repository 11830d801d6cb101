#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/fields/vocabulary.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The run, complete and typed: the one place that knows what a part is, where it stands and how it
/// meets its neighbors. Whoever needs to know something about the run asks here; resolve() makes
/// it.
namespace fluewright {

/// A value and whether the file gave it, here or by carrying on from a part before; else it was
/// assumed.
template <class T>
struct Known {
    T value{};
    bool given{};

    bool operator==(const Known&) const = default;
};

/// How a straight lies. Level: less than 30 degrees over level, up or down; upright: within 20
/// degrees of the plumb line, up or down.
enum class Lie : std::uint8_t { none, level, sloped, upright };

/// Share of rise over length from which a straight is no longer level: sin 30 degrees. Judgement.
inline constexpr double level_share_most = 0.5;

/// Share of rise over length from which a straight is upright: sin 70 degrees. Judgement.
inline constexpr double upright_share_least = 0.94;

/// How a straight of this length and rise lies [m, m]; none where there is no length.
[[nodiscard]] Lie lie_of(double length_m, double rise_m);

/// How a straight of the file goes; nothing of it where the part is none.
struct StraightShape {
    double length_m{};
    double rise_m{}; ///< negative where it goes down
    double plan_m{}; ///< level distance it covers
    Lie lie{};
};

[[nodiscard]] StraightShape shape_of(const Part& written);

/// Height of the end of a run of the file over its start [m].
[[nodiscard]] double rise_of(std::span<const Part> written);

/// Whether a part of this kind is there to change the size.
[[nodiscard]] constexpr bool changes_size(PartKind kind) {
    return kind == PartKind::reducer || kind == PartKind::increaser;
}

/// Whether a part holds a screen: one by itself, or that of a cap.
[[nodiscard]] constexpr bool has_screen(const Part& written) {
    return written.part == PartKind::screen
           || (written.part == PartKind::cap && (written.mesh_m || written.free_area));
}

/// Areas that differ by less than this share are one size. The nearest sizes of the two systems of
/// the trade, such as 6 in and 150 mm, differ by 3 %; makers' tolerances by half a percent.
/// Judgement.
inline constexpr double same_size_share = 0.01;

/// Whether two areas are of one trade size.
[[nodiscard]] constexpr bool is_same_size(double area_m2, double other_m2) {
    const double difference_m2 = area_m2 > other_m2 ? area_m2 - other_m2 : other_m2 - area_m2;
    return difference_m2 < same_size_share * (area_m2 > other_m2 ? other_m2 : area_m2);
}

/// Whether `area_m2` is smaller than `other_m2` by more than one size's tolerance.
[[nodiscard]] constexpr bool is_smaller_size(double area_m2, double other_m2) {
    return area_m2 < other_m2 && !is_same_size(area_m2, other_m2);
}

/// The bore of a part, clean: what it is sold by.
struct FlueBore {
    double diameter_m{}; ///< inside, of a round one; else of the circle of equal area
    double width_m{};    ///< 0 for a round one; of an oval one the long side
    double depth_m{};
    double area_m2{};
    double perimeter_m{};
    bool oval{};
    bool clay_liner{}; ///< that of a clay liner, of whatever shape

    [[nodiscard]] bool round() const { return width_m <= 0.0; }

    [[nodiscard]] bool rectangular() const { return !round() && !oval; }
};

[[nodiscard]] FlueBore round_bore(double diameter_m);
[[nodiscard]] FlueBore rectangular_bore(double width_m, double depth_m);

/// Two half circles of the short side and the straights between them; a circle where both sides are
/// alike. The trade makes no ellipse.
///
///   A = pi d^2/4 + d (w - d),  P = pi d + 2 (w - d)
///
/// Source   geometry   [derivation]
/// [theory eq. 72]
[[nodiscard]] FlueBore oval_bore(double one_side_m, double other_side_m);

/// What a size of the file comes to: a diameter, width and depth, or for an oval one of these with
/// the diameter of the round pipe of equal perimeter. Empty where the file gives no whole size, or
/// one that no pipe can be pressed to.
struct WrittenSize {
    Given diameter_m;
    Given width_m;
    Given depth_m;
    Choice<SectionShape> shape;
};

[[nodiscard]] std::optional<FlueBore> bore_of(const WrittenSize& size);

/// The size an entry of the run or the collar states.
template <class T>
[[nodiscard]] WrittenSize size_of(const T& written) {
    return {written.diameter_m, written.width_m, written.depth_m, written.shape};
}

/// The same bore with `thickness_m` of deposit on all its sides; no area where it is filled.
[[nodiscard]] FlueBore narrowed(const FlueBore& clean, double thickness_m);

/// The end of a part as it meets another.
using PartEnd = Known<PipeEnd>;

/// Thickness of the sheet of a gauge [m]: manufacturers' standard gauge, sheet steel, 41.82 lb/ft2
/// an inch; 0 outside 16 to 30. `gauge` need not be whole: between two gauges a straight line.
[[nodiscard]] double sheet_gauge_m(double gauge);

/// One part of the run.
struct RunPart {
    int index{}; ///< in the file's run, from 0
    PartKind kind{};
    Part written; ///< as the file has it: what it does not say is empty
    Known<Zone> zone;
    Known<Stretch> stretch;
    WallKind wall_kind{};
    bool wall_given{};
    std::size_t wall{}; ///< index into Case::walls
    FlueBore bore;      ///< behind the part, where it changes size
    Known<Build> build; ///< of an elbow or a cap
    Known<TeeFlow> flow;
    double turn_rad{}; ///< how far the gas turns in it
    bool turn_given{};
    bool cleanout{};
    /// Share of the section a damper leaves open when it is shut; empty where its loss is given
    /// instead.
    std::optional<double> open_when_shut;
    Lie lie{};
    double length_m{};
    double rise_m{};
    double plan_m{};        ///< level distance it covers
    double foot_height_m{}; ///< of its lower end over the outlet
    double top_height_m{};  ///< of its upper end over the outlet
    PartEnd heater_end;
    PartEnd chimney_end;
    double thickness_m{}; ///< of the inner sheet
    bool thickness_given{};
    std::size_t first_section{}; ///< index into Case::sections
    std::size_t section{};       ///< the one that is the part itself: a step may stand before it

    [[nodiscard]] bool has_length() const { return length_m > 0.0; }

    [[nodiscard]] bool level() const { return lie == Lie::level; }

    [[nodiscard]] bool in_chimney() const { return stretch.value == Stretch::chimney; }

    /// An open end is the bare end of the part below it: nothing that is put on, and no joint.
    [[nodiscard]] bool bare_end() const {
        return kind == PartKind::cap && build.value == Build::open;
    }

    [[nodiscard]] bool changes_size() const { return fluewright::changes_size(kind); }

    /// Whether its diameter can be chosen: round pipe that is not part of a masonry flue.
    [[nodiscard]] bool has_choice_of_size() const {
        return bore.round() && !bore.clay_liner && wall_kind != WallKind::masonry;
    }

    /// JSON pointer of one of its keys: "/run/2/clearance".
    [[nodiscard]] std::string pointer(std::string_view key) const;

    /// Whether it goes through this: true where the file says so or its zone does, false where the
    /// file says that it goes through something else, empty where nothing tells.
    [[nodiscard]] std::optional<bool> goes_through(Passage passage) const;
};

/// Whether there is a wall between two pieces of pipe that follow each other: the first leads level
/// out of the building, whatever the file says that they pass.
[[nodiscard]] inline bool leads_out_through_wall(const RunPart& before, const RunPart& behind) {
    return before.level() && before.zone.value != Zone::outdoors
           && behind.zone.value == Zone::outdoors;
}

/// "elbow 2"; "the chimney top" for a cap: parts are numbered as in the file, from 1.
[[nodiscard]] std::string label(const RunPart& part);

/// The collar of the appliance, where the run begins.
struct Collar {
    FlueBore bore;
    PartEnd end;
};

struct Run {
    Collar collar;
    std::vector<RunPart> parts; ///< in the order of the file

    /// The part of this index in the file; null for the outlet (-1) and an open end that the file
    /// does not mention.
    [[nodiscard]] const RunPart* part(int index) const {
        return index >= 0 && static_cast<std::size_t>(index) < parts.size()
                   ? &parts[static_cast<std::size_t>(index)]
                   : nullptr;
    }

    /// "elbow 2", "the chimney top", "the outlet": the label of a part by its index in the file.
    [[nodiscard]] std::string label_at(int index) const;

    /// The parts of one stretch, the cap left out.
    [[nodiscard]] std::vector<const RunPart*> of(Stretch stretch) const;

    /// Index of the first part of the chimney; the number of parts where there is none.
    [[nodiscard]] std::size_t chimney_start() const;

    /// Sum of the turns of one stretch [rad], and how many there are.
    struct Turns {
        double sum_rad{};
        int count{};
        const RunPart* last{};
    };

    [[nodiscard]] Turns turns(Stretch stretch) const;

    /// The nearest part with a length before or behind a part; null where there is none.
    [[nodiscard]] const RunPart* straight_before(const RunPart& part) const;
    [[nodiscard]] const RunPart* straight_behind(const RunPart& part) const;

    /// The last part with a length, where the flue ends; null where there is none.
    [[nodiscard]] const RunPart* last_straight() const;

    /// Height of the chimney top over the outlet [m].
    [[nodiscard]] double rise_m() const { return parts.empty() ? 0.0 : parts.back().top_height_m; }
};

/// Whether the chimney has walls outdoors below the roof: where it leaves the house sideways, or
/// where clearly more of it stands outdoors than over the roof. A chimney that goes up in the house
/// has its head alone outdoors.
[[nodiscard]] bool has_walls_outdoors(const Run& run, const Given& top_above_roof_m);

enum class LinerCover : std::uint8_t { bare, insulated };

/// Whether a round liner of this inside diameter [m] goes down all the masonry of a run, with room
/// for its sheet and for the wrap of an insulated one. False where there is no masonry.
[[nodiscard]] bool liner_goes_in(const Run& run, double diameter_m, LinerCover cover);

/// The wall of the liner for it: insulated where the wrap goes in too, else bare; empty where
/// neither goes in.
[[nodiscard]] std::string_view liner_that_goes_in(const Run& run, double diameter_m);

} // namespace fluewright
