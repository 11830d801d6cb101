#include "fluewright/advice/study/common_ground.hpp"

#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/resolve/structure.hpp"

#include <algorithm>
#include <optional>

namespace fluewright {
namespace {

/// The weathers of a file, each with a name: as written, or those a silent file takes.
std::vector<Weather> weathers_of(const Installation& written, const Case& resolved) {
    std::vector<Weather> list = written.site.weather;
    if (list.empty()) {
        for (const WeatherCase& weather : resolved.weathers) {
            Weather entry;
            entry.outdoor_temperature_k = weather.outdoor_temperature_k;
            list.push_back(std::move(entry));
        }
    }
    for (std::size_t i = 0; i < list.size(); ++i) {
        list[i].name = resolved.weathers[i].name;
    }
    return list;
}

/// What a weather of a file is, whether written out or assumed.
bool is_same_weather(const WeatherCase& a, const WeatherCase& b) {
    return a.name == b.name && a.outdoor_temperature_k == b.outdoor_temperature_k
           && a.wind_m_s == b.wind_m_s && a.relative_humidity == b.relative_humidity;
}

struct SharedWeather {
    Weather written;
    WeatherCase resolved;
    std::size_t from{}; ///< the file that told of it first
};

bool is_named(const std::vector<SharedWeather>& all, std::string_view name) {
    return std::any_of(all.begin(), all.end(), [name](const SharedWeather& each) {
        return each.written.name == name;
    });
}

/// What was seen goes by the name of its weather, which becomes another.
void call_weather(Installation& in, const std::string& from, const std::string& to) {
    for (Observation& seen : in.observed) {
        if (seen.weather == from) {
            seen.weather = to;
        }
    }
}

/// The rules a file asks for with a word of its own, else those of its units. A file that asks for
/// none does not take away the rules of another.
std::string rules_for_all(std::span<const NamedInstallation> files,
                          const std::vector<Case>& resolved) {
    for (const NamedInstallation& file : files) {
        if (file.written.site.rules && file.written.site.rules != RuleSet::none) {
            return std::string{rule_set_of(file.written, UnitSystem::metric)};
        }
    }
    for (std::size_t i = 0; i < files.size(); ++i) {
        const std::string_view by_units = rule_set_of(files[i].written, resolved[i].units);
        if (by_units != "none") {
            return std::string{by_units};
        }
    }
    return "none";
}

} // namespace

Result<CommonGround, UnreadLayout> common_ground(std::span<const NamedInstallation> files,
                                                 const std::string& rules,
                                                 std::optional<UnitSystem> units) {
    CommonGround made;
    std::vector<Case> resolved;
    for (std::size_t i = 0; i < files.size(); ++i) {
        made.installations.push_back(files[i].written);
        Result<Case, Faults> now = resolve(files[i].written);
        if (!now) {
            return Failure{UnreadLayout{i, std::move(now).error()}};
        }
        resolved.push_back(std::move(now).value());
        resolved.back().units = units.value_or(resolved.back().units);
    }
    std::vector<SharedWeather> all;
    std::vector<std::vector<std::size_t>> has(files.size());
    std::vector<std::vector<Weather>> of_file;
    for (std::size_t i = 0; i < files.size(); ++i) {
        const std::vector<Weather>& mine =
            of_file.emplace_back(weathers_of(files[i].written, resolved[i]));
        for (std::size_t w = 0; w < mine.size(); ++w) {
            WeatherCase told = resolved[i].weathers[w];
            const auto same = std::find_if(all.begin(), all.end(), [&](const SharedWeather& each) {
                return is_same_weather(each.resolved, told);
            });
            if (same != all.end()) {
                has[i].push_back(static_cast<std::size_t>(same - all.begin()));
                continue;
            }
            Weather written = mine[w];
            if (is_named(all, *written.name)) {
                written.name = *written.name + " of " + files[i].name;
                call_weather(made.installations[i], told.name, *written.name);
            }
            has[i].push_back(all.size());
            all.push_back({std::move(written), std::move(told), i});
        }
    }
    for (std::size_t i = 0; i < files.size(); ++i) {
        const std::vector<Weather>& mine = of_file[i];
        std::vector<Weather> list;
        std::vector<std::string_view> added;
        for (std::size_t w = 0; w < all.size(); ++w) {
            const auto own = std::find(has[i].begin(), has[i].end(), w);
            Weather entry = own == has[i].end()
                                ? all[w].written
                                : mine[static_cast<std::size_t>(own - has[i].begin())];
            entry.name = all[w].written.name;
            if (own == has[i].end()) {
                // Air of the room is the house's own; in the open it is the weather's.
                entry.room_temperature_k.reset();
                added.push_back(*all[w].written.name);
            }
            list.push_back(std::move(entry));
        }
        if (all.size() > has[i].size() || !made.installations[i].site.weather.empty()) {
            made.installations[i].site.weather = std::move(list);
        }
        if (!added.empty()) {
            made.added.push_back(files[i].name + " is checked in the weather of the others, too: "
                                 + joined(added) + ".");
        }
    }
    made.rules = rules.empty() ? rules_for_all(files, resolved) : rules;
    for (std::size_t i = 0; i < files.size(); ++i) {
        const std::string_view own = rule_set_of(files[i].written, resolved[i].units);
        if (own != made.rules) {
            made.added.push_back(
                files[i].name + " is held against "
                + (made.rules == "none"
                       ? "no set of rules"
                       : "the rules of " + std::string{catalog::find_rule_body(made.rules)->name})
                + ", as all are" + (files[i].written.site.rules ? ", not those it names." : "."));
        }
    }
    return made;
}

} // namespace fluewright
