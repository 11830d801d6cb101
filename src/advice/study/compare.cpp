#include "fluewright/advice/study/compare.hpp"

#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/core/quantity/money.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright {
namespace {

constexpr double same_spare = 0.005;
constexpr double same_length_m = 0.03; // an inch: nobody chooses by less

void measure_run(Layout& layout) {
    const Case& c = layout.assessment.installation;
    layout.least_area_m2 = std::numeric_limits<double>::infinity();
    double last_m = 0.0;
    for (const Section& section : c.sections) {
        layout.turns_rad += section.turn_rad;
        if (section.length_m <= 0.0) {
            continue;
        }
        layout.pipe_m += section.length_m;
        layout.level_m += section.rise_m < 0.5 * section.length_m ? section.length_m : 0.0;
        layout.least_area_m2 = std::min(layout.least_area_m2, section.area_m2);
        const double diameter_m = std::sqrt(4.0 / constants::pi * section.area_m2);
        if (std::abs(diameter_m - last_m) > 0.5e-3) {
            layout.sizes += (layout.sizes.empty() ? "" : ", ")
                            + format_quantity(diameter_m, Kind::length, c.units);
            last_m = diameter_m;
        }
    }
    layout.rise_m = c.total_rise_m();
}

void count_findings(Layout& layout) {
    for (const Finding& finding : layout.assessment.findings) {
        const Severity severity = finding.severity;
        layout.failures += severity == Severity::danger || severity == Severity::failure ? 1U : 0U;
        layout.warnings += severity == Severity::warning ? 1U : 0U;
    }
}

double counted_spare(const Layout& layout) {
    return std::min(layout.score.least_spare,
                    catalog::default_of(DefaultId::spare_wanted_share).value);
}

/// Dangers that count.
std::size_t dangers(const Layout& layout) {
    const HarmVerdict& fire = layout.assessment.verdict.of(Harm::fire);
    return fire.counts ? fire.short_of : 0U;
}

/// Whether the file leaves open what fire and carbon monoxide hang on.
bool is_open(const Layout& layout) {
    const Verdict& verdict = layout.assessment.verdict;
    return verdict.of(Harm::fire).counts && verdict.leaves_fire_open();
}

/// What decided between two layouts, in the order of the rules.
enum class Reason : std::uint8_t {
    works,
    decided,
    failures,
    spare,
    warnings,
    cost,
    pipe,
    pieces,
    none
};

/// Whether two lists of parts tell which costs less: what has no price must not win by it.
bool costs_compare(const Layout& a, const Layout& b) {
    return a.parts.price && b.parts.price && a.parts.unpriced == b.parts.unpriced;
}

/// Costs less by more than anybody chooses by; common practice, no source.
bool costs_less(const Layout& a, const Layout& b) {
    constexpr double same_cost = 0.01;
    return costs_compare(a, b) && *a.parts.price < (1.0 - same_cost) * *b.parts.price;
}

/// Whether `a` is better than `b`, and by what.
bool is_better(const Layout& a, const Layout& b, Reason& reason) {
    reason = Reason::works;
    if (a.assessment.works() != b.assessment.works()) {
        return a.assessment.works();
    }
    reason = Reason::failures;
    if (dangers(a) != dangers(b)) {
        return dangers(a) < dangers(b);
    }
    // Who leaves a distance out must not win by it.
    if (a.assessment.works() && is_open(a) != is_open(b)) {
        reason = Reason::decided;
        return !is_open(a);
    }
    if (a.assessment.works() && a.failures != b.failures) {
        return a.failures < b.failures;
    }
    reason = Reason::spare;
    if (std::abs(counted_spare(a) - counted_spare(b)) > same_spare) {
        return counted_spare(a) > counted_spare(b);
    }
    reason = Reason::warnings;
    if (a.warnings != b.warnings) {
        return a.warnings < b.warnings;
    }
    reason = Reason::cost;
    if (costs_less(a, b) || costs_less(b, a)) {
        return costs_less(a, b);
    }
    reason = Reason::pipe;
    if (std::abs(a.pipe_m - b.pipe_m) > same_length_m) {
        return a.pipe_m < b.pipe_m;
    }
    reason = Reason::pieces;
    if (a.pieces_bought != b.pieces_bought) {
        return a.pieces_bought < b.pieces_bought;
    }
    // Alike for a reader; of these the order of the files shall not decide.
    reason = Reason::none;
    return counted_spare(a) > counted_spare(b);
}

std::string tightest_words(const Layout& layout) {
    const Case& c = layout.assessment.installation;
    const Score& score = layout.score;
    const StateResult& state = score.states[score.limiting];
    const StateVerdict& verdict = score.verdicts[score.limiting];
    const std::string figure =
        verdict.kind == Kind::pressure && !has_figures(state)
            ? std::string{in_place_of_figures(state)}
        : verdict.kind == Kind::pressure
            ? format_quantity(std::abs(verdict.spare), Kind::pressure, c.units)
                  + (verdict.spare < 0.0 ? " short" : " to spare")
            : opening_words(c, state);
    return state_name(c, state) + " (" + figure + ")";
}

/// What counts and falls short, the worst kind of harm first.
std::string short_words(const Layout& layout) {
    const Assessment& a = layout.assessment;
    if (!layout.score.passes && dangers(layout) == 0) {
        return tightest_words(layout);
    }
    const std::vector<const Matter*> found = matters_against(a);
    return found.empty() ? tightest_words(layout) : std::string{found.front()->title};
}

std::string others_fall_short(const Comparison& made) {
    std::string words;
    for (std::size_t i = 0; i < made.layouts.size(); ++i) {
        const Layout& layout = made.layouts[i];
        if (i != made.best && !layout.assessment.works()) {
            words += ' ' + layout.name + " falls short: " + short_words(layout) + ".";
        }
    }
    return words;
}

std::string counts(std::size_t a, std::size_t b, std::string_view what) {
    return std::to_string(a) + " against " + std::to_string(b) + ' ' + std::string{what};
}

/// "300.00 EUR against 400.00 EUR of other"
std::string costs(const Layout& a, const Layout& b) {
    const auto words = [](const Layout& layout) {
        return format_money(*layout.parts.price, layout.parts.currency);
    };
    return words(a) + " against " + words(b) + " of " + b.name;
}

std::string pieces(const Layout& a, const Layout& b) {
    return format_number(a.pieces_bought, 4) + " against " + format_number(b.pieces_bought, 4)
           + " of " + b.name;
}

/// Why the best is better than the next one.
std::string why(const Layout& best, const Layout& next, Reason reason) {
    const UnitSystem units = best.assessment.installation.units;
    switch (reason) {
    case Reason::spare:
        return "it has most to spare; the smallest relative margin is in " + tightest_words(best)
               + ", of " + next.name + ' ' + tightest_words(next) + ".";
    case Reason::decided:
        return "its fire is decided, and that of " + next.name
               + " is not: `check` says what its file must tell.";
    case Reason::failures:
        return "others draw as well, but it has fewer dangers and faults, "
               + counts(best.failures, next.failures, "of " + next.name) + ".";
    case Reason::warnings:
        return "it has as much to spare as any, and fewer warnings, "
               + counts(best.warnings, next.warnings, "of " + next.name) + ".";
    case Reason::cost:
        return "it has as much to spare as any, and its parts cost less, " + costs(best, next)
               + ".";
    case Reason::pieces:
        return "it has as much to spare as any, and takes fewer pieces to buy, "
               + pieces(best, next) + ".";
    case Reason::pipe:
        return "it has as much to spare as any, and takes less pipe, "
               + format_quantity(best.pipe_m, Kind::length, units) + " against "
               + format_quantity(next.pipe_m, Kind::length, units) + " of " + next.name + ".";
    case Reason::works:
    case Reason::none:
        break;
    }
    return "the smallest relative margin is in " + tightest_words(best) + ".";
}

/// The best of the others; the one a reader would otherwise take. Not all come to the same.
const Layout& next_best(const Comparison& made) {
    std::size_t next = made.best;
    Reason reason{};
    for (std::size_t i = 0; i < made.layouts.size(); ++i) {
        const bool is_other =
            i != made.best && std::find(made.tied.begin(), made.tied.end(), i) == made.tied.end();
        if (is_other
            && (next == made.best || is_better(made.layouts[i], made.layouts[next], reason))) {
            next = i;
        }
    }
    return made.layouts[next];
}

/// What the next best has that the best has not, with the figures; empty where nothing.
std::string for_the_next(const Layout& best, const Layout& next) {
    const UnitSystem units = best.assessment.installation.units;
    const auto against = [&](double a, double b, Kind kind) {
        return format_quantity(a, kind, units) + " against " + format_quantity(b, kind, units);
    };
    if (next.failures < best.failures) {
        return "fewer dangers and faults count for more, "
               + counts(next.failures, best.failures, "of " + best.name);
    }
    if (next.score.least_spare > best.score.least_spare + same_spare) {
        return "a greater margin counts for more, in " + tightest_words(next);
    }
    if (next.warnings < best.warnings) {
        return "fewer warnings count for more, "
               + counts(next.warnings, best.warnings, "of " + best.name);
    }
    if (costs_less(next, best)) {
        return "less cost counts for more, " + costs(next, best);
    }
    if (next.pipe_m < best.pipe_m - same_length_m) {
        return "less pipe counts for more, " + against(next.pipe_m, best.pipe_m, Kind::length);
    }
    if (next.turns_rad < best.turns_rad - 0.01) {
        return "fewer turns count for more, "
               + against(next.turns_rad, best.turns_rad, Kind::angle);
    }
    if (next.pieces_bought < best.pieces_bought) {
        return "fewer pieces to buy count for more, " + pieces(next, best);
    }
    return {};
}

/// Those that come to the same as the best, as a sentence after another; empty where none does.
std::string tied_words(const Comparison& made) {
    std::string names;
    for (std::size_t n = 0; n < made.tied.size(); ++n) {
        names += (n == 0                      ? ""
                  : n + 1 == made.tied.size() ? " and "
                                              : ", ")
                 + made.layouts[made.tied[n]].name;
    }
    return names.empty() ? names
                         : ' ' + names + (made.tied.size() == 1 ? " comes" : " come")
                               + " to the same as " + made.layouts[made.best].name + '.';
}

/// Of two that pass: what would speak for the other one.
std::string unless_words(const Layout& best, const Layout& next) {
    if (is_open(next) && !is_open(best)) {
        return {};
    }
    const std::string other = next.assessment.works() ? for_the_next(best, next) : std::string{};
    return other.empty() ? "" : " Take " + next.name + " only where " + other + ".";
}

std::string sentence_of(const Comparison& made) {
    const Layout& best = made.layouts[made.best];
    if (made.alike) {
        return "The layouts come to the same: the smallest relative margin is in "
               + tightest_words(best) + ".";
    }
    if (!best.assessment.works()) {
        return "Every one is short of something that counts. The nearest is " + best.name + ": "
               + short_words(best) + "." + tied_words(made)
               + " `fluewright improve` looks for what it lacks.";
    }
    Reason reason{};
    const Layout& next = next_best(made);
    is_better(best, next, reason);
    const std::string open =
        is_open(best) ? " But its fire is not decided: `check` says what the file must tell." : "";
    if (reason == Reason::works && made.tied.empty()) {
        return "Take " + best.name
               + ": it alone is short of nothing that counts; the smallest relative margin is in "
               + tightest_words(best) + "." + open + others_fall_short(made);
    }
    return "Take " + best.name + ": " + why(best, next, reason) + open + tied_words(made)
           + unless_words(best, next) + others_fall_short(made);
}

} // namespace

