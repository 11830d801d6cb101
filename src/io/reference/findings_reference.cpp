#include "fluewright/advice/checks/finding.hpp"
#include "fluewright/io/reference/schema.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <fmt/core.h>

namespace fluewright {

std::string findings_reference_markdown() {
    std::string text =
        "# Findings\n\nMade from the table of findings; `fluewright explain ID` prints the "
        "same. Severities, greatest first: danger (smoke or gas in the room, or more "
        "heat than a part stands), fault (the run does not do its work in some state), "
        "warning (a limit of the trade is passed), note.\n";
    for (const FindingInfo& row : finding_table()) {
        const catalog::Source* source = catalog::find_source(row.source);
        fmt::format_to(
            std::back_inserter(text),
            "\n## {}\n\n**{}** ({}). {}\n\nRule: {}\n\nWhat to do: {}\n\nSource: {}, {} ({})\n",
            row.id,
            row.title,
            name(row.severity),
            row.meaning,
            row.rule,
            row.remedy,
            source != nullptr ? source->document : row.source,
            source != nullptr ? source->place : "",
            row.mark);
    }
    return text;
}

} // namespace fluewright
