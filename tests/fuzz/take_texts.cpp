// The grammars: JSON, quantities and ranges, and the lists beside an installation.
#include "fluewright/advice/study/varied.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/core/quantity/quantity_range.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/input/piece_price_reader.hpp"
#include "fluewright/io/input/price_reader.hpp"
#include "fluewright/io/report/parts_text.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "io/input/json_document.hpp"
#include "takers.hpp"

#include <cmath>
#include <fstream>
#include <iterator>

using namespace fluewright;

namespace fuzz {
namespace {

struct Shop {
    Installation written;
    Case resolved;
    Solution solution;
};

/// The run whose parts the stock and the prices are for.
const Shop& shop() {
    static const Shop made = [] {
        std::ifstream file(PROJECT_SOURCE_DIR "/examples/toll-house.json", std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        Shop shop{.written = read_installation(text).value(), .resolved = {}, .solution = {}};
        shop.resolved = resolve(shop.written).value();
        shop.solution = solve(shop.resolved, Detail::stations);
        return shop;
    }();
    return made;
}

void list_parts(const PartsWishes& wishes, std::string_view text) {
    const PartsList list = parts_list(shop().written, shop().resolved, shop().solution, wishes);
    PartsReportOptions report{.style = {}, .input = {}, .assumptions = shop().resolved.assumptions};
    insist_visible(parts_text(list, report), text);
    insist_visible(parts_json(list, report), text);
    insist_visible(parts_csv(list), text);
    insist(!list.price || std::isfinite(*list.price), "a price is not finite", text);
}

/// What a reader refuses has a reason, a place, and words that can be shown.
void insist_told(const Diagnostics& diagnostics, std::string_view text) {
    insist(!diagnostics.empty(), "refused without a reason", text);
    insist_visible(diagnostics_text(diagnostics), text);
    insist_visible(diagnostics_json(diagnostics, "check", {}), text);
}

} // namespace

void take_json(std::string_view text) {
    const json::Parsed parsed = json::parse(text);
    insist(parsed.complete || !parsed.troubles.empty(), "not complete, without a reason", text);
    for (const json::Trouble& trouble : parsed.troubles) {
        insist(trouble.offset <= text.size(), "a fault beyond the text", text);
        insist(!trouble.fault.message.empty(), "a fault without words", text);
        insist(json::place_of(text, trouble.offset).line > 0, "a fault without a place", text);
    }
    insist_visible(json::visible(text), text);
    insist_visible(json::shown(text), text);
    const json::Document& document = parsed.document;
    bool exact = false;
    static_cast<void>(document.nearest_to("/run/0/part", exact));
    // Every value is found again by its pointer. Of two with one key that is the first.
    if (parsed.complete && parsed.troubles.empty()) {
        const json::Node* node = &document.root();
        while (node->first != json::no_node) {
            node = &document.at(node->first);
            const std::string pointer = document.pointer_to(*node);
            const json::Node& found = document.nearest_to(pointer, exact);
            insist(exact && &found == node, "a pointer that leads elsewhere", text);
        }
    }
}

void take_quantity(std::string_view text) {
    for (const Kind kind : all_kinds()) {
        if (const Result<Quantity, QuantityError> quantity = parse_quantity(text, kind)) {
            insist(std::isfinite(quantity->value) && std::isfinite(quantity->tolerance)
                       && quantity->tolerance >= 0.0,
                   "a quantity is not finite",
                   text);
            for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
                const auto again =
                    parse_quantity(write_quantity(quantity->value, kind, units), kind);
                insist(again && again->value == quantity->value, "written as another", text);
                insist_visible(format_quantity(quantity->value, kind, units), text);
            }
        } else {
            insist(!quantity.error().message.empty(), "refused without a reason", text);
        }
        if (const auto range = parse_range(text, kind)) {
            insist(!range->empty() && range->size() <= 1000, "a range without bounds", text);
            for (const double value : *range) {
                insist(std::isfinite(value), "a value of a range is not finite", text);
            }
        } else {
            insist(!range.error().empty(), "a range refused without a reason", text);
        }
    }
    for (const char* name : {"height=", "fuel=", ""}) {
        const auto varied = read_varied_words(name + std::string{text}, shop().written);
        insist(varied ? !varied->values.empty() : !varied.error().empty(),
               "nothing to vary, without a reason",
               text);
    }
}

void take_stock(std::string_view text) {
    auto stock = read_stock(text, "stock.json");
    if (!stock) {
        insist_told(stock.error(), text);
        return;
    }
    const Faults faults = box_faults(*stock, shop().written, shop().resolved);
    static_cast<void>(locate(faults, text, "stock.json"));
    for (const bool from_box : {false, true}) {
        list_parts({.at_hand = *stock, .prices = {}, .thermometer = true, .from_box = from_box},
                   text);
    }
}

void take_prices(std::string_view text) {
    if (const auto prices = read_prices(text, "prices.json")) {
        for (const auto& [name, price] : prices->prices) {
            insist(std::isfinite(price.fixed + price.per_metre), "a price is not finite", text);
        }
    } else {
        insist_told(prices.error(), text);
    }
    if (auto prices = read_piece_prices(text, "prices.json")) {
        list_parts(
            {.at_hand = {}, .prices = std::move(*prices), .thermometer = true, .from_box = false},
            text);
    } else {
        insist_told(prices.error(), text);
    }
}

} // namespace fuzz
