#include "fluewright/advice/study/varied.hpp"

#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/quantity/quantity_range.hpp"
#include "fluewright/model/fields/words_at.hpp"
#include "varied_names.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace fluewright {

using varied_names::label_of;
using varied_names::normal;
using varied_names::or_list;
using varied_names::pointers_meant;
using varied_names::without_high;

namespace {

using What = VariedKey::What;

/// A short name for what one turns most, with the key whose limits it has.
struct ShortName {
    std::string_view name;
    What what;
    std::string_view label;
    std::string_view limits_of; ///< a key of a weather, an outlet, a straight or the appliance
};

constexpr std::array short_names{
    ShortName{"outdoor", What::outdoor, "outdoor temperature", "outdoor_temperature"},
    ShortName{"outdoor_temperature", What::outdoor, "outdoor temperature", "outdoor_temperature"},
    ShortName{"height", What::height, "height of the chimney top above the outlet", "up"},
    ShortName{"diameter", What::diameter, "diameter of the pipe", "diameter"},
    ShortName{"burn_rate", What::burn_rate, "burn rate at high fire", "burn_rate"}};

void set_limits(VariedKey& key, const FieldInfo& info) {
    key.kind = info.kind;
    key.lowest = info.lowest;
    key.highest = info.highest;
    key.above_lowest = info.above_lowest;
}

template <class T>
bool limits_from(VariedKey& key, std::string_view name) {
    const Field<T>* field = find_field<T>(name);
    if (field != nullptr) {
        set_limits(key, field->info);
    }
    return field != nullptr;
}

bool all_of_the_weather(const std::vector<std::string>& pointers) {
    const auto key = [](const std::string& pointer) { return pointer.substr(pointer.rfind('/')); };
    return std::all_of(pointers.begin(), pointers.end(), [&](const std::string& pointer) {
        return pointer.starts_with("/site/weather/") && key(pointer) == key(pointers.front());
    });
}

std::string unknown(std::string_view name, const std::vector<std::string>& pointers) {
    std::vector<std::string> words;
    words.reserve(short_names.size() + 3 * pointers.size());
    for (const ShortName& row : short_names) {
        words.emplace_back(row.name);
    }
    for (const std::string& pointer : pointers) {
        const std::string_view whole = without_high(pointer);
        words.emplace_back(whole.substr(whole.rfind('/') + 1));
        const std::string_view owner = whole.substr(0, whole.rfind('/'));
        words.push_back(std::string{owner.substr(owner.rfind('/') + 1)} + '_' + words.back());
        words.emplace_back(whole);
    }
    const std::vector<std::string_view> views(words.begin(), words.end());
    const auto nearest = nearest_word(name, views);
    return '`' + std::string{name} + "` is no number of this file"
           + (nearest ? "; did you mean `" + std::string{*nearest} + "`?"
                      : "; write outdoor, height, diameter, burn_rate, a key such as moisture, or "
                        "the pointer of any number, such as /run/0/up");
}

std::optional<VariedKey> short_key(std::string_view name) {
    for (const ShortName& row : short_names) {
        if (row.name == name) {
            VariedKey key{
                .what = row.what, .name = std::string{name}, .label = std::string{row.label}};
            // Exactly one of these has the key.
            if (!limits_from<Weather>(key, row.limits_of)
                && !limits_from<Appliance>(key, row.limits_of)) {
                limits_from<Part>(key, row.limits_of);
            }
            return key;
        }
    }
    return std::nullopt;
}

std::string shown(double value, Kind kind, const Installation& written) {
    const bool us = written.us_quantities > written.metric_quantities;
    return format_quantity(value, kind, us ? UnitSystem::us : UnitSystem::metric);
}

} // namespace

std::optional<Kind> kind_of_varied(std::string_view typed) {
    const std::string name = typed.starts_with('/') ? std::string{typed} : normal(typed);
    if (const auto key = short_key(name)) {
        return key->kind;
    }
    std::string_view path = without_high(name);
    constexpr std::string_view low = "/low";
    path = path.ends_with(low) ? path.substr(0, path.size() - low.size()) : path;
    path = path.substr(path.rfind('/') + 1); // npos + 1 is 0
    // "outlet_diameter" ends in the key.
    while (!path.empty()) {
        if (const std::vector<Kind> kinds = kinds_of_number(path); !kinds.empty()) {
            return kinds.size() == 1 ? std::optional{kinds.front()} : std::nullopt;
        }
        const std::size_t next = path.find('_');
        path = next == std::string_view::npos ? std::string_view{} : path.substr(next + 1);
    }
    return std::nullopt;
}

Result<VariedKey, std::string> find_varied_key(std::string_view typed,
                                               const Installation& written) {
    const std::string name = typed.starts_with('/') ? std::string{typed} : normal(typed);
    if (auto key = short_key(name)) {
        return std::move(*key);
    }
    const auto places = [](std::vector<std::string> all) {
        // What was seen, and what lies on the shelf, changes nothing in the run.
        all.erase(std::remove_if(all.begin(),
                                 all.end(),
                                 [](const std::string& pointer) {
                                     return pointer.starts_with("/observed/")
                                            || pointer.starts_with("/stock/");
                                 }),
                  all.end());
        return all;
    };
    const std::vector<std::string> all = places(value_pointers_of(written, name));
    std::vector<std::string> found = pointers_meant(all, name, [&](const std::string& pointer) {
        return number_at(written, pointer).has_value();
    });
    if (found.empty()) {
        return Failure{unknown(typed, places(value_pointers(written)))};
    }
    if (found.size() > 1 && !all_of_the_weather(found)) {
        return Failure{'`' + std::string{typed} + "` fits several numbers of this file; write "
                       + or_list(found)};
    }
    VariedKey key{.what = What::values,
                  .name = std::string{typed},
                  .label = label_of(found.front(), written)};
    set_limits(key, *field_at(written, found.front()));
    key.pointers = std::move(found);
    return key;
}

Result<Varied, std::string> read_varied(std::string_view typed, const Installation& written) {
    const auto equals = typed.find('=');
    if (equals == std::string_view::npos || equals == 0) {
        return Failure{'`' + std::string{typed}
                       + "` lacks its values; write a name and a range, such as height=3..8m:6"};
    }
    auto key = find_varied_key(typed.substr(0, equals), written);
    if (!key) {
        return Failure{std::move(key).error()};
    }
    auto values = parse_range(typed.substr(equals + 1), key->kind);
    if (!values) {
        return Failure{key->name + ": " + values.error()};
    }
    for (const double value : *values) {
        if (value < key->lowest || value > key->highest
            || (key->above_lowest && value <= key->lowest)) {
            return Failure{key->name + ": " + shown(value, key->kind, written)
                           + " is out of range; from " + shown(key->lowest, key->kind, written)
                           + " to " + shown(key->highest, key->kind, written) + " can be computed"};
        }
    }
    return Varied{.key = std::move(key).value(), .values = std::move(values).value()};
}

} // namespace fluewright
