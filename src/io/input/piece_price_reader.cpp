#include "fluewright/io/input/piece_price_reader.hpp"

#include "diagnostic_places.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "json_document.hpp"
#include "json_values.hpp"

#include <array>
#include <fmt/core.h>

namespace fluewright {
namespace {

using json::Node;
using json::Type;

class PieceFiller {
public:
    explicit PieceFiller(const json::Document& document)
        : document_{document}, troubles_{document} {}

    void fill() {
        const Node& root = document_.root();
        if (root.type != Type::object) {
            troubles_.at_value(root, "a price list is an object in braces", {}, example());
            return;
        }
        bool has_prices = false;
        for_each(root, [&](const Node& node) {
            if (node.key == "currency" && node.type == Type::string) {
                list_.currency = node.text;
            } else if (node.key == "currency") {
                json::wrong_type(node, node.key, "a text", "\"crowns\"", troubles_);
            } else if (node.key == "prices" && node.type == Type::array) {
                has_prices = true;
                for_each(node, [&](const Node& entry) { read_entry(entry); });
            } else if (node.key == "prices") {
                has_prices = true;
                json::wrong_type(node, node.key, "a list in brackets", "[ ... ]", troubles_);
            } else {
                constexpr std::array<std::string_view, 2> keys{"currency", "prices"};
                unknown(node, "a price list", keys);
            }
        });
        if (!has_prices) {
            troubles_.missing_in(root, "a price list lacks the key `prices`", example());
        }
    }

    [[nodiscard]] PiecePrices& list() { return list_; }

    [[nodiscard]] std::vector<json::Trouble>& troubles() { return troubles_.list(); }

private:
    static std::string example() {
        return R"(write {"prices": [{"wall": "single-wall steel", "length": "1 m", "each": 21.5}]})";
    }

    template <class Visit>
    void for_each(const Node& parent, const Visit& visit) const {
        for (auto i = parent.first; i != json::no_node; i = document_.at(i).next) {
            visit(document_.at(i));
        }
    }

    void unknown(const Node& node, std::string_view what, std::span<const std::string_view> keys) {
        const auto nearest = nearest_word(node.key, keys);
        troubles_.at_key(node,
                         fmt::format("`{}` is not a key of {}", json::shown(node.key), what),
                         joined(keys),
                         nearest ? fmt::format("did you mean `{}`?", *nearest) : "");
    }

    std::optional<double> money(const Node& node) {
        if (node.type == Type::nothing) {
            return std::nullopt;
        }
        if (node.type != Type::number || node.number < 0.0) {
            troubles_.at_value(node,
                               fmt::format("`{}` must be a price, a number from 0 upwards, or "
                                           "null where there is none",
                                           node.key),
                               {},
                               fmt::format("write \"{}\": 21.5", node.key));
            return std::nullopt;
        }
        return node.number;
    }

    Given length(const Node& node) {
        if (node.type != Type::string) {
            json::wrong_type(node, node.key, "a length in quotes", "\"1 m\"", troubles_);
            return std::nullopt;
        }
        const auto read = parse_quantity(node.text, Kind::length);
        if (!read || read->value <= 0.0) {
            troubles_.at_value(node,
                               fmt::format("`{}` must be a length", node.key),
                               accepted_units(Kind::length),
                               fmt::format("write \"{}\": \"1 m\"", node.key));
            return std::nullopt;
        }
        return read->value;
    }

    Word word(const Node& node) {
        if (node.type != Type::string) {
            json::wrong_type(node, node.key, "a text", "\"...\"", troubles_);
            return std::nullopt;
        }
        return std::string{node.text};
    }

    void read_entry(const Node& entry) {
        if (entry.type != Type::object) {
            troubles_.at_value(entry, "a price is an object in braces", {}, example());
            return;
        }
        PiecePrice price;
        for_each(entry, [&](const Node& node) {
            if (node.key == "wall") {
                price.wall = word(node);
            } else if (node.key == "what") {
                price.what = word(node);
            } else if (node.key == "diameter") {
                price.diameter_m = length(node);
            } else if (node.key == "length") {
                price.length_m = length(node);
            } else if (node.key == "telescopes" && node.type == Type::boolean) {
                price.telescopes = node.truth;
            } else if (node.key == "telescopes") {
                json::wrong_type(node, node.key, "true or false", "true", troubles_);
            } else if (node.key == "each") {
                price.each = money(node);
            } else if (node.key == "per_metre") {
                price.per_metre = money(node);
            } else if (node.key == "per_foot") {
                const auto foot = money(node);
                price.per_metre = foot ? std::optional{*foot / constants::foot_m} : std::nullopt;
            } else {
                constexpr std::array<std::string_view, 8> keys{"wall",
                                                               "what",
                                                               "diameter",
                                                               "length",
                                                               "telescopes",
                                                               "each",
                                                               "per_metre",
                                                               "per_foot"};
                unknown(node, "a price", keys);
            }
        });
        if (price.wall.has_value() == price.what.has_value()) {
            troubles_.missing_in(entry,
                                 "a price is of a `wall` (pipe) or of `what` the list of parts "
                                 "names",
                                 "give one of the two");
        }
        list_.prices.push_back(std::move(price));
    }

    const json::Document& document_;
    json::Troubles troubles_;
    PiecePrices list_;
};

} // namespace

Result<PiecePrices, Diagnostics> read_piece_prices(std::string_view text, std::string_view file) {
    auto parsed = json::parse(text);
    std::vector<json::Trouble> troubles = std::move(parsed.troubles);
    if (parsed.complete) {
        PieceFiller filler{parsed.document};
        filler.fill();
        if (troubles.empty() && filler.troubles().empty()) {
            return std::move(filler.list());
        }
        troubles.insert(troubles.end(), filler.troubles().begin(), filler.troubles().end());
    }
    return Failure{json::placed(std::move(troubles), text, file)};
}

} // namespace fluewright
