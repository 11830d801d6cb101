#include "plan_search.hpp"

#include "fluewright/core/parallel.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "plan_judging.hpp"

#include <algorithm>
#include <functional>

namespace fluewright {
namespace {

/// A sum over the values of an installation that tells most of them apart.
class Hash {
public:
    template <class T>
    void add_object(T& object) {
        for (const Field<T>& field : fields<T>()) {
            if (const auto* given = std::get_if<Given T::*>(&field.member)) {
                add(object.**given);
            } else if (const auto* pair = std::get_if<HighLow T::*>(&field.member)) {
                add((object.**pair).low);
                add((object.**pair).high);
            } else if (const auto* word = std::get_if<Word T::*>(&field.member)) {
                mix(object.**word ? std::hash<std::string>{}(*(object.**word)) : 0U);
            } else if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
                const auto place = choice->get(object);
                mix(place ? *place + 1 : 0U);
            } else if (const auto* flag = std::get_if<Flag T::*>(&field.member)) {
                mix(object.**flag ? (*(object.**flag) ? 2U : 1U) : 0U);
            }
        }
        for_each_child(object,
                       [this](const ChildInfo& /*child*/, auto& member) { add_member(member); });
    }

    [[nodiscard]] std::size_t value() const { return value_; }

private:
    template <class T>
    void add_member(std::vector<T>& list) {
        mix(list.size());
        for (T& entry : list) {
            add_object(entry);
        }
    }

    template <class T>
    void add_member(T& object) {
        add_object(object);
    }

    void add(const Given& given) { mix(given ? std::hash<double>{}(*given) : 0U); }

    void mix(std::size_t part) {
        constexpr std::size_t odd = 0x9e3779b97f4a7c15U;
        value_ = (value_ ^ part) * odd;
        value_ ^= value_ >> 29U;
    }

    std::size_t value_{1};
};

bool is_built(const Plan& plan) {
    return !plan.score.states.empty();
}

/// What a run took, in marches along one section; to read it, change it and judge it takes about
/// as long as so many.
double work_of(const Plan& plan) {
    constexpr double beside = 100.0;
    double marches = 0.0;
    for (const StateResult& state : plan.score.states) {
        marches += static_cast<double>(state.marches);
    }
    return beside + marches * static_cast<double>(plan.resolved.sections.size());
}

} // namespace

PlanSearch::PlanSearch(const Installation& written,
                       const Required& required,
                       unsigned threads,
                       std::function<void(std::size_t, std::size_t)> progress)
    : start_(in_short(written)), required_(required), threads_(std::max(1U, threads)),
      progress_(std::move(progress)) {
    Installation as_outcome = start_;
    as_outcome.observed = seen_of_changed_run(as_outcome.observed);
    is_new(as_outcome);
}

bool PlanSearch::is_new(const Installation& changed) {
    Installation copy = changed;
    Hash hash;
    hash.add_object(copy);
    const auto [begin, end] = by_hash_.equal_range(hash.value());
    for (auto entry = begin; entry != end; ++entry) {
        if (seen_[entry->second] == changed) {
            return false;
        }
    }
    by_hash_.emplace(hash.value(), seen_.size());
    seen_.push_back(std::move(copy));
    return true;
}

void PlanSearch::solve(std::vector<Plan>& plans) {
    // Of thousands of runs: those that are shown are solved anew, see add_details().
    constexpr double near_enough_pa = 1e-4;
    const std::size_t before = tried_;
    // Each plan has its own place, so nothing depends on who solves it.
    in_parallel(threads_, [&](std::size_t first, std::size_t step) {
        for (std::size_t i = first; i < plans.size(); i += step) {
            if (Result<Case, Faults> resolved = resolve(plans[i].changed)) {
                plans[i].resolved = std::move(resolved).value();
                plans[i].resolved.top_tolerance_pa = near_enough_pa;
                plans[i].score = score(plans[i].resolved, required_);
            }
            if (first == 0 && progress_) {
                progress_(before + i + 1, before + plans.size());
            }
        }
    });
    tried_ += plans.size();
    for (const Plan& plan : plans) {
        work_ += work_of(plan);
    }
}

std::size_t PlanSearch::affordable(std::size_t most) const {
    constexpr double most_work = 400000.0;
    constexpr double least_runs = 100.0; // however long each takes
    const auto tried = static_cast<double>(tried_);
    const double each = tried_ > 0 ? work_ / tried : 1.0;
    const double left = std::max((most_work - work_) / each, least_runs - tried);
    return static_cast<std::size_t>(std::clamp(left, 0.0, static_cast<double>(most)));
}

