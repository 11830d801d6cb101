#include "fluewright/advice/study/sweep.hpp"

#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/core/parallel.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "sweep_words.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// The installation with the values set, tried.
Result<Trial, std::string> trial_at(const Installation& written,
                                    const std::vector<Varied>& over,
                                    const std::vector<double>& at,
                                    const Required& required) {
    std::vector<Change> changes;
    changes.reserve(over.size());
    for (std::size_t i = 0; i < over.size(); ++i) {
        changes.emplace_back(OtherValue{over[i].key, at[i]});
    }
    return try_out(changes, written, required);
}

std::vector<SweepPoint> points_of(const std::vector<Varied>& over) {
    std::vector<SweepPoint> points(1);
    for (const Varied& varied : over) {
        std::vector<SweepPoint> wider;
        wider.reserve(points.size() * varied.values.size());
        for (const SweepPoint& point : points) {
            for (const double value : varied.values) {
                wider.push_back(point);
                wider.back().at.push_back(value);
            }
        }
        points = std::move(wider);
    }
    return points;
}

/// What falls short of a trial: the state with least to spare, or else what was found.
std::string short_of(const Trial& trial, const Passing& found) {
    if (!trial.score.passes) {
        return state_name(trial.resolved, trial.score.states[trial.score.limiting]);
    }
    return found.against.empty() ? std::string{} : std::string{found.against.front()->title};
}

/// The same with what it means.
std::string short_in_words(const Trial& trial, const Passing& found) {
    if (!trial.score.passes) {
        const StateVerdict& verdict = trial.score.verdicts[trial.score.limiting];
        const std::string where =
            " in " + state_name(trial.resolved, trial.score.states[trial.score.limiting]);
        return verdict.kind == Kind::pressure ? "the draft is short" + where
               : has_open_front(trial.resolved.appliance)
                   ? "the open front smokes" + where
                   : "the door opens less far than required" + where;
    }
    return found.against.empty()
               ? std::string{}
               : "this stands against it: " + std::string{found.against.front()->title};
}

void take(const Trial& trial, const Required& required, SweepPoint& point) {
    const Passing found = passing(trial, required);
    point.works = found.works;
    point.short_of = short_of(trial, found);
    point.score = trial.score;
}

void solve_points(const Installation& written, Sweep& made, const SweepOptions& options) {
    // Each point has its own place, so nothing depends on who solves it.
    in_parallel(std::max(1U, options.threads), [&](std::size_t first, std::size_t step) {
        for (std::size_t i = first; i < made.points.size(); i += step) {
            SweepPoint& point = made.points[i];
            Result<Trial, std::string> trial =
                trial_at(written, made.over, point.at, options.required);
            if (trial) {
                take(*trial, options.required, point);
            } else {
                point.fault = std::move(trial).error();
            }
            if (first == 0 && options.progress) {
                options.progress(std::min(i + step, made.points.size()), made.points.size());
            }
        }
    });
    const auto solved = std::find_if(made.points.begin(), made.points.end(), [](const auto& point) {
        return point.score.has_value();
    });
    made.shape = solved == made.points.end()
                     ? made.present
                     : trial_at(written, made.over, solved->at, options.required)->resolved;
    made.shape.units = made.present.units;
}

/// Halves the gap between two values of unlike verdict until it is known well enough to saw by.
SweepTurn turn_between(const Installation& written,
                       const Sweep& made,
                       const SweepPoint& a,
                       const SweepPoint& b,
                       const Required& required) {
    constexpr int halvings = 12;
    double passing = a.passes() ? a.at[0] : b.at[0];
    double failing = a.passes() ? b.at[0] : a.at[0];
    const SweepPoint& short_one = a.passes() ? b : a;
    SweepTurn turn;
    turn.state = short_one.score ? short_one.short_of : short_one.fault;
    turn.words = "it cannot be built: " + short_one.fault;
    for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (passing + failing);
        if (i == 0 && short_one.score) {
            const auto there = trial_at(written, made.over, {failing}, required);
            turn.words =
                there ? short_in_words(*there, fluewright::passing(*there, required)) : turn.words;
        }
        const Result<Trial, std::string> trial = trial_at(written, made.over, {middle}, required);
        SweepPoint between;
        if (trial) {
            take(*trial, required, between);
        }
        if (between.works) {
            passing = middle;
        } else {
            failing = middle;
            turn.state = trial ? between.short_of : turn.state;
            turn.words =
                trial ? short_in_words(*trial, fluewright::passing(*trial, required)) : turn.words;
        }
    }
    turn.at = passing;
    turn.passes_above = passing > failing;
    return turn;
}

void find_turns(const Installation& written, const Required& required, Sweep& made) {
    for (std::size_t i = 1; i < made.points.size(); ++i) {
        const SweepPoint& a = made.points[i - 1];
        const SweepPoint& b = made.points[i];
        if (a.passes() != b.passes()) {
            made.turns.push_back(turn_between(written, made, a, b, required));
        }
    }
}

} // namespace

Result<Sweep, Faults>
sweep(const Installation& written, std::vector<Varied> over, const SweepOptions& options) {
    Result<Case, Faults> resolved = resolve(written);
    if (!resolved) {
        return Failure{std::move(resolved).error()};
    }
    Sweep made;
    made.present = std::move(resolved).value();
    if (options.units) {
        made.present.units = *options.units;
    }
    made.over = std::move(over);
    for (Varied& varied : made.over) {
        // The turns are looked for between neighbours.
        std::sort(varied.values.begin(), varied.values.end());
        varied.values.erase(std::unique(varied.values.begin(), varied.values.end()),
                            varied.values.end());
    }
    made.points = points_of(made.over);
    solve_points(written, made, options);
    if (made.over.size() == 1) {
        find_turns(written, options.required, made);
    }
    made.blanks = blanks_of(made);
    made.sentence = sweep_sentence(made);
    made.not_decided = fire_not_decided(
        checks_of_file(written, made.present, solve(made.present, Detail::stations)),
        made.present.units);
    return made;
}

std::string_view shown_unit(const Varied& varied, UnitSystem system) {
    const auto greatest =
        std::max_element(varied.values.begin(), varied.values.end(), [](double a, double b) {
            return std::abs(a) < std::abs(b);
        });
    const double most = greatest == varied.values.end() ? 0.0 : std::abs(*greatest);
    if (varied.key.kind == Kind::length && system == UnitSystem::us) {
        return most >= 3.0 * constants::foot_m ? "ft" : "in";
    }
    if (varied.key.kind == Kind::length) {
        return most >= 1.0 ? "m" : "mm";
    }
    return customary_unit(varied.key.kind, system);
}

} // namespace fluewright