Layout layout_of(std::string name,
                 Installation written,
                 Assessment assessment,
                 const PiecePrices& prices) {
    Layout layout;
    layout.parts = parts_list(written, assessment, {.at_hand = {}, .prices = prices});
    for (const PartsLine& line : layout.parts.lines) {
        layout.pieces_bought += line.at_hand || line.diameter_m <= 0.0 ? 0.0 : line.count;
    }
    layout.name = std::move(name);
    layout.written = std::move(written);
    layout.score = score_of(assessment);
    layout.assessment = std::move(assessment);
    measure_run(layout);
    count_findings(layout);
    return layout;
}

Comparison compare(std::vector<Layout> layouts) {
    Comparison made;
    made.layouts = std::move(layouts);
    Reason reason{};
    for (std::size_t i = 1; i < made.layouts.size(); ++i) {
        made.best = is_better(made.layouts[i], made.layouts[made.best], reason) ? i : made.best;
    }
    for (std::size_t i = 0; i < made.layouts.size(); ++i) {
        (void)is_better(made.layouts[i], made.layouts[made.best], reason);
        if (i != made.best && reason == Reason::none) {
            made.tied.push_back(i);
        }
    }
    made.alike = made.tied.size() + 1 == made.layouts.size();
    made.sentence = sentence_of(made);
    return made;
}

std::vector<PartDifference> part_differences(const Comparison& made) {
    std::vector<PartDifference> all;
    for (std::size_t i = 0; i < made.layouts.size(); ++i) {
        for (const PartsLine& line : made.layouts[i].parts.lines) {
            if (line.at_hand) {
                continue;
            }
            auto at = std::find_if(all.begin(), all.end(), [&](const PartDifference& each) {
                return each.what == line.what && each.size == line.size && each.unit == line.unit;
            });
            if (at == all.end()) {
                at = all.insert(
                    all.end(),
                    {line.what, line.size, line.unit, std::vector<double>(made.layouts.size())});
            }
            at->counts[i] += line.count;
        }
    }
    std::erase_if(all, [](const PartDifference& each) {
        return std::all_of(each.counts.begin(), each.counts.end(), [&](double count) {
            return std::abs(count - each.counts.front()) < 1e-9;
        });
    });
    return all;
}

} // namespace fluewright
