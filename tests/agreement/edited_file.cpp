#include "edited_file.hpp"

#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <iostream>
#include <nlohmann/json.hpp>
#include <string_view>

namespace fluewright::agreement {
namespace {

using Json = nlohmann::ordered_json;

/// Short forms, such as a fuel that is but a name, written out, so that a key can be added.
void spell_out(Json& file, const std::string& pointer) {
    const std::string owner = pointer.substr(0, pointer.rfind('/'));
    const Json::json_pointer at(owner);
    if (!file.contains(at) || !file.at(at).is_string()) {
        return;
    }
    const bool fuel = owner == "/appliance/fuel";
    const bool fan = owner.starts_with("/site/house/fans");
    file.at(at) = Json{{fuel ? "name" : fan ? "flow" : "high", file.at(at)}};
}

Json value_of(const Assumption& assumption) {
    if (!assumption.word.empty()) {
        return assumption.word == "true" ? Json(true) : Json(assumption.word);
    }
    return assumption.kind == Kind::number
               ? Json(assumption.value)
               : Json(write_quantity(assumption.value, assumption.kind, UnitSystem::metric));
}

/// The weathers assumed all at once: a temperature for each, wind and humidity for both.
void write_weather(Json& file, const std::vector<Assumption>& assumptions) {
    Json list = Json::array();
    for (const Assumption& assumption : assumptions) {
        if (assumption.pointer != "/site/weather") {
            continue;
        }
        constexpr std::string_view temperature = "outdoor temperature, ";
        if (assumption.what.starts_with(temperature)) {
            list.push_back({{"name", assumption.what.substr(temperature.size())},
                            {"outdoor_temperature", value_of(assumption)}});
            continue;
        }
        for (Json& weather : list) {
            weather[assumption.kind == Kind::speed ? "wind" : "humidity"] = value_of(assumption);
        }
    }
    if (!list.empty()) {
        file["site"]["weather"] = std::move(list);
    }
}

} // namespace

bool has_no_key(const Assumption& assumption) {
    constexpr std::array<std::string_view, 13> beginnings{
        "air of the attic, by its share",
        "air of the chase, by its share",
        "burn rate of kindling",
        "burn rate while the flue is still cold",
        "gas at the outlet in the first minutes",
        "wind at the house over wind at the chimney top",
        "wind pressure at the chimney top over the wind head",
        "share of the net heat that leaves unburned",
        "share of the appliance's resistance that stays with the door open",
        "burn rate over embers",
        "slit all round a joint",
        "test pressure of tightness class",
        "further draft until the regulator is wide open"};
    // What a cap loses is a key of its own only where it holds no screen.
    const bool cap_with_screen = assumption.what.starts_with("loss coefficient of")
                                 && assumption.pointer.ends_with("/build");
    return cap_with_screen
           || std::any_of(beginnings.begin(), beginnings.end(), [&](std::string_view beginning) {
                  return assumption.what.starts_with(beginning);
              });
}

std::optional<Installation> with_written(const Installation& written,
                                         const std::vector<Assumption>& assumptions) {
    Json file = Json::parse(write_installation(written));
    write_weather(file, assumptions);
    for (const Assumption& assumption : assumptions) {
        if (has_no_key(assumption) || assumption.pointer == "/site/weather") {
            continue;
        }
        if (assumption.pointer == "/run") {
            file["run"].push_back({{"part", "cap"}, {"build", "open"}});
            continue;
        }
        spell_out(file, assumption.pointer);
        file[Json::json_pointer(assumption.pointer)] = value_of(assumption);
    }
    auto read = read_installation(file.dump());
    return read ? std::optional{std::move(read).value()} : std::nullopt;
}

Installation through_file(const Installation& installation) {
    const std::string text = write_installation(installation);
    auto read = read_installation(text);
    if (!read) {
        std::cerr << diagnostics_text(read.error()) << text;
        std::abort();
    }
    return std::move(read).value();
}

} // namespace fluewright::agreement
