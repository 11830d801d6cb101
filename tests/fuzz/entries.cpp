#include "entries.hpp"

#include "takers.hpp"

#include <algorithm>
#include <array>

namespace fuzz {
namespace {

constexpr std::array<Entry, 8> all{{{"json", take_json, change_text},
                                    {"quantity", take_quantity, change_text},
                                    {"check", take_check, change_text},
                                    {"batch", take_batch, change_lines},
                                    {"stock", take_stock, change_text},
                                    {"prices", take_prices, change_text},
                                    {"dialogue", take_dialogue, change_lines},
                                    {"installation", take_installation, change_installation}}};

} // namespace

std::span<const Entry> entries() {
    return all;
}

const Entry* find_entry(std::string_view name) {
    const auto found =
        std::find_if(all.begin(), all.end(), [name](const Entry& e) { return e.name == name; });
    return found == all.end() ? nullptr : &*found;
}

} // namespace fuzz
