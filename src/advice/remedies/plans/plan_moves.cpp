#include "plan_moves.hpp"

#include "plan_judging.hpp"

#include <algorithm>

namespace fluewright {
namespace {

void add_each(std::vector<double>& to, const std::vector<double>& more) {
    for (std::size_t i = 0; i < to.size(); ++i) {
        to[i] += more[i];
    }
}

void take_greater(std::vector<double>& to, const std::vector<double>& other) {
    for (std::size_t i = 0; i < to.size(); ++i) {
        to[i] = std::max(to[i], other[i]);
    }
}

} // namespace

bool is_settled(const Improvement& made, const Plan& plan) {
    return does_all(made, plan) && (is_clean(plan) || plan.cautioned);
}

PlanMoves::PlanMoves(const Improvement& made, const std::vector<Plan>& singles) : made_(made) {
    for (std::size_t i = 0; i < made.score.states.size(); ++i) {
        const auto spare = required_spare(made.score.verdicts[i], made.score.states[i], made.asked);
        if (spare && *spare < 0.0) {
            short_.push_back(i);
            spare_.push_back(*spare);
        }
    }
    for (const Matter* matter : made.against) {
        const bool any = std::any_of(
            singles.begin(), singles.end(), [&](const Plan& plan) { return plan.eased(matter); });
        if (any) {
            can_be_eased_.push_back(matter);
        }
    }
    for (const Plan& plan : singles) {
        add(plan);
    }
    add_undoing();
}

PlanEffect PlanMoves::effect_of(const Plan& plan) const {
    PlanEffect effect;
    for (std::size_t n = 0; n < short_.size(); ++n) {
        double gain = 0.0;
        if (plan.score.states.size() == made_.score.states.size()) {
            const auto then = required_spare(
                plan.score.verdicts[short_[n]], plan.score.states[short_[n]], made_.asked);
            gain = then ? *then - spare_[n] : 0.0;
        }
        effect.gains.push_back(std::max(0.0, gain));
    }
    for (const Matter* matter : can_be_eased_) {
        effect.eases.push_back(std::max(0.0, 1.0 - plan.share_left(matter)));
    }
    return effect;
}

void PlanMoves::add(const Plan& plan) {
    constexpr double noise = 1e-3;
    Move move;
    move.steps = plan.steps;
    move.cost = plan.cost;
    move.settled = is_settled(made_, plan);
    move.lowers = plan.score.greatest_over < made_.score.greatest_over - noise;
    move.alone = effect_of(plan);
    move.helps = made_.goal == Goal::less_draft
                     ? move.lowers
                     : std::any_of(move.alone.gains.begin(),
                                   move.alone.gains.end(),
                                   [](double gain) { return gain > noise; })
                           || std::any_of(can_be_eased_.begin(),
                                          can_be_eased_.end(),
                                          [&](const Matter* each) { return plan.eased(each); });
    moves_.push_back(std::move(move));
}

/// All that is only undone together, as one move.
void PlanMoves::add_undoing() {
    Move all;
    all.helps = true;
    all.alone.gains.resize(short_.size());
    all.alone.eases.resize(can_be_eased_.size());
    for (const Move& move : moves_) {
        const Remedy& step = move.steps.front();
        const bool fits = move.helps && undoes_a_fault(step.kind)
                          && std::all_of(all.steps.begin(), all.steps.end(), [&](auto& other) {
                                 return go_together(other, step);
                             });
        if (!fits) {
            continue;
        }
        all.steps.push_back(step);
        all.cost += move.cost;
        all.lowers = all.lowers || move.lowers;
        all.alone = plus(std::move(all.alone), move.alone);
    }
    if (all.steps.size() > 1) {
        moves_.push_back(std::move(all));
    }
}

bool PlanMoves::fit(std::size_t one, std::size_t other) const {
    const auto& with = moves_[other].steps;
    return std::all_of(moves_[one].steps.begin(), moves_[one].steps.end(), [&](const Remedy& step) {
        return std::all_of(
            with.begin(), with.end(), [&](const Remedy& each) { return go_together(step, each); });
    });
}

PlanEffect PlanMoves::plus(PlanEffect one, const PlanEffect& other) {
    add_each(one.gains, other.gains);
    add_each(one.eases, other.eases);
    return one;
}

PlanEffect PlanMoves::greater(PlanEffect one, const PlanEffect& other) {
    take_greater(one.gains, other.gains);
    take_greater(one.eases, other.eases);
    return one;
}

PlanEffect PlanMoves::sum(const std::vector<std::size_t>& moves) const {
    PlanEffect all;
    all.gains.resize(short_.size());
    all.eases.resize(can_be_eased_.size());
    for (const std::size_t move : moves) {
        all = plus(std::move(all), moves_[move].alone);
    }
    return all;
}

bool PlanMoves::could_do_all(const PlanEffect& expected) const {
    constexpr double more_together = 2.0;
    for (std::size_t n = 0; n < short_.size(); ++n) {
        if (more_together * expected.gains[n] < -spare_[n]) {
            return false;
        }
    }
    return std::all_of(expected.eases.begin(), expected.eases.end(), [](double gone) {
        return more_together * gone >= 1.0;
    });
}

double PlanMoves::lacking(const PlanEffect& expected) const {
    double lacks = 0.0;
    for (std::size_t n = 0; n < short_.size(); ++n) {
        lacks = std::max(lacks, -spare_[n] - expected.gains[n]);
    }
    for (const double gone : expected.eases) {
        lacks += std::max(0.0, 1.0 - gone);
    }
    return lacks;
}

} // namespace fluewright
