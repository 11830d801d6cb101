#include "fluewright/io/text/cautions.hpp"

#include <array>
#include <span>

namespace fluewright {
namespace {

struct Caution {
    std::string_view words;
    std::string_view
        of_burners{}; ///< in their place where a burner is all there is; empty: they hold
};

constexpr std::array<Caution, 6> texts{{
    {"This is arithmetic, not approval. It tells what air and gas are likely to do in the run as "
     "described; nobody has looked at the real one."},
    {"Fire: keep the clearances to combustibles that the makers and your local code require. Sweep "
     "the flue: a chimney fire burns hotter than any condition above.",
     "Fire: keep the clearances to combustibles that the makers and your local code require. Have "
     "burner and vent inspected every year."},
    {"Carbon monoxide has no smell and kills in sleep. Put an alarm where the heater stands and "
     "where people sleep. If it sounds, or anybody has a headache, get everybody out and call for "
     "help."},
    {"Local code comes first, then the instructions of the makers of heater, pipe and chimney; "
     "where they differ from this report, follow them.",
     "Local code comes first, then the instructions of the makers of burner and vent; where they "
     "differ from this report, follow them."},
    {"Where the work needs a license or a permit, have it. A trained sweep or fitter should look "
     "at the finished run before the first fire.",
     "Where the work needs a license or a permit, have it. A trained fitter, licensed where the "
     "law requires it, should check the finished run before the burner starts."},
    {"After any change, light a small fire, measure the draft at the outlet and hold a match to "
     "every joint before you trust the run.",
     "After any change, have the burner's gas measured at the start and while it runs, with every "
     "fan of the house on. Check for spillage before you trust the run."},
}};

constexpr std::array<Caution, 4> short_texts{{
    {"This is arithmetic, not approval: nobody has looked at the real run. Local code comes first, "
     "then the makers' instructions, then this."},
    {"Fire: keep the clearances to combustibles that they require. Sweep the flue; a chimney fire "
     "is hotter than any condition above.",
     "Fire: keep the clearances to combustibles that they require. Have burner and vent inspected "
     "every year."},
    {"Carbon monoxide has no smell and kills: alarms by the heater and where people sleep. If one "
     "sounds, or anybody has a headache: everybody out, and call for help."},
    {"Have a trained sweep or fitter look at the run, licensed where the law requires it. Then "
     "light a small fire, measure the draft, and hold a match to every joint.",
     "Have a trained fitter check the run, licensed where the law requires it. Then, with every "
     "fan of the house on, check for spillage when the burner starts and while it runs."},
}};

std::vector<std::string_view> of_kind(std::span<const Caution> rows,
                                      std::optional<HeaterKind> kind) {
    std::vector<std::string_view> words;
    for (const Caution& row : rows) {
        const bool own = kind && burners.has(*kind) && !row.of_burners.empty();
        words.push_back(own ? row.of_burners : row.words);
    }
    return words;
}

} // namespace

std::vector<std::string_view> cautions(std::optional<HeaterKind> kind) {
    return of_kind(texts, kind);
}

std::vector<std::string_view> short_cautions(std::optional<HeaterKind> kind) {
    return of_kind(short_texts, kind);
}

} // namespace fluewright
