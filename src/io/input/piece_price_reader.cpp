#include "fluewright/io/input/piece_price_reader.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "price_list_filler.hpp"

#include <fmt/core.h>

namespace fluewright {
namespace {

using json::Node;
using json::Type;

constexpr PriceListForm piece_list_form{
    .prices = Type::array,
    .prices_are = "a list in brackets",
    .prices_like = "[ ... ]",
    .currency = "\"crowns\"",
    .example =
        R"(write {"prices": [{"wall": "single-wall steel", "length": "1 m", "each": 21.5}]})"};

class PieceFiller : public PriceListFiller {
public:
    using PriceListFiller::PriceListFiller;

    void fill() {
        PriceListFiller::fill(
            piece_list_form, list_.currency, [&](const Node& entry) { read_entry(entry); });
    }

    [[nodiscard]] PiecePrices& list() { return list_; }

private:
    std::optional<double> money(const Node& node) {
        if (node.type == Type::nothing) {
            return std::nullopt;
        }
        return read_money(node, ", or null where there is none", "21.5");
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
        // What is none is told already; that there is something counts.
        return std::string{read_text(node, "\"...\"").value_or("")};
    }

    void read_entry(const Node& entry) {
        if (entry.type != Type::object) {
            troubles_.at_value(
                entry, "a price is an object in braces", {}, std::string{piece_list_form.example});
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
            } else if (node.key == "per_meter" || node.key == "per_metre") {
                price.per_metre = money(node);
            } else if (node.key == "per_foot") {
                const auto foot = money(node);
                price.per_metre = foot ? std::optional{*foot / constants::foot_m} : std::nullopt;
            } else {
                unknown(node,
                        "a price",
                        {"wall",
                         "what",
                         "diameter",
                         "length",
                         "telescopes",
                         "each",
                         "per_meter",
                         "per_foot"});
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

    PiecePrices list_;
};

} // namespace

Result<PiecePrices, Diagnostics> read_piece_prices(std::string_view text, std::string_view file) {
    return read_price_list<PieceFiller>(text, file);
}

} // namespace fluewright
