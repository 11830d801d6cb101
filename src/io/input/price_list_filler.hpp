#pragma once

#include "diagnostic_places.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "json_document.hpp"
#include "json_values.hpp"

#include <cstddef>
#include <fmt/core.h>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

/// What the readers of the two price lists share: an object with a currency and prices.
namespace fluewright {

/// How a price list is written, for complaints.
struct PriceListForm {
    json::Type prices;            ///< of the value of "prices"
    std::string_view prices_are;  ///< "a list in brackets"
    std::string_view prices_like; ///< "[ ... ]"
    std::string_view currency;    ///< an example in its quotes
    std::string_view example;     ///< what to write
};

class PriceListFiller {
public:
    explicit PriceListFiller(const json::Document& document)
        : document_{document}, troubles_{document} {}

    [[nodiscard]] std::vector<json::Trouble>& troubles() { return troubles_.list(); }

protected:
    /// More of anything is no price of pipe, and sums of such would have no figures.
    static constexpr double most_money = 1e9;

    /// As many as a shop's list has.
    static constexpr std::size_t most_prices = 2000;

    /// A price from 0 upwards. `or_null` completes what it may be.
    [[nodiscard]] std::optional<double>
    read_money(const json::Node& node, std::string_view or_null, std::string_view like) {
        if (node.type == json::Type::number && node.number >= 0.0 && node.number <= most_money) {
            return node.number;
        }
        troubles_.at_value(node,
                           fmt::format("`{}` must be a price, a number from 0 to {:.0f}{}",
                                       json::shown(node.key),
                                       most_money,
                                       or_null),
                           {},
                           fmt::format("write \"{}\": {}", json::shown(node.key), like));
        return std::nullopt;
    }

    /// A text of a bounded length; empty where it is none.
    [[nodiscard]] std::optional<std::string_view> read_text(const json::Node& node,
                                                            std::string_view like) {
        if (node.type != json::Type::string) {
            json::wrong_type(node, node.key, "a text", like, troubles_);
            return std::nullopt;
        }
        if (node.text.size() > longest_text) {
            troubles_.at_value(node,
                               fmt::format("`{}` is longer than {} bytes", node.key, longest_text),
                               {},
                               "keep it to a line");
            return std::nullopt;
        }
        return node.text;
    }

    /// Goes through the object; `read_entry` gets each price.
    template <class ReadEntry>
    void fill(const PriceListForm& form, std::string& currency, const ReadEntry& read_entry) {
        const json::Node& root = document_.root();
        if (root.type != json::Type::object) {
            troubles_.at_value(
                root, "a price list is an object in braces", {}, std::string{form.example});
            return;
        }
        bool has_prices = false;
        for_each(root, [&](const json::Node& node) {
            if (node.key == "currency") {
                currency = read_text(node, form.currency).value_or("");
            } else if (node.key == "prices" && node.type == form.prices) {
                has_prices = true;
                if (const auto count = document_.child_count(node); count > most_prices) {
                    troubles_.at_value(
                        node,
                        fmt::format("`prices` has {} entries, more than {}", count, most_prices),
                        {},
                        "leave out what this run has no use for");
                    return;
                }
                for_each(node, read_entry);
            } else if (node.key == "prices") {
                has_prices = true;
                json::wrong_type(node, node.key, form.prices_are, form.prices_like, troubles_);
            } else {
                unknown(node, "a price list", {"currency", "prices"});
            }
        });
        if (!has_prices) {
            troubles_.missing_in(
                root, "a price list lacks the key `prices`", std::string{form.example});
        }
    }

    template <class Visit>
    void for_each(const json::Node& parent, const Visit& visit) const {
        for (auto i = parent.first; i != json::no_node; i = document_.at(i).next) {
            visit(document_.at(i));
        }
    }

    void unknown(const json::Node& node,
                 std::string_view what,
                 const std::vector<std::string_view>& keys) {
        const auto nearest = nearest_word(node.key, keys);
        troubles_.at_key(node,
                         fmt::format("`{}` is not a key of {}", json::shown(node.key), what),
                         joined(keys),
                         nearest ? fmt::format("did you mean `{}`?", *nearest) : "");
    }

    const json::Document& document_;
    json::Troubles troubles_;
};

/// Reads a whole text by a filler that has fill() and list().
template <class Filler>
[[nodiscard]] auto read_price_list(std::string_view text, std::string_view file)
    -> Result<std::remove_cvref_t<decltype(std::declval<Filler&>().list())>, Diagnostics> {
    auto parsed = json::parse(text);
    std::vector<json::Trouble> troubles = std::move(parsed.troubles);
    if (parsed.complete) {
        Filler filler{parsed.document};
        filler.fill();
        if (troubles.empty() && filler.troubles().empty()) {
            return std::move(filler.list());
        }
        troubles.insert(troubles.end(), filler.troubles().begin(), filler.troubles().end());
    }
    return Failure{json::placed(std::move(troubles), text, file)};
}

} // namespace fluewright