void PlanSearch::find_matters_against(std::span<Plan> plans, const Improvement& made, Ask ask) {
    const bool upkeep =
        made.goal == Goal::clear_upkeep || made.present.verdict.of(Harm::upkeep).counts;
    const AssessOptions options{.size_search = false,
                                .words = false,
                                .spread = false,
                                .one_charge = upkeep,
                                .required = required_,
                                .rules = std::string{made.present.body->id}};
    in_parallel(threads_, [&](std::size_t first, std::size_t step) {
        for (std::size_t i = first; i < plans.size(); i += step) {
            if (ask == Ask::all || plans[i].score.passes) {
                note_matters_against(made, assess(plans[i], options), plans[i]);
            }
        }
    });
    constexpr double over_solving = 4.0; // all states with their profile, and every check
    constexpr double one_charge = 30000.0;
    const bool follows_fire =
        upkeep && made.present.installation.appliance.type == ApplianceType::masonry_heater;
    for (const Plan& plan : plans) {
        if (ask == Ask::all || plan.score.passes) {
            work_ += over_solving * work_of(plan) + (follows_fire ? one_charge : 0.0);
        }
    }
}

std::vector<Plan> PlanSearch::singles(const std::vector<Remedy>& remedies) {
    std::vector<Plan> plans;
    for (const Remedy& remedy : remedies) {
        std::optional<Installation> changed = apply(remedy, start_);
        if (changed && is_new(*changed)) {
            Plan& plan = plans.emplace_back();
            plan.steps = {remedy};
            plan.cost = remedy.effort;
            plan.changed = std::move(*changed);
        }
    }
    solve(plans);
    plans.erase(std::remove_if(
                    plans.begin(), plans.end(), [](const Plan& plan) { return !is_built(plan); }),
                plans.end());
    return plans;
}

std::optional<Plan> PlanSearch::with_steps(const std::vector<Remedy>& steps) {
    std::vector<Plan> plans(1);
    Plan& plan = plans.front();
    plan.changed = start_;
    for (const Remedy& step : steps) {
        std::optional<Installation> changed = apply(step, plan.changed);
        if (!changed) {
            return std::nullopt;
        }
        plan.changed = std::move(*changed);
        plan.cost += step.effort;
    }
    plan.steps = steps;
    solve(plans);
    return is_built(plan) ? std::optional{std::move(plan)} : std::nullopt;
}

PlanSearch::Pairs PlanSearch::pairs(const std::vector<Plan>& singles,
                                    const std::vector<bool>& helps) {
    Pairs made;
    for (std::size_t i = 0; i < singles.size(); ++i) {
        for (std::size_t j = i + 1; j < singles.size(); ++j) {
            const Remedy& first = singles[i].steps.front();
            const Remedy& second = singles[j].steps.front();
            if ((!helps[i] && !helps[j]) || !go_together(first, second)) {
                continue;
            }
            std::optional<Installation> changed = apply(second, singles[i].changed);
            if (!changed || !is_new(*changed)) {
                continue;
            }
            Plan& plan = made.plans.emplace_back();
            plan.steps = {first, second};
            plan.cost = first.effort + second.effort;
            plan.changed = std::move(*changed);
            made.parents.emplace_back(i, j);
        }
    }
    solve(made.plans);
    std::size_t kept = 0;
    for (std::size_t i = 0; i < made.plans.size(); ++i) {
        if (is_built(made.plans[i])) {
            if (kept != i) {
                made.plans[kept] = std::move(made.plans[i]);
                made.parents[kept] = made.parents[i];
            }
            ++kept;
        }
    }
    made.plans.resize(kept);
    made.parents.resize(kept);
    return made;
}

std::vector<Plan> PlanSearch::sets(const std::vector<std::vector<Remedy>>& sets,
                                   std::vector<std::size_t>& from) {
    std::vector<Plan> made;
    std::vector<std::size_t> of;
    for (std::size_t n = 0; n < sets.size(); ++n) {
        std::optional<Installation> changed = start_;
        Plan plan;
        for (const Remedy& step : sets[n]) {
            changed = changed ? apply(step, *changed) : std::nullopt;
            plan.cost += step.effort;
        }
        if (!changed || !is_new(*changed)) {
            continue;
        }
        plan.steps = sets[n];
        plan.changed = std::move(*changed);
        made.push_back(std::move(plan));
        of.push_back(n);
    }
    solve(made);
    std::vector<Plan> built;
    for (std::size_t n = 0; n < made.size(); ++n) {
        if (is_built(made[n])) {
            built.push_back(std::move(made[n]));
            from.push_back(of[n]);
        }
    }
    return built;
}

} // namespace fluewright
