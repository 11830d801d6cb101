#include "cli/first_plan/plan_answers.hpp"

#include "cli/shell/asking.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/same_name.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/range.hpp"
#include "io/input/trade_words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace fluewright::cli {
namespace {

/// Of a bound that was reckoned, so that it does not fall by its last bits.
constexpr double a_hair_m = 1e-6;
constexpr int bound_digits = 4;

/// Without the blanks around it, and with plain blanks within.
std::string tidy(std::string_view typed) {
    std::string text{without_blanks_around(typed)};
    std::replace_if(
        text.begin(), text.end(), [](char c) { return c == '\t' || c == '\r'; }, ' ');
    return text;
}

/// Where "200 mm x 300 mm" parts; nothing for one side.
std::optional<std::pair<std::string_view, std::string_view>> two_sides(std::string_view text) {
    for (const std::string_view sign : {"x", "X", "\u00d7"}) {
        if (const std::size_t at = text.find(sign); at != std::string_view::npos) {
            return std::pair{text.substr(0, at), text.substr(at + sign.size())};
        }
    }
    return std::nullopt;
}

/// The key of the appliance that a kind of quantity goes into.
const FieldInfo& field_of_fire(Kind kind) {
    switch (kind) {
    case Kind::mass_rate:
        return find_field<Appliance>("burn_rate")->info;
    case Kind::mass:
        return find_field<Appliance>("charge")->info;
    case Kind::volume:
        return find_field<Firebox>("volume")->info;
    default:
        return find_field<Appliance>("heat_output")->info;
    }
}

} // namespace

std::optional<std::string> take_quantity(
    std::string_view typed, Kind kind, const Allowed& allowed, UnitSystem units, Said& to) {
    const std::string text = tidy(typed);
    const auto read = parse_quantity(text, kind);
    if (!read) {
        const auto& error = read.error();
        return fmt::format("That was not understood as {} {}: {}{}.",
                           kind == Kind::angle ? "an" : "a",
                           name(kind),
                           error.message,
                           error.help.empty() ? "" : "; " + error.help);
    }
    if (!(read->value >= allowed.least - a_hair_m && read->value <= allowed.most + a_hair_m)) {
        return fmt::format("{} does not fit: {}. It can be {} to {}.",
                           text,
                           allowed.why,
                           format_quantity(allowed.least, kind, units, bound_digits),
                           format_quantity(allowed.most, kind, units, bound_digits));
    }
    to = {.value = read->value, .text = text, .us_units = read->us_units};
    return std::nullopt;
}

std::optional<std::string> take_section(
    std::string_view typed, bool round, const Allowed& allowed, UnitSystem units, SaidSection& to) {
    const std::string text = tidy(typed);
    SaidSection taken;
    const auto sides = two_sides(text);
    if (!sides) {
        if (!round) {
            return "Two sides are needed, such as 700 mm x 600 mm or 28 in x 24 in.";
        }
        auto why = take_quantity(text, Kind::length, allowed, units, taken.diameter);
        if (!why) {
            to = std::move(taken);
        }
        return why;
    }
    // "8 x 12 in" has its unit once.
    std::string first{sides->first};
    const std::size_t letter = sides->second.find_first_not_of(" 0123456789.,/");
    if (first.find_first_not_of(" 0123456789.,/") == std::string::npos
        && letter != std::string_view::npos) {
        first += ' ';
        first += sides->second.substr(letter);
    }
    if (auto why = take_quantity(first, Kind::length, allowed, units, taken.width)) {
        return why;
    }
    if (auto why = take_quantity(sides->second, Kind::length, allowed, units, taken.depth)) {
        return why;
    }
    to = std::move(taken);
    return std::nullopt;
}

std::optional<std::string> take_fire(std::string_view typed, FirstPlan& plan) {
    const std::string text = tidy(typed);
    const auto kinds = kinds_of_fire(plan.heater);
    for (const Kind kind : kinds) {
        if (!parse_quantity(text, kind)) {
            continue;
        }
        const FieldInfo& field = field_of_fire(kind);
        FireSize taken{.kind = kind, .said = {}};
        auto why = take_quantity(text,
                                 kind,
                                 {.least = field.lowest,
                                  .most = field.highest,
                                  .why = "it is beyond heaters this program is made for"},
                                 plan.units(),
                                 taken.said);
        if (!why) {
            plan.fire = std::move(taken);
        }
        return why;
    }
    std::string examples;
    for (const Kind kind : kinds) {
        examples += fmt::format("{}{}", examples.empty() ? "" : ", or ", example(kind));
    }
    return fmt::format("That was not understood. Write it with its unit, such as {}.", examples);
}

std::optional<std::string>
take_word(std::string_view typed, std::span<const std::string_view> words, std::size_t& to) {
    std::string text = plain_answer(typed);
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (text == words[i] || text == std::to_string(i + 1)) {
            to = i;
            return std::nullopt;
        }
    }
    std::replace(text.begin(), text.end(), ' ', '-');
    const auto same = std::find(words.begin(), words.end(), text);
    if (same != words.end()) {
        to = static_cast<std::size_t>(same - words.begin());
        return std::nullopt;
    }
    // A wood burner is a stove, not the wood-boiler that its letters come near to.
    const auto of_trade = json::trade_word("type", plain_answer(typed));
    const bool is_choice =
        of_trade && std::find(words.begin(), words.end(), *of_trade) != words.end();
    const auto nearest = is_choice ? of_trade : nearest_word(text, words);
    return nearest
               ? fmt::format("That was not understood; did you mean `{}`?", *nearest)
               : fmt::format("That was not understood; it is one of {}.", fmt::join(words, ", "));
}

} // namespace fluewright::cli
