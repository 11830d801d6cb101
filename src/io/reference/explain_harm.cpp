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
        return "It falls short by one danger: a broken clearance, pipe where it must not pass, a "
               "joint that leaks gas, fans that cause a downdraft, a missing alarm. Warnings are "
               "mentioned. A rule that lacks a value of the file leaves it undetermined.";
    case Harm::draft:
        return "It falls short where high or low fire has less draft than required in one of the "
               "weathers. It falls short where an open fireplace smokes, and by a finding that is "
               "a fault, such as downdraft in gusts.";
    case Harm::reloading:
        return fmt::format(
            "It passes where the door may be opened {} on embers without smoke. It counts where "
            "the door smokes opened less than {}: nobody can reload through that.",
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
