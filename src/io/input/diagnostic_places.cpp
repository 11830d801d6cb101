#include "diagnostic_places.hpp"

#include "old_spellings.hpp"

#include <algorithm>

namespace fluewright {

namespace json {

Trouble trouble_of(Fault fault, const Document& document) {
    bool exact = false;
    const Node& node = document.nearest_to(fault.pointer, exact);
    const bool single = node.type != Type::object && node.type != Type::array;
    if (single && !exact) {
        fault.pointer = document.pointer_to(node); // the bare text that stands for an object
    }
    if (single && fault.found.empty()) {
        fault.found = shown(document.typed(node));
    }
    return {node.begin, std::move(fault)};
}

Diagnostics placed(std::vector<Trouble> troubles, std::string_view text, std::string_view file) {
    std::stable_sort(troubles.begin(), troubles.end(), [](const Trouble& a, const Trouble& b) {
        return a.offset < b.offset;
    });
    Diagnostics diagnostics;
    diagnostics.reserve(troubles.size());
    // Counting goes on from one fault to the next: a long file with many faults is read once.
    std::size_t line_start = 0;
    int line = 1;
    std::size_t at = 0;
    for (auto& trouble : troubles) {
        const auto offset = std::min(trouble.offset, text.size());
        for (; at < offset; ++at) {
            if (text[at] == '\n') {
                ++line;
                line_start = at + 1;
            }
        }
        // In one line there is no line feed to count; only the first one may hold a mark.
        const auto start = line == 1 ? 0 : line_start;
        const auto place = place_of(text.substr(start), offset - start);
        diagnostics.push_back({std::string{file}, line, place.column, std::move(trouble.fault)});
    }
    return diagnostics;
}

} // namespace json

Diagnostics locate(const Faults& faults, std::string_view text, std::string_view file) {
    const auto parsed = json::parse_installation(text);
    std::vector<json::Trouble> troubles;
    for (const auto& fault : faults) {
        troubles.push_back(parsed.complete ? json::trouble_of(fault, parsed.document)
                                           : json::Trouble{0, fault});
    }
    return json::placed(std::move(troubles), text, file);
}

} // namespace fluewright
