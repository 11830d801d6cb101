#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/catalog/default_id.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <concepts>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

/// The table of input fields. One row says all there is to say about one key of the file; reader,
/// error texts, JSON Schema and docs/input.md are made from these rows.
namespace fluewright {

/// The kinds of part as bits, so that a row can name several.
namespace part_kind {
/// The bit of a kind a file can have; 0 for any other.
[[nodiscard]] constexpr unsigned bit(PartKind kind) {
    return kind < PartKind::collar ? 1U << static_cast<unsigned>(kind) : 0U;
}

inline constexpr unsigned straight = bit(PartKind::straight);
inline constexpr unsigned elbow = bit(PartKind::elbow);
inline constexpr unsigned tee = bit(PartKind::tee);
inline constexpr unsigned reducer = bit(PartKind::reducer);
inline constexpr unsigned increaser = bit(PartKind::increaser);
inline constexpr unsigned damper = bit(PartKind::damper);
inline constexpr unsigned screen = bit(PartKind::screen);
inline constexpr unsigned cap = bit(PartKind::cap);
inline constexpr unsigned obstruction = bit(PartKind::obstruction);
inline constexpr unsigned fitting = bit(PartKind::fitting);
inline constexpr unsigned draft_regulator = bit(PartKind::draft_regulator);
inline constexpr unsigned draft_hood = bit(PartKind::draft_hood);
inline constexpr unsigned any = (1U << static_cast<unsigned>(PartKind::collar)) - 1U;

/// The words of the kinds a file can have, in the order of the bits.
[[nodiscard]] constexpr std::span<const std::string_view> names() {
    return words_between(PartKind::straight, PartKind::draft_hood);
}

/// "straight, elbow or tee"
[[nodiscard]] std::string list(unsigned kinds);
} // namespace part_kind

/// The kinds whose rows hold for an object: that of the part itself, all for one that does not say.
[[nodiscard]] constexpr unsigned kinds_of(const Part& part) {
    const unsigned kind = part.part ? part_kind::bit(*part.part) : 0U;
    return kind == 0U ? part_kind::any : kind;
}

template <class T>
[[nodiscard]] constexpr unsigned kinds_of(const T& /*object*/) {
    return part_kind::any;
}

/// Where the words come from that a field accepts.
enum class Words { any_text, choices, fuels, walls, clay_liners, fittings, materials };

struct FieldInfo {
    std::string_view key{};
    Kind kind{Kind::number};
    double lowest{0.0};       ///< SI
    double highest{0.0};      ///< SI
    bool above_lowest{false}; ///< the lowest value itself is not allowed
    std::string_view limit_reason{};
    Words words{Words::any_text};
    std::span<const std::string_view> choices{};
    unsigned parts{part_kind::any};  ///< the kinds of part that have this field
    bool required{false};            ///< structurally: the file cannot be read without it
    bool carries_on{false};          ///< a part that leaves it out has the value of the part before
    bool may_be_whole_number{false}; ///< a word that may also be a count, without quotes
    bool whole{false};               ///< a number that counts things
    std::string_view meaning{};
    std::string_view example{};            ///< as written between the quotes
    std::optional<DefaultId> default_id{}; ///< taken where it is left out
};

/// A member that holds a value of a closed vocabulary, whichever that is: its value is the place of
/// the word among all words of the vocabulary. A program may have cast a number that is no place.
template <class T>
struct ChoiceMember {
    std::span<const std::string_view> words;
    std::optional<std::size_t> (*get)(const T& object);
    void (*set)(T& object, std::optional<std::size_t> place);
};

/// Whether two rows describe one member of the object.
template <class T>
[[nodiscard]] constexpr bool operator==(const ChoiceMember<T>& one, const ChoiceMember<T>& other) {
    return one.get == other.get;
}

template <class T>
using Member = std::variant<Given T::*, Word T::*, Flag T::*, HighLow T::*, ChoiceMember<T>>;

template <class T>
struct Field {
    FieldInfo info;
    Member<T> member;
};

/// The rows of one object of the file, in the order of the reference.
template <class T>
[[nodiscard]] std::span<const Field<T>> fields();

template <>
std::span<const Field<Installation>> fields();
template <>
std::span<const Field<Site>> fields();
template <>
std::span<const Field<Room>> fields();
template <>
std::span<const Field<Weather>> fields();
template <>
std::span<const Field<House>> fields();
template <>
std::span<const Field<Fan>> fields();
template <>
std::span<const Field<HouseOpening>> fields();
template <>
std::span<const Field<Appliance>> fields();
template <>
std::span<const Field<FuelChoice>> fields();
template <>
std::span<const Field<Outlet>> fields();
template <>
std::span<const Field<Door>> fields();
template <>
std::span<const Field<Firebox>> fields();
template <>
std::span<const Field<Part>> fields();
template <>
std::span<const Field<OwnFuel>> fields();
template <>
std::span<const Field<OwnWall>> fields();
template <>
std::span<const Field<OwnLayer>> fields();
template <>
std::span<const Field<OwnFitting>> fields();
template <>
std::span<const Field<Observation>> fields();
template <>
std::span<const Field<BurnEntry>> fields();

template <>
std::span<const Field<NearThing>> fields();
template <>
std::span<const Field<Roof>> fields();
template <>
std::span<const Field<Alarms>> fields();
template <>
std::span<const Field<Clearances>> fields();
template <>
std::span<const Field<FloorProtection>> fields();
template <>
std::span<const Field<HearthWall>> fields();
template <>
std::span<const Field<Building>> fields();
template <>
std::span<const Field<BuildingPart>> fields();
template <>
std::span<const Field<StockPiece>> fields();

/// A key that holds an object, a list of objects, or objects under names of the user's own.
struct ChildInfo {
    std::string_view key;
    std::string_view meaning;
    bool required{false};
    std::string_view bare_key{}; ///< a bare text instead of the object stands for this key of it
    std::size_t most{};          ///< of a list: entries it may have
};

/// Layers of a wall of one's own; the wall that is solved keeps one more free for what grows on the
/// inside.
inline constexpr std::size_t most_own_layers = 7;

/// A name or a text of the file may have so many bytes.
inline constexpr std::size_t longest_text = 1000;

/// "`run` has 900 entries, more than 200"
[[nodiscard]] std::string too_many_words(const ChildInfo& child, std::size_t entries);

/// An object of the file that stands under a name of the user's own.
template <class T>
concept Named = requires(T object) {
    { object.id } -> std::convertible_to<std::string>;
};

/// A type, to be written to or only read.
template <class Object, class T>
concept Either = std::same_as<std::remove_const_t<Object>, T>;

/// Calls visit(ChildInfo, member) for each object or list of objects in `object`.
template <Either<Installation> Object, class Visit>
void for_each_child(Object& object, Visit&& visit) {
    visit(ChildInfo{"site", "The place: height, weather and the room of the appliance."},
          object.site);
    visit(ChildInfo{"appliance", "The heater, its fuel and how it is fired.", true},
          object.appliance);
    visit(ChildInfo{"run", "The parts in order, from the outlet to the open air.", true, "", 200},
          object.run);
    visit(ChildInfo{"fuels", "Fuels of your own, each under its name.", false, "", 50},
          object.fuels);
    visit(
        ChildInfo{
            "walls", "Pipe and chimney walls of your own, each under its name.", false, "", 50},
        object.walls);
    visit(ChildInfo{"fittings", "Fittings of your own, each under its name.", false, "", 50},
          object.fittings);
    visit(ChildInfo{"observed",
                    "What was seen or measured on the installation as it is now.",
                    false,
                    "",
                    100},
          object.observed);
    visit(ChildInfo{"burn",
                    "The course of one fire, for the warm-up: what burns for how long.",
                    false,
                    "",
                    100},
          object.burn);
    visit(ChildInfo{"building", "What the heater has to keep warm."}, object.building);
    visit(ChildInfo{"stock", "Pieces at hand, and lengths your shop sells.", false, "", 200},
          object.stock);
}

template <Either<Site> Object, class Visit>
void for_each_child(Object& object, Visit&& visit) {
    visit(ChildInfo{"room", "The room the appliance stands in."}, object.room);
    visit(ChildInfo{"roof", "The roof and what stands near the chimney top."}, object.roof);
    visit(ChildInfo{"alarms", "The alarms in the house."}, object.alarms);
    visit(ChildInfo{"house",
                    "The building round the room: its leaks, fans and open windows give the "
                    "pressure in the room."},
          object.house);
    visit(ChildInfo{"weather", "The weathers to compute, each with a name.", false, "", 50},
          object.weather);
}

template <Either<House> Object, class Visit>
void for_each_child(Object& object, Visit&& visit) {
    visit(
        ChildInfo{"fans", "The fans that run: a flow alone, or name and flow.", false, "flow", 50},
        object.fans);
    visit(ChildInfo{"openings", "Windows set open and air inlets.", false, "", 50},
          object.openings);
}

template <Either<Appliance> Object, class Visit>
void for_each_child(Object& object, Visit&& visit) {
    visit(ChildInfo{"fuel", "The fuel: its name alone, or name and moisture.", false, "name"},
          object.fuel);
    visit(ChildInfo{"outlet", "The flue collar of the appliance."}, object.outlet);
    visit(ChildInfo{"door", "The opening through which it is loaded; of a fireplace, its front."},
          object.door);
    visit(ChildInfo{"firebox", "The inside of the firebox, for a heater without a label."},
          object.firebox);
    visit(ChildInfo{"clearances", "Distances from the heater to combustibles, as they stand."},
          object.clearances);
    visit(ChildInfo{"listed_clearances", "The distances on the heater's plate."},
          object.listed_clearances);
    visit(ChildInfo{"floor_protection", "How far the floor is protected beyond the heater."},
          object.floor_protection);
    visit(ChildInfo{"hearth_wall", "The wall that does not burn, beside a heater on its hearth."},
          object.hearth_wall);
}

template <Either<Roof> Object, class Visit>
void for_each_child(Object& object, Visit&& visit) {
    visit(ChildInfo{"near", "Buildings, openings and trees near the chimney top.", false, "", 50},
          object.near);
}

template <Either<Building> Object, class Visit>
void for_each_child(Object& object, Visit&& visit) {
    visit(
        ChildInfo{
            "parts", "Walls, roofs, floors, windows and doors to the outside.", false, "", 200},
        object.parts);
}

template <Either<OwnWall> Object, class Visit>
void for_each_child(Object& object, Visit&& visit) {
    visit(ChildInfo{"layers",
                    "The layers from the inside out; an air gap is a layer of air gap.",
                    false,
                    "",
                    most_own_layers},
          object.layers);
}

template <class T, class Visit>
void for_each_child(T& /*object*/, Visit&& /*visit*/) {}

/// The row for `key` among those that belong to a part of one of `kinds`; null where there is none.
template <class T>
[[nodiscard]] const Field<T>* find_field(std::string_view key, unsigned kinds = part_kind::any) {
    for (const auto& field : fields<T>()) {
        if (field.info.key == key && (field.info.parts & kinds) != 0U) {
            return &field;
        }
    }
    return nullptr;
}

/// A key as one step of a JSON pointer: "~" and "/" escaped.
[[nodiscard]] std::string pointer_step(std::string_view key);

/// A place in an installation that holds one number, and the row that describes it.
struct Slot {
    Given* value{nullptr};
    const FieldInfo* field{nullptr};

    explicit operator bool() const { return value != nullptr; }
};

/// The number at a JSON pointer, set or not: "/run/2/up", "/appliance/burn_rate/low",
/// "/fuels/peat/moisture". A pointer to a value of low and high fire means the high one, as in the
/// file. Empty where no number can stand, or where a list has no such entry.
[[nodiscard]] Slot find_value(Installation& installation, std::string_view pointer);

/// The objects below the file's own that have a key of this name, each as the keys that lead to it:
/// "site" for "rules", "run" for "wall". Empty where none has.
[[nodiscard]] std::vector<std::string> homes_of_key(std::string_view key);

/// The kinds of number that stand under a key of this name, each once.
[[nodiscard]] std::vector<Kind> kinds_of_number(std::string_view key);

/// The pointers of all numbers that may be set in the objects this installation has, in the order
/// of the table. Values of low and high fire come as two pointers.
[[nodiscard]] std::vector<std::string> value_pointers(const Installation& installation);

} // namespace fluewright
