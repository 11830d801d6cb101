#include "sweep_words.hpp"

#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/sizing/height_steps.hpp"
#include "fluewright/advice/unsolved.hpp"

#include <algorithm>

namespace fluewright {
namespace {

std::string value_words(const Sweep& made, std::size_t which, double value) {
    const Varied& varied = made.over[which];
    return format_in_unit(value, varied.key.kind, shown_unit(varied, made.present.units));
}

std::string range_words(const Sweep& made, std::size_t which) {
    const auto& values = made.over[which].values;
    return value_words(made, which, values.front()) + " to "
           + value_words(made, which, values.back());
}

/// "low fire, mild day (1.2 Pa to spare)"
std::string tightest_words(const Sweep& made, const Score& score) {
    const StateResult& state = score.states[score.limiting];
    const StateVerdict& verdict = score.verdicts[score.limiting];
    const UnitSystem units = made.present.units;
    const std::string figure = verdict.kind == Kind::pressure && !has_figures(state)
                                   ? std::string{in_place_of_figures(state)}
                               : verdict.kind == Kind::pressure
                                   ? format_quantity(std::abs(verdict.spare), Kind::pressure, units)
                                         + (verdict.spare < 0.0 ? " short" : " to spare")
                                   : opening_words(made.shape, state);
    return state_name(made.shape, state) + " (" + figure + ")";
}

/// The tightest condition of a point, and what stands against it though that passes.
std::string tightest_at(const Sweep& made, const SweepPoint& point) {
    return tightest_words(made, *point.score)
           + (point.score->passes && !point.works ? ", but this remains: " + point.short_of : "");
}

std::string place_words(const Sweep& made, const SweepPoint& point) {
    std::string words;
    for (std::size_t i = 0; i < made.over.size(); ++i) {
        words += (i == 0 ? "" : " and ") + made.over[i].key.label + ' '
                 + value_words(made, i, point.at[i]);
    }
    return words;
}

/// The point with the least or the most to spare, for the most one that works before one that does
/// not; null where none was solved.
const SweepPoint* extreme(const Sweep& made, bool most) {
    const SweepPoint* found = nullptr;
    for (const SweepPoint& point : made.points) {
        if (!point.score) {
            continue;
        }
        const bool better =
            found != nullptr && point.works != found->works
                ? most && point.works
                : found == nullptr
                      || (most ? point.score->least_spare > found->score->least_spare
                               : point.score->least_spare < found->score->least_spare);
        if (better) {
            found = &point;
        }
    }
    return found;
}

std::string intervals(const Sweep& made) {
    const auto& values = made.over[0].values;
    std::string passing;
    double from = values.front();
    bool inside = made.points.front().passes();
    const auto add = [&](double low, double high) {
        passing += (passing.empty() ? "from " : " and from ") + value_words(made, 0, low) + " to "
                   + value_words(made, 0, high);
    };
    for (const SweepTurn& turn : made.turns) {
        if (inside) {
            add(from, turn.at);
        }
        from = turn.at;
        inside = turn.passes_above;
    }
    if (inside) {
        add(from, values.back());
    }
    return passing;
}

/// The least height that passes is no height of the trade: the next one that is.
std::string as_built(const Sweep& made, const SweepTurn& turn) {
    if (made.over[0].key.what != VariedKey::What::height || !turn.passes_above) {
        return {};
    }
    const double built_m = built_height_m(turn.at, made.present.units);
    const auto next = std::find_if(made.turns.begin(), made.turns.end(), [&](const auto& other) {
        return other.at > turn.at && other.at < built_m;
    });
    if (next != made.turns.end() || built_m > made.over[0].values.back()) {
        return {};
    }
    return " Built in steps of "
           + format_quantity(height_step_m(made.present.units), Kind::length, made.present.units)
           + ", that is " + value_words(made, 0, built_m) + '.';
}

std::string where_it_turns(const Sweep& made) {
    std::string words = "Nothing that counts is short with the " + made.over[0].key.label + ' '
                        + intervals(made) + ".";
    for (const SweepTurn& turn : made.turns) {
        words += (turn.passes_above ? " Below " : " Above ") + value_words(made, 0, turn.at) + ' '
                 + turn.words + '.' + as_built(made, turn);
    }
    for (const SweepBlank& blank : made.blanks) {
        const bool told = std::any_of(made.turns.begin(), made.turns.end(), [&](const auto& turn) {
            return turn.words.find(blank.reason) != std::string::npos;
        });
        words += told ? "" : " At " + blank.words + " it cannot be built: " + blank.reason + '.';
    }
    return words;
}

std::string how_many(const Sweep& made, std::size_t passing) {
    const SweepPoint* best = extreme(made, true);
    return std::to_string(passing) + " of " + std::to_string(made.points.size())
           + " combinations pass; most is to spare at " + place_words(made, *best)
           + ": the smallest margin there is in " + tightest_at(made, *best) + ".";
}

} // namespace

std::vector<SweepBlank> blanks_of(const Sweep& made) {
    // A whole row or column is named by its one value.
    std::vector<SweepBlank> blanks;
    std::vector<std::vector<std::vector<double>>> values;
    for (const SweepPoint& point : made.points) {
        if (point.score) {
            continue;
        }
        auto at = std::find_if(blanks.begin(), blanks.end(), [&](const SweepBlank& blank) {
            return blank.reason == point.fault;
        });
        if (at == blanks.end()) {
            at = blanks.insert(blanks.end(), {std::string{}, point.fault, 0});
            values.emplace_back(made.over.size());
        }
        ++at->count;
        auto& of_this = values[static_cast<std::size_t>(at - blanks.begin())];
        for (std::size_t which = 0; which < made.over.size(); ++which) {
            auto& seen = of_this[which];
            if (std::find(seen.begin(), seen.end(), point.at[which]) == seen.end()) {
                seen.push_back(point.at[which]);
            }
        }
    }
    for (std::size_t i = 0; i < blanks.size(); ++i) {
        for (std::size_t which = 0; which < made.over.size(); ++which) {
            const auto& seen = values[i][which];
            if (seen.size() == made.over[which].values.size() && made.over.size() > 1) {
                continue;
            }
            const auto [least, most] = std::minmax_element(seen.begin(), seen.end());
            blanks[i].words += (blanks[i].words.empty() ? "" : ", ")
                               + value_words(made, which, *least)
                               + (*least == *most ? "" : " to " + value_words(made, which, *most));
        }
        blanks[i].words = blanks[i].words.empty() ? "every value" : blanks[i].words;
    }
    return blanks;
}

std::string sweep_sentence(const Sweep& made) {
    const auto passing = static_cast<std::size_t>(
        std::count_if(made.points.begin(), made.points.end(), [](const SweepPoint& point) {
            return point.passes();
        }));
    std::string over = made.over[0].key.label + " from " + range_words(made, 0);
    if (made.over.size() > 1) {
        over += " and " + made.over[1].key.label + " from " + range_words(made, 1);
    }
    const SweepPoint* best = extreme(made, true);
    if (best == nullptr) {
        return "Nothing could be computed with the " + over + ": " + made.points.front().fault
               + ".";
    }
    if (passing == 0) {
        return "No value of the " + over + " passes. The nearest is at " + place_words(made, *best)
               + ": " + tightest_at(made, *best) + ".";
    }
    if (passing == made.points.size()) {
        const SweepPoint* worst = extreme(made, false);
        return "Nothing that counts is short with the " + over
               + ". The smallest relative margin is in " + tightest_words(made, *worst->score)
               + ", at " + place_words(made, *worst) + ".";
    }
    return made.over.size() == 1 ? where_it_turns(made) : how_many(made, passing);
}

} // namespace fluewright
