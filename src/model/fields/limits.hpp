#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/catalog/default_id.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <cstddef>
#include <optional>
#include <span>

/// Limits that several rows share, and short ways to write a row. Temperatures in kelvin.
namespace fluewright::field_limits {

inline constexpr double zero_celsius_k = 273.15;

constexpr double celsius(double degrees) {
    return degrees + zero_celsius_k;
}

/// Bounds in SI and the reason for them.
struct Limits {
    Kind kind;
    double lowest;
    double highest;
    std::string_view reason;
    bool above_lowest{false};
};

inline constexpr std::string_view physics_range =
    "the range in which gas properties and correlations hold";
inline constexpr std::string_view trade_range = "the sizes the trade makes, with room to spare";
inline constexpr std::string_view weather_range = "weather seen where people live";
inline constexpr std::string_view sense = "what the word means";

inline constexpr Limits flue_side{Kind::length, 0.05, 1.0, "flues this program is made for"};
inline constexpr Limits run_length{Kind::length, 1e-6, 100.0, "a part has a length", true};
inline constexpr Limits moisture{Kind::moisture, 0.0, 0.70, "wetter fuel does not burn by itself"};
inline constexpr Limits share{Kind::fraction, 0.0, 1.0, sense};
inline constexpr Limits outdoor_temperature{
    Kind::temperature, celsius(-60.0), celsius(55.0), weather_range};
inline constexpr Limits zone_temperature{Kind::temperature,
                                         celsius(-60.0),
                                         celsius(80.0),
                                         "the outdoor range, and attics under a hot roof"};
inline constexpr Limits room_temperature{
    Kind::temperature, celsius(-20.0), celsius(50.0), "rooms people heat"};
inline constexpr Limits room_pressure{
    Kind::pressure, -50.0, 50.0, "what fans and wind do to a tight house"};
inline constexpr Limits gas_temperature{
    Kind::temperature, celsius(20.0), celsius(1200.0), physics_range};
inline constexpr Limits surface_temperature{
    Kind::temperature, celsius(20.0), celsius(1200.0), "ratings of paints and walls"};
inline constexpr Limits draft{Kind::pressure, 0.0, 100.0, "drafts that appliances require"};
inline constexpr Limits power{Kind::power, 100.0, 1.0e6, "appliances this program is made for"};
inline constexpr Limits carbon_dioxide{
    Kind::fraction, 0.005, 0.21, "leanest fire to burning without excess air"};
inline constexpr Limits oxygen{Kind::fraction, 0.0, 0.2, "air holds 20.9 %; a fire leaves less"};
inline constexpr Limits emissivity{Kind::number, 0.01, 1.0, sense};
inline constexpr Limits loss{Kind::number, 0.0, 1000.0, "a nearly shut flue"};
inline constexpr Limits deposit{Kind::length, 0.0, 0.2, "deposits seen in flues"};

inline constexpr Limits distance{Kind::length, 0.0, 20.0, "distances in and around houses"};
inline constexpr Limits short_distance{Kind::length, 0.0, 2.0, "gaps and laps of pipe"};
inline constexpr Limits count{Kind::number, 0.0, 1000.0, "things people count"};

/// The parts of a row that are words.
struct Wording {
    std::string_view meaning;
    std::string_view example;
    std::optional<DefaultId> default_id{};
};

constexpr FieldInfo quantity(std::string_view key, const Limits& limits, const Wording& wording) {
    FieldInfo info;
    info.key = key;
    info.kind = limits.kind;
    info.lowest = limits.lowest;
    info.highest = limits.highest;
    info.above_lowest = limits.above_lowest;
    info.limit_reason = limits.reason;
    info.meaning = wording.meaning;
    info.example = wording.example;
    info.default_id = wording.default_id;
    return info;
}

constexpr FieldInfo text(std::string_view key, const Wording& wording) {
    FieldInfo info;
    info.key = key;
    info.meaning = wording.meaning;
    info.example = wording.example;
    info.default_id = wording.default_id;
    return info;
}

constexpr FieldInfo
choice(std::string_view key, std::span<const std::string_view> choices, const Wording& wording) {
    FieldInfo info = text(key, wording);
    info.words = Words::choices;
    info.choices = choices;
    return info;
}

constexpr FieldInfo name_from(std::string_view key, Words words, const Wording& wording) {
    FieldInfo info = text(key, wording);
    info.words = words;
    return info;
}

constexpr FieldInfo required(FieldInfo info) {
    info.required = true;
    return info;
}

constexpr FieldInfo carried(FieldInfo info) {
    info.carries_on = true;
    return info;
}

constexpr FieldInfo whole(FieldInfo info) {
    info.whole = true;
    return info;
}

constexpr FieldInfo of_parts(unsigned kinds, FieldInfo info) {
    info.parts = kinds;
    return info;
}

template <class T, Vocabulary E>
E vocabulary_of(Choice<E> T::*);
template <class T, Vocabulary E>
T object_of(Choice<E> T::*);

/// The row of a member that holds a value of a closed vocabulary, all of whose words it takes or
/// the `choices` of the row.
template <auto member>
constexpr auto choice_field(FieldInfo info, std::span<const std::string_view> choices = {}) {
    using E = decltype(vocabulary_of(member));
    using T = decltype(object_of(member));
    info.words = Words::choices;
    info.choices = choices.empty() ? all_words<E>() : choices;
    return Field<T>{info,
                    ChoiceMember<T>{all_words<E>(),
                                    [](const T& object) {
                                        const Choice<E>& value = object.*member;
                                        return value
                                                   ? std::optional{static_cast<std::size_t>(*value)}
                                                   : std::nullopt;
                                    },
                                    [](T& object, std::optional<std::size_t> place) {
                                        object.*member =
                                            place ? Choice<E>{static_cast<E>(*place)} : Choice<E>{};
                                    }}};
}

} // namespace fluewright::field_limits
