#include "fluewright/io/input/price_reader.hpp"

#include "diagnostic_places.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "json_document.hpp"
#include "json_values.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {
namespace {

using json::Node;
using json::Type;

using constants::foot_m;

class Filler {
public:
    explicit Filler(const json::Document& document) : document_{document}, troubles_{document} {}

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
                json::wrong_type(node, node.key, "a text", "\"EUR\"", troubles_);
            } else if (node.key == "prices" && node.type == Type::object) {
                has_prices = true;
                for_each(node, [&](const Node& entry) { read_entry(entry); });
            } else if (node.key == "prices") {
                has_prices = true;
                json::wrong_type(node, node.key, "an object in braces", "{ ... }", troubles_);
            } else {
                unknown(node, "a price list", {"currency", "prices"});
            }
        });
        if (!has_prices) {
            troubles_.missing_in(root, "a price list lacks the key `prices`", example());
        }
    }

    [[nodiscard]] PriceList& list() { return list_; }

    [[nodiscard]] std::vector<json::Trouble>& troubles() { return troubles_.list(); }

private:
    static std::string example() { return R"(write {"currency": "EUR", "prices": {"sweep": 90}})"; }

    template <class Visit>
    void for_each(const Node& object, const Visit& visit) const {
        for (auto i = object.first; i != json::no_node; i = document_.at(i).next) {
            visit(document_.at(i));
        }
    }

    void
    unknown(const Node& node, std::string_view what, const std::vector<std::string_view>& keys) {
        const auto nearest = nearest_word(node.key, keys);
        troubles_.at_key(node,
                         fmt::format("`{}` is not a key of {}", json::shown(node.key), what),
                         joined(keys),
                         nearest ? fmt::format("did you mean `{}`?", *nearest) : "");
    }

    double read_money(const Node& node) {
        if (node.type != Type::number || node.number < 0.0) {
            troubles_.at_value(
                node,
                fmt::format("`{}` must be a price, a number from 0 upwards", node.key),
                {},
                fmt::format("write \"{}\": 90", node.key));
            return 0.0;
        }
        return node.number;
    }

    void read_entry(const Node& node) {
        const auto rows = catalog::remedy_efforts();
        std::vector<std::string_view> ids;
        for (const catalog::RemedyEffort& row : rows) {
            ids.push_back(row.id);
        }
        if (std::find(ids.begin(), ids.end(), node.key) == ids.end()) {
            unknown(node, "`prices`", ids);
            return;
        }
        Price price;
        if (node.type == Type::object) {
            for_each(node, [&](const Node& child) {
                if (child.key == "fixed") {
                    price.fixed = read_money(child);
                } else if (child.key == "per_metre") {
                    price.per_metre = read_money(child);
                } else if (child.key == "per_foot") {
                    price.per_metre = read_money(child) / foot_m;
                } else {
                    unknown(child, "a price", {"fixed", "per_metre", "per_foot"});
                }
            });
        } else {
            price.fixed = read_money(node);
        }
        list_.prices.insert_or_assign(std::string{node.key}, price);
    }

    const json::Document& document_;
    json::Troubles troubles_;
    PriceList list_;
};

} // namespace

Result<PriceList, Diagnostics> read_prices(std::string_view text, std::string_view file) {
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
