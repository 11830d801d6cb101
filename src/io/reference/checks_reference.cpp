#include "fluewright/advice/checks/check.hpp"
#include "fluewright/io/reference/schema.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <fmt/core.h>
#include <iterator>

namespace fluewright {
namespace {

std::string source_of(const Check& check) {
    const catalog::Source* source = catalog::find_source(check.source);
    if (source == nullptr) {
        return fmt::format("{} ({})", check.source, check.mark);
    }
    const bool has_place = !source->place.empty() && source->place != "none";
    const std::string_view where = !check.clause.empty() ? check.clause
                                   : has_place           ? source->place
                                                         : std::string_view{};
    return fmt::format("{}{}{} ({}{}{})",
                       source->document,
                       where.empty() ? "" : ", ",
                       where,
                       source->year,
                       source->year.empty() ? "" : "; ",
                       check.mark);
}

void add_check(const Check& check, std::string& text) {
    const bool own = check.id == check.matter->id;
    const std::string by =
        check.basis == Basis::body ? std::string{check.body} : std::string{name(check.basis)};
    fmt::format_to(std::back_inserter(text),
                   "- {}{}{}: {}. For {}. {}; {}.{}\n",
                   own ? "" : fmt::format("`{}`, ", check.id),
                   by,
                   check.local    ? ", local"
                   : check.advice ? ", trade practice"
                                  : "",
                   check.rule,
                   check.applies,
                   name(check.severity),
                   source_of(check),
                   check.disagrees.empty() ? ""
                                           : fmt::format(" Another source: {}.", check.disagrees));
}

} // namespace

std::string checks_reference_markdown() {
    std::string text =
        "# Checks and findings\n\nMade from the table of checks; `fluewright explain ID` prints "
        "the same. A finding is a matter that at least one check does not find met; its severity "
        "is the worst of them: danger (fire, or smoke and carbon monoxide in the room), fault (the "
        "run does not do its work in some state), warning (a limit of the trade or of a rule is "
        "passed), note. Checks are made by the physics, by trade practice, and, where one is "
        "chosen, by a body of rules (us, uk, ca, au, de). "
        "Beside the severity stands the kind of harm: fire (with carbon monoxide), draft, "
        "reloading "
        "or upkeep. A danger counts as fire, whatever its kind, and the smoke of an open front as "
        "draft.\n";
    for (const Matter& matter : matters()) {
        fmt::format_to(std::back_inserter(text),
                       "\n## {}\n\n**{}** ({}; {}). {}\n\nWhat to do: {}\n\n",
                       matter.id,
                       matter.title,
                       name(matter.severity),
                       name(matter.harm),
                       matter.meaning,
                       matter.remedy);
        for (const Check& check : checks()) {
            if (check.matter == &matter) {
                add_check(check, text);
            }
        }
    }
    return text;
}

} // namespace fluewright
