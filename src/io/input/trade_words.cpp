#include "trade_words.hpp"

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/core/same_name.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <array>

namespace fluewright::json {
namespace {

struct TradeKey {
    std::string_view typed;
    std::string_view key; ///< the key that is meant, where the object has it
    std::string_view help;
};

constexpr std::string_view lengths = "write `up` (upright) or `across` (horizontal)";
constexpr std::string_view inside =
    "write `diameter`, the inside diameter; the thickness is that of the `wall`";

constexpr std::string_view power =
    "write `heat_output` for useful heat, or `heat_input` for heat in the fuel";
constexpr std::string_view weathers =
    R"(write "weather": [{"name": "frost", "outdoor_temperature": "-10 degC"}])";
constexpr std::string_view fans =
    R"(under `site`, write "house": {"fans": [{"flow": "150 m3/h"}]})";

constexpr std::string_view after_chimney_fire =
    "write `roaring`, and light no fire before a sweep has examined the flue; see `fluewright "
    "explain \"chimney fire\"`";
constexpr std::string_view glowing =
    R"(write "surface_temperature": "500 degC" where none was measured; shut all air first)";

constexpr std::array trade_keys{
    TradeKey{"length", "up", lengths},
    TradeKey{"run", "across", "write `across`"},
    TradeKey{"offset", "across", "write `across`"},
    TradeKey{"vertical", "up", "write `up`"},
    TradeKey{"height", "up", "write `up`"},
    TradeKey{"outside_diameter", "diameter", inside},
    TradeKey{"outer_diameter", "diameter", inside},
    TradeKey{"inside_diameter", "diameter", "write `diameter`"},
    TradeKey{"inner_diameter", "diameter", "write `diameter`"},
    TradeKey{"size", "diameter", "write `diameter`"},
    TradeKey{"pitch", "slope", "write `slope`"},
    TradeKey{"type", "part", "write `part` for what it is, `build` for how it is made"},
    TradeKey{"kind", "part", "write `part` for what it is, `build` for how it is made"},
    TradeKey{"material", "wall", "write `wall`"},
    TradeKey{"pipe", "wall", "write `wall`"},
    TradeKey{"location", "zone", "write `zone`"},
    TradeKey{"wall_thickness", "thickness", "write `thickness`, or `gauge` for sheet"},
    TradeKey{"bore", "diameter", "write `diameter`, the inside diameter"},
    TradeKey{"dia", "diameter", "write `diameter`, the inside diameter"},
    TradeKey{"btu", "heat_output", power},
    TradeKey{"btus", "heat_output", power},
    TradeKey{"btu_h", "heat_output", power},
    TradeKey{"kw", "heat_output", power},
    TradeKey{"power", "heat_output", power},
    TradeKey{"input", "heat_input", "write `heat_input`"},
    TradeKey{"output", "heat_output", "write `heat_output`"},
    TradeKey{"outdoor_temperature", "weather", weathers},
    TradeKey{"outside_temperature", "weather", weathers},
    TradeKey{"temperature", "weather", "write `room` for the room, `weather` for outdoors"},
    TradeKey{"temperature", "outdoor_temperature", "write `outdoor_temperature`"},
    TradeKey{"outside_temperature", "outdoor_temperature", "write `outdoor_temperature`"},
    TradeKey{"elevation", "altitude", "write `altitude`"},
    TradeKey{"wind_speed", "wind", "write `wind`"},
    TradeKey{"fan", "house", fans},
    TradeKey{"fans", "house", fans},
    TradeKey{"exhaust_fan", "house", fans},
    TradeKey{"hood", "house", fans},
    TradeKey{"fan", "site", fans},
    TradeKey{"fans", "site", fans},
    TradeKey{"exhaust", "fans", R"(write "fans": [{"flow": "150 m3/h"}])"},
    TradeKey{"exhaust_fan", "fans", R"(write "fans": [{"flow": "150 m3/h"}])"},
    TradeKey{"hood", "fans", R"(write "fans": [{"flow": "150 m3/h"}])"},
    TradeKey{"draft", "draft_needed", "write `draft_needed`"},
    TradeKey{"draught", "draft_needed", "write `draft_needed`"},
    TradeKey{"draught_needed", "draft_needed", "write `draft_needed`"},
    TradeKey{"chimney_fire", "roaring", after_chimney_fire},
    TradeKey{"flue_fire", "roaring", after_chimney_fire},
    TradeKey{"glowing", "surface_temperature", glowing},
    TradeKey{"red_hot", "surface_temperature", glowing},
    TradeKey{"headache", "co_alarm", "write `co_alarm`: a headache at the fire counts as an alarm"},
    TradeKey{"creosote", "drips", "write `drips`, or `deposit_thickness` for what is on the walls"},
    TradeKey{"soot", "deposit_thickness", "write `deposit_thickness`"},
    TradeKey{"smells", "smell_when_idle", "write `smell_when_idle`"},
    TradeKey{"parts", "run", "write `run`"},
    TradeKey{"flue", "run", "write `run`"},
    TradeKey{"chimney", "run", "write `run`, all parts in order from the collar to the top"},
    TradeKey{"stove", "appliance", "write `appliance`"}};

constexpr std::array words_of_trade{
    TradeWord{"part", "pipe", "straight"},       TradeWord{"part", "stovepipe", "straight"},
    TradeWord{"part", "flue pipe", "straight"},  TradeWord{"part", "liner", "straight"},
    TradeWord{"part", "flex", "straight"},       TradeWord{"part", "horizontal", "straight"},
    TradeWord{"part", "vertical", "straight"},   TradeWord{"part", "chimney", "straight"},
    TradeWord{"part", "offset", "elbow"},        TradeWord{"part", "cleanout", "tee"},
    TradeWord{"part", "terminal", "cap"},        TradeWord{"part", "pot", "cap"},
    TradeWord{"part", "adapter", "increaser"},   TradeWord{"type", "woodstove", "stove"},
    TradeWord{"type", "wood stove", "stove"},    TradeWord{"type", "heater", "stove"},
    TradeWord{"type", "log burner", "stove"},    TradeWord{"type", "insert", "stove"},
    TradeWord{"type", "wood burner", "stove"},   TradeWord{"type", "cookstove", "stove"},
    TradeWord{"type", "cook stove", "stove"},    TradeWord{"type", "range", "stove"},
    TradeWord{"type", "open fire", "fireplace"}, TradeWord{"build", "adjustable", "gored"},
    TradeWord{"zone", "inside", "room"},         TradeWord{"zone", "indoor", "room"},
    TradeWord{"zone", "living room", "room"},    TradeWord{"zone", "outdoor", "outdoors"},
    TradeWord{"zone", "closet", "chase"}};

} // namespace

std::span<const TradeWord> trade_words() {
    return words_of_trade;
}

std::string trade_key_help(std::string_view typed, std::span<const std::string_view> keys) {
    const auto* found =
        std::find_if(trade_keys.begin(), trade_keys.end(), [&](const TradeKey& each) {
            return same_letters(each.typed, typed)
                   && std::find(keys.begin(), keys.end(), each.key) != keys.end();
        });
    return found == trade_keys.end() ? std::string{} : std::string{found->help};
}

std::optional<std::string_view> trade_word(std::string_view key, std::string_view typed) {
    const auto* found =
        std::find_if(words_of_trade.begin(), words_of_trade.end(), [&](const TradeWord& each) {
            return each.key == key && same_letters(each.typed, typed);
        });
    return found == words_of_trade.end() ? std::nullopt : std::optional{found->word};
}

std::optional<std::string_view> glossary_word(std::string_view typed,
                                              std::span<const std::string_view> choices) {
    const catalog::Word* word = catalog::find_word(typed);
    if (word == nullptr) {
        return std::nullopt;
    }
    const auto is_choice = [&](std::string_view each) {
        return std::find(choices.begin(), choices.end(), each) != choices.end();
    };
    const std::string_view last = word->id.substr(word->id.rfind(' ') + 1);
    return is_choice(word->id) ? std::optional{word->id}
           : is_choice(last)   ? std::optional{last}
                               : std::nullopt;
}

std::optional<std::string_view> glossary_key(std::string_view typed,
                                             std::span<const std::string_view> keys) {
    const auto word_of = [](std::string_view key) {
        std::string words{key};
        std::replace(words.begin(), words.end(), '_', ' ');
        return catalog::find_word(words);
    };
    const catalog::Word* meant = word_of(typed);
    const auto found = std::find_if(keys.begin(), keys.end(), [&](std::string_view key) {
        return meant != nullptr && word_of(key) == meant;
    });
    return found == keys.end() ? std::nullopt : std::optional{*found};
}

std::string trade_value_help(std::string_view key, std::string_view typed) {
    if (key == "part" && (same_letters(typed, "thimble") || same_letters(typed, "pass-through"))) {
        return "a way through a wall is told of the straight that goes through: write \"passes\": "
               "\"wall\" and `pass_through` there";
    }
    if (key == "burn_rate" && parse_quantity(typed, Kind::power)) {
        return "write \"heat_input\": \"" + std::string{typed}
               + "\" for heat in the fuel, or `heat_output` for useful heat";
    }
    const bool digits = !typed.empty() && typed.find_first_not_of("0123456789") == typed.npos;
    constexpr std::size_t digits_of_a_gauge = 2;
    if (key == "thickness" && digits && typed.size() == digits_of_a_gauge && typed.front() < '3') {
        return "write \"gauge\": " + std::string{typed} + " for sheet of that gauge, or \""
               + std::string{typed} + " mm\"";
    }
    if (key == "thickness" || key == "gauge") {
        const std::size_t end = std::min(typed.find_first_not_of("0123456789"), typed.size());
        const std::string_view unit = without_blanks_around(typed.substr(end));
        if (end > 0 && (unit == "ga" || unit == "gauge" || unit == "gage")) {
            return "write \"gauge\": " + std::string{typed.substr(0, end)};
        }
    }
    return {};
}

} // namespace fluewright::json
