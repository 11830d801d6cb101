#include "json_values.hpp"

#include "fluewright/core/nearest_word.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "likely_unit.hpp"
#include "trade_words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright::json {

namespace {

constexpr std::size_t most_troubles = 1000;

std::string_view in_words(Type type) {
    switch (type) {
    case Type::nothing:
        return "null";
    case Type::boolean:
        return "true or false";
    case Type::number:
        return "a number";
    case Type::string:
        return "a text";
    case Type::array:
        return "a list";
    case Type::object:
        return "an object";
    }
    return "a value";
}

void out_of_range(const Node& node,
                  const FieldInfo& field,
                  std::string_view typed,
                  UnitSystem system,
                  Troubles& troubles) {
    std::string help;
    if (field.kind != Kind::number && field.kind != Kind::angle) {
        const auto spelling = spelling_in_range(digits_of(typed), field, troubles.units_of_file());
        help = spelling.empty() ? "" : fmt::format("did you mean \"{}\"?", spelling);
    }
    troubles.at_value(
        node, out_of_range_words(field, system), allowed_words(field, system), std::move(help));
}

void not_whole(const Node& node, const FieldInfo& field, Troubles& troubles) {
    troubles.at_value(node,
                      not_whole_words(field),
                      allowed_words(field, UnitSystem::metric),
                      "count them, without a fraction or a \u00b1");
}

void unit_missing(const Document& document,
                  const Node& node,
                  const FieldInfo& field,
                  Troubles& troubles) {
    const auto typed = document.typed(node);
    const auto spellings = spellings_of_bare(typed, field, troubles.units_of_file());
    auto help = trade_value_help(field.key, typed);
    troubles.at_value(
        node,
        fmt::format("`{}` is a bare number and lacks its unit", field.key),
        accepted_units(field.kind),
        !help.empty()
            ? std::move(help)
            : fmt::format("write \"{}\": {}",
                          field.key,
                          spellings.empty() ? fmt::format("\"{}\"", field.example) : spellings));
}

} // namespace

void Troubles::add(std::size_t offset, Fault fault) {
    if (!is_full()) {
        list_.push_back({offset, std::move(fault)});
    }
}

std::optional<UnitSystem> Troubles::units_of_file() {
    if (!units_) {
        units_ = most_used_units(document_);
    }
    return *units_;
}

bool Troubles::is_full() const {
    return list_.size() >= most_troubles;
}

void Troubles::at_value(const Node& node,
                        std::string message,
                        std::string allowed,
                        std::string help) {
    add(node.begin,
        {document_.pointer_to(node),
         std::move(message),
         shown(document_.typed(node)),
         std::move(allowed),
         std::move(help)});
}

void Troubles::at_key(const Node& node,
                      std::string message,
                      std::string allowed,
                      std::string help) {
    add(node.key_begin,
        {document_.pointer_to(node),
         std::move(message),
         '"' + shown(node.key) + '"',
         std::move(allowed),
         std::move(help)});
}

void Troubles::missing_in(const Node& node, std::string message, std::string help) {
    add(node.begin, {document_.pointer_to(node), std::move(message), {}, {}, std::move(help)});
}

void wrong_type(const Node& node,
                std::string_view key,
                std::string_view wanted,
                std::string_view example,
                Troubles& troubles) {
    const bool nothing = node.type == Type::nothing;
    troubles.at_value(node,
                      fmt::format("`{}` must be {}, not {}", key, wanted, in_words(node.type)),
                      {},
                      nothing ? std::string{"leave the key out where the value is not known"}
                              : fmt::format("write \"{}\": {}", key, example));
}

