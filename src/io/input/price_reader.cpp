#include "fluewright/io/input/price_reader.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "price_list_filler.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {
namespace {

using json::Node;
using json::Type;

using constants::foot_m;

constexpr PriceListForm remedy_list_form{
    .prices = Type::object,
    .prices_are = "an object in braces",
    .prices_like = "{ ... }",
    .currency = "\"EUR\"",
    .example = R"(write {"currency": "EUR", "prices": {"sweep": 90}})"};

class PriceFiller : public PriceListFiller {
public:
    using PriceListFiller::PriceListFiller;

    void fill() {
        PriceListFiller::fill(
            remedy_list_form, list_.currency, [&](const Node& entry) { read_entry(entry); });
    }

    [[nodiscard]] PriceList& list() { return list_; }

private:
    double money(const Node& node) { return read_money(node, "", "90").value_or(0.0); }

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
                    price.fixed = money(child);
                } else if (child.key == "per_meter" || child.key == "per_metre") {
                    price.per_metre = money(child);
                } else if (child.key == "per_foot") {
                    price.per_metre = money(child) / foot_m;
                } else {
                    unknown(child, "a price", {"fixed", "per_meter", "per_foot"});
                }
            });
        } else {
            price.fixed = money(node);
        }
        list_.prices.insert_or_assign(std::string{node.key}, price);
    }

    PriceList list_;
};

} // namespace

Result<PriceList, Diagnostics> read_prices(std::string_view text, std::string_view file) {
    return read_price_list<PriceFiller>(text, file);
}

} // namespace fluewright
