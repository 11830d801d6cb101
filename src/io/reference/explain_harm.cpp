#include "explain_pages.hpp"
#include "fluewright/advice/verdict.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright::explaining {
namespace {

std::string per_cent(DefaultId id) {
    return format_quantity(catalog::default_of(id).value, Kind::fraction, UnitSystem::metric, 2);
}

std::string judged(Harm harm) {
    switch (harm) {
    case Harm::fire:
        return "It falls short by one finding that is a danger: a broken clearance, pipe where it "
               "must not pass, a joint that lets gas into a room, fans that draw it in, a missing "
               "alarm. Warnings of the kind are mentioned. Rules that lack a value of the file "
               "are counted; with one of them open nobody can tell.";
    case Harm::draft:
        return "It falls short where high or low fire has less draft than required in one of the "
               "weathers, where smoke comes over the opening of an open fireplace, and by a "
               "finding "
               "that is a fault, such as gusts that push down the flue.";
    case Harm::reloading:
        return fmt::format("It passes where the door may be opened {} on embers without smoke. Not "
                           "asked for, it counts below {}: nobody can reload through that.",
                           per_cent(DefaultId::door_opening_wanted),
                           per_cent(DefaultId::door_opening_least));
    case Harm::upkeep:
        break;
    }
    return "It falls short by a warning or worse: condensation, creosote, too much draft, wet "
           "fuel, "
           "parts that wear.";
}

} // namespace

std::string harm_page(std::string_view id, const Style& style) {
    const Harm harm =
        *std::find_if(harms.begin(), harms.end(), [id](Harm each) { return name(each) == id; });
    std::string out = title_line(fmt::format("{}: {} (a kind of harm)", id, title(harm)), style);
    out += section("How it is judged", judged(harm), style);
    out += section(
        "What counts", fmt::format("{}. `--require` chooses.", in_words(Required{})), style);
    std::string ids;
    for (const Matter& matter : matters()) {
        if (matter.harm == harm) {
            ids += (ids.empty() ? "" : ", ") + std::string{matter.id};
        }
    }
    out += section("Findings", fmt::format("{}.", ids), style);
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright::explaining