std::optional<ReadNumber> read_number(const Document& document,
                                      const Node& node,
                                      const FieldInfo& field,
                                      UnitCount& units,
                                      Troubles& troubles) {
    const bool plain = field.kind == Kind::number;
    if (node.type == Type::number && plain) {
        if (!is_in_range(node.number, field)) {
            out_of_range(node, field, document.typed(node), UnitSystem::metric, troubles);
            return std::nullopt;
        }
        if (!is_whole_enough(node.number, field)) {
            not_whole(node, field, troubles);
            return std::nullopt;
        }
        return ReadNumber{node.number, 0.0};
    }
    if (node.type == Type::number) {
        unit_missing(document, node, field, troubles);
        return std::nullopt;
    }
    if (node.type != Type::string) {
        wrong_type(node,
                   field.key,
                   plain ? "a number" : "a text with a unit",
                   plain ? std::string{field.example} : fmt::format("\"{}\"", field.example),
                   troubles);
        return std::nullopt;
    }
    const auto read = parse_quantity(node.text, field.kind);
    if (!read) {
        const auto& error = read.error();
        const bool bare = !node.text.empty() && digits_of(node.text) == node.text;
        const auto spellings =
            bare ? spellings_of_bare(node.text, field, troubles.units_of_file()) : std::string{};
        auto help = trade_value_help(field.key, node.text);
        if (help.empty()) {
            help = spellings.empty() ? error.help : "write " + spellings;
        }
        troubles.at_value(node,
                          fmt::format("`{}`: {}", field.key, error.message),
                          error.allowed,
                          std::move(help));
        return std::nullopt;
    }
    units.us += read->us_units ? 1 : 0;
    units.metric += read->metric_units ? 1 : 0;
    if (!is_in_range(read->value, field)) {
        out_of_range(
            node, field, node.text, read->us_units ? UnitSystem::us : UnitSystem::metric, troubles);
        return std::nullopt;
    }
    if (!is_whole_enough(read->value, field) || (field.whole && read->tolerance > 0.0)) {
        not_whole(node, field, troubles);
        return std::nullopt;
    }
    if (!is_in_range(read->value - read->tolerance, field)
        || !is_in_range(read->value + read->tolerance, field)) {
        const UnitSystem system = read->us_units ? UnitSystem::us : UnitSystem::metric;
        troubles.at_value(node,
                          fmt::format("`{}` with its \u00b1 reaches past {}",
                                      field.key,
                                      range_in_words(field, system)),
                          allowed_words(field, system),
                          "give a smaller \u00b1");
        return std::nullopt;
    }
    return ReadNumber{read->value, read->tolerance};
}

std::optional<std::string_view>
read_word(const Document& document, const Node& node, const FieldInfo& field, Troubles& troubles) {
    if (field.may_be_whole_number && node.type == Type::number
        && node.number == std::floor(node.number)) {
        return document.typed(node);
    }
    if (node.type != Type::string) {
        wrong_type(node, field.key, "a text", fmt::format("\"{}\"", field.example), troubles);
        return std::nullopt;
    }
    if (node.text.empty()) {
        troubles.at_value(
            node,
            fmt::format("`{}` is empty", field.key),
            joined(field.choices),
            fmt::format("write \"{}\": \"{}\", or leave the key out", field.key, field.example));
        return std::nullopt;
    }
    if (node.text.size() > longest_text) {
        troubles.at_value(node,
                          fmt::format("`{}` is longer than {} bytes", field.key, longest_text),
                          {},
                          "say it shorter");
        return std::nullopt;
    }
    if (field.words == Words::choices
        && std::find(field.choices.begin(), field.choices.end(), node.text)
               == field.choices.end()) {
        auto meant = trade_word(field.key, node.text);
        meant = meant ? meant : glossary_word(node.text, field.choices);
        meant = meant ? meant : nearest_word(node.text, field.choices);
        const std::string elsewhere = trade_value_help(field.key, node.text);
        // A part named for its wall: "flex" is a straight of flexible liner.
        const catalog::Wall* wall = field.key == "part" ? catalog::find_wall(node.text) : nullptr;
        troubles.at_value(node,
                          fmt::format("`{}` is not a known {}", shown(node.text), field.key),
                          joined(field.choices),
                          !elsewhere.empty() ? elsewhere
                          : wall != nullptr  ? fmt::format(
                                "write \"part\": \"straight\", \"wall\": \"{}\"", wall->id)
                          : meant ? fmt::format("did you mean `{}`?", *meant)
                                  : "");
        return std::nullopt;
    }
    return node.text;
}

std::optional<bool> read_flag(const Node& node, const FieldInfo& field, Troubles& troubles) {
    if (node.type != Type::boolean) {
        wrong_type(node, field.key, "true or false", "true", troubles);
        return std::nullopt;
    }
    return node.truth;
}

} // namespace fluewright::json
