#include "fluewright/io/report/price_template.hpp"

#include "io/json/json_text.hpp"

#include <algorithm>
#include <fmt/core.h>
#include <vector>

namespace fluewright {
std::string price_template(const PartsList& list, UnitSystem units) {
    std::vector<std::string> entries;
    const auto add = [&](std::string entry) {
        if (std::find(entries.begin(), entries.end(), entry) == entries.end()) {
            entries.push_back(std::move(entry));
        }
    };
    for (const PricedLength& length : list.sold) {
        add(fmt::format(R"({{"wall": {}, "diameter": {}, "length": {}, {}"each": null}})",
                        json::quoted(length.wall),
                        json::quoted(write_quantity(length.diameter_m, Kind::length, units)),
                        json::quoted(write_quantity(length.length_m, Kind::length, units)),
                        length.telescopes ? R"("telescopes": true, )" : ""));
    }
    for (const PartsLine& line : list.lines) {
        if (line.pipe || line.what.empty()) {
            continue;
        }
        const std::string size =
            line.diameter_m > 0.0
                ? fmt::format(R"("diameter": {}, )",
                              json::quoted(write_quantity(line.diameter_m, Kind::length, units)))
                : "";
        add(fmt::format(R"({{"what": {}, {}"each": null}})", json::quoted(line.what), size));
    }
    std::string out = "{\n  // Prices of what this run can ask for. Put a number in place of null; "
                      "what stays null is not priced.\n  // \"each\" is of one (of a kilogram "
                      "where the list weighs). In place of the lengths of a wall one entry may "
                      "give\n  // \"per_meter\" or \"per_foot\". Where some lengths of a pipe are "
                      "priced, only those are bought.\n  \"currency\": \"\",\n  \"prices\": [\n";
    for (std::size_t i = 0; i < entries.size(); ++i) {
        out += "    " + entries[i] + (i + 1 < entries.size() ? ",\n" : "\n");
    }
    return out + "  ]\n}\n";
}

} // namespace fluewright
