#include "fluewright/advice/study/varied.hpp"

#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/quantity/quantity_range.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

namespace fluewright {
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
    ShortName{"height", What::height, "height of the mouth over the outlet", "up"},
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

std::string normal(std::string_view name) {
    std::string out{name};
    for (char& c : out) {
        c = c == '.' ? '/' : c == '-' || c == ' ' ? '_' : c;
    }
    return out;
}

/// A pointer of a value at high fire also stands for the value where the file gives but one.
std::string_view without_high(std::string_view pointer) {
    constexpr std::string_view high = "/high";
    return pointer.ends_with(high) ? pointer.substr(0, pointer.size() - high.size()) : pointer;
}

bool ends_in_steps(std::string_view pointer, std::string_view steps) {
    return pointer == steps
           || (pointer.ends_with(steps) && pointer[pointer.size() - steps.size() - 1] == '/');
}

/// "outlet_diameter" for "/appliance/outlet/diameter".
bool ends_in_words(std::string_view pointer, std::string_view words) {
    std::string flat{pointer};
    std::replace(flat.begin(), flat.end(), '/', '_');
    return flat.size() > words.size() && flat.ends_with(words)
           && flat[flat.size() - words.size() - 1] == '_';
}

template <class Fits>
std::vector<std::string> those_that(const std::vector<std::string>& pointers, const Fits& fits) {
    std::vector<std::string> found;
    for (const std::string& pointer : pointers) {
        if (fits(pointer) || fits(without_high(pointer))) {
            found.push_back(pointer);
        }
    }
    return found;
}

/// Keeps those for which the predicate holds, unless it holds for none.
template <class Keep>
void prefer(std::vector<std::string>& pointers, const Keep& keep) {
    std::vector<std::string> kept;
    std::copy_if(pointers.begin(), pointers.end(), std::back_inserter(kept), keep);
    if (!kept.empty()) {
        pointers = std::move(kept);
    }
}

bool all_of_the_weather(const std::vector<std::string>& pointers) {
    const auto key = [](const std::string& pointer) { return pointer.substr(pointer.rfind('/')); };
    return std::all_of(pointers.begin(), pointers.end(), [&](const std::string& pointer) {
        return pointer.starts_with("/site/weather/") && key(pointer) == key(pointers.front());
    });
}

std::string or_list(const std::vector<std::string>& pointers) {
    constexpr std::size_t most_named = 6;
    std::string words;
    const std::size_t count = std::min(pointers.size(), most_named);
    for (std::size_t i = 0; i < count; ++i) {
        words += i == 0 ? "" : i + 1 == pointers.size() ? " or " : ", ";
        words += pointers[i];
    }
    return pointers.size() > most_named ? words + ", ..." : words;
}

/// "up of straight 3", "moisture (fuel)", "draft needed at high fire".
std::string label_of(std::string_view pointer, const Installation& written) {
    const std::string_view whole = without_high(pointer);
    const bool high = whole.size() != pointer.size();
    const bool low = pointer.ends_with("/low");
    std::string_view path = low ? pointer.substr(0, pointer.rfind('/')) : whole;
    std::string label{path.substr(path.rfind('/') + 1)};
    std::replace(label.begin(), label.end(), '_', ' ');
    label += high ? " at high fire" : low ? " at low fire" : "";
    constexpr std::string_view run = "/run/";
    if (path.starts_with(run)) {
        const std::string_view digits = path.substr(run.size());
        std::size_t index = 0;
        std::from_chars(digits.data(), digits.data() + digits.size(), index);
        const auto& kind = written.run[index].part;
        return label + " of " + std::string{kind ? name(*kind) : "part"} + ' '
               + std::to_string(index + 1);
    }
    path = path.substr(0, path.rfind('/'));
    std::string owner{path.substr(path.rfind('/') + 1)};
    std::replace(owner.begin(), owner.end(), '_', ' ');
    const bool plain =
        owner == "appliance" || owner == "site" || path.find("/weather/") != std::string_view::npos;
    return plain || owner.empty() ? label : owner + ' ' + label;
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

bool is_given(const std::string& pointer, Installation& written) {
    const Slot slot = find_value(written, pointer);
    return slot && slot.value->has_value();
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
    std::vector<std::string> all = value_pointers(written);
    // What was seen, and what lies on the shelf, changes nothing in the run.
    all.erase(std::remove_if(all.begin(),
                             all.end(),
                             [](const std::string& pointer) {
                                 return pointer.starts_with("/observed/")
                                        || pointer.starts_with("/stock/");
                             }),
              all.end());
    std::vector<std::string> found =
        those_that(all, [&](std::string_view pointer) { return pointer == name; });
    if (found.empty()) {
        found =
            those_that(all, [&](std::string_view pointer) { return ends_in_steps(pointer, name); });
    }
    if (found.empty()) {
        found =
            those_that(all, [&](std::string_view pointer) { return ends_in_words(pointer, name); });
    }
    if (found.empty()) {
        return Failure{unknown(typed, all)};
    }
    Installation copy = written;
    prefer(found, [](const std::string& pointer) {
        return pointer.starts_with("/site/") || pointer.starts_with("/appliance/")
               || pointer.starts_with("/run/");
    });
    prefer(found, [&](const std::string& pointer) { return is_given(pointer, copy); });
    if (found.size() > 1 && !all_of_the_weather(found)) {
        return Failure{'`' + std::string{typed} + "` fits several numbers of this file; write "
                       + or_list(found)};
    }
    VariedKey key{.what = What::values,
                  .name = std::string{typed},
                  .label = label_of(found.front(), written)};
    set_limits(key, *find_value(copy, found.front()).field);
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
