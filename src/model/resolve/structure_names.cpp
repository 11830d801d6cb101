#include "fluewright/core/same_name.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/structure.hpp"

#include <algorithm>

namespace fluewright {

namespace {

template <class Rows>
void append_ids(std::vector<std::string_view>& names, const Rows& rows) {
    for (const auto& row : rows) {
        names.push_back(row.id);
    }
}

} // namespace

std::vector<std::string_view> known_names(Words words, const Installation& installation) {
    std::vector<std::string_view> names;
    switch (words) {
    case Words::fuels:
        append_ids(names, installation.fuels);
        append_ids(names, catalog::fuels());
        break;
    case Words::walls:
        append_ids(names, installation.walls);
        append_ids(names, catalog::walls());
        break;
    case Words::clay_liners:
        append_ids(names, catalog::clay_liners());
        break;
    case Words::fittings:
        append_ids(names, installation.fittings);
        append_ids(names, catalog::fittings());
        break;
    case Words::materials:
        append_ids(names, catalog::materials());
        names.push_back("air gap");
        break;
    case Words::any_text:
    case Words::choices:
        break;
    }
    return names;
}

bool is_known_name(std::string_view name, Words words, const Installation& installation) {
    if ((words == Words::fuels && catalog::find_fuel(name) != nullptr)
        || (words == Words::walls && catalog::find_wall(name) != nullptr)
        || (words == Words::materials && catalog::find_material(name) != nullptr)) {
        return true;
    }
    const auto names = known_names(words, installation);
    return std::any_of(names.begin(), names.end(), [&](std::string_view known) {
        return is_same_name(known, name);
    });
}

std::string joined(std::span<const std::string_view> words) {
    std::string text;
    for (const auto word : words) {
        text += text.empty() ? "" : ", ";
        text += word;
    }
    return text;
}

} // namespace fluewright
