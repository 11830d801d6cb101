#include "fluewright/io/text/cautions.hpp"

#include <array>

namespace fluewright {
namespace {

constexpr std::array<std::string_view, 6> texts{
    "This is arithmetic, not approval. It tells what air and gas are likely to do in the run as "
    "described; nobody has looked at the real one.",
    "Fire: keep the clearances to everything that can burn which the makers of heater and pipe and "
    "your local code ask for. Sweep the flue: a chimney fire burns hotter than any state above.",
    "Carbon monoxide has no smell and kills in sleep. Put an alarm where the heater stands and "
    "where people sleep. If it sounds, or heads ache, get everybody out and call for help.",
    "Local code comes first, then the instructions of the makers of heater, pipe and chimney; "
    "where "
    "they say otherwise than this report, follow them.",
    "Where the work needs a licence or a permit, have it. A trained sweep or fitter should look at "
    "the finished run before the first fire.",
    "After any change, light a small fire, measure the draft at the outlet and hold a match to "
    "every joint before you trust the run.",
};

constexpr std::array<std::string_view, 4> short_texts{
    "This is arithmetic, not approval: nobody has looked at the real run. Local code comes first, "
    "then the makers' instructions, then this.",
    "Fire: keep the clearances they ask for to everything that can burn. Sweep the flue; a "
    "chimney fire is hotter than any condition above.",
    "Carbon monoxide has no smell and kills: alarms by the heater and where people sleep. If one "
    "sounds or heads ache: everybody out, call for help.",
    "Have a trained, where the law asks licensed, sweep or fitter look at the run; then a small "
    "fire, a draft reading, a match to every joint.",
};

} // namespace

std::span<const std::string_view> cautions() {
    return texts;
}

std::span<const std::string_view> short_cautions() {
    return short_texts;
}

} // namespace fluewright
