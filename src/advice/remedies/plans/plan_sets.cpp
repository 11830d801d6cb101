#include "plan_sets.hpp"

#include "plan_judging.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

namespace fluewright {
namespace {

constexpr std::size_t most_moves = 3;
/// Runs that one search of sets solves at most, and in one go.
constexpr std::size_t most_tried = 400;
constexpr std::size_t in_one_go = 24;
/// What changes gain together may be more than the sum of what each gains alone, not more than
/// twice as much.
constexpr double more_together = 2.0;

/// One change, or all that is only undone, with what it does alone.
struct Move {
    std::vector<Remedy> steps;
    double cost{};
    std::vector<double> gains; ///< in each state that is short
    std::vector<double> eases; ///< share of each matter that stands that is gone
    bool does_all{};
};

struct Set {
    double cost{};
    std::vector<std::size_t> moves;
    double lacking{}; ///< of the state that lacks most by the sum of what the moves gain alone
};

class Sets {
public:
    Sets(PlanSearch& searching,
         const Improvement& made,
         const ImproveOptions& options,
         const std::vector<Plan>& singles)
        : searching_(searching), made_(made), options_(options), singles_(singles) {
        for (std::size_t i = 0; i < made.score.states.size(); ++i) {
            const auto spare =
                required_spare(made.score.verdicts[i], made.score.states[i], asked());
            if (spare && *spare < 0.0) {
                short_.push_back(i);
                spare_.push_back(*spare);
            }
        }
        for (const Matter* matter : made.against) {
            const bool any = std::any_of(singles.begin(), singles.end(), [&](const Plan& plan) {
                return plan.eased(matter);
            });
            if (any) {
                can_be_eased_.push_back(matter);
            }
        }
        for (const Plan& plan : singles) {
            add_move(plan);
        }
        add_undoing();
    }

    FoundSets search() {
        std::vector<Set> sets;
        list_sets({}, 0.0, 0, sets);
        std::stable_sort(sets.begin(), sets.end(), [](const Set& a, const Set& b) {
            return std::tuple{a.cost, a.moves.size()} < std::tuple{b.cost, b.moves.size()};
        });
        FoundSets found;
        for (const Plan& plan : singles_) {
            count_if_done(plan);
        }
        found.proven = try_in_order(sets, found);
        if (found.proven && enough_done() == std::numeric_limits<double>::infinity()
            && !any_done_) {
            // Nothing does it by its sum: those that come nearest may yet.
            std::vector<Set> nearest;
            within_reach_ = false;
            tried_ = 0;
            list_sets({}, 0.0, 0, nearest);
            std::stable_sort(nearest.begin(), nearest.end(), [](const Set& a, const Set& b) {
                return std::tuple{a.lacking, a.cost} < std::tuple{b.lacking, b.cost};
            });
            constexpr std::size_t most_nearest = 100;
            nearest.resize(std::min(nearest.size(), most_nearest));
            (void)try_in_order(nearest, found);
        }
        return found;
    }

private:
    [[nodiscard]] const Required& asked() const { return made_.asked; }

    void add_move(const Plan& plan) {
        Move move;
        move.steps = plan.steps;
        move.cost = plan.cost;
        move.does_all = does_all(made_, plan);
        bool helps = false;
        for (std::size_t n = 0; n < short_.size(); ++n) {
            double gain = 0.0;
            if (plan.score.states.size() == made_.score.states.size()) {
                const auto then = required_spare(
                    plan.score.verdicts[short_[n]], plan.score.states[short_[n]], asked());
                gain = then ? *then - spare_[n] : 0.0;
            }
            constexpr double noise = 1e-3;
            helps = helps || gain > noise;
            move.gains.push_back(std::max(0.0, gain));
        }
        for (const Matter* matter : can_be_eased_) {
            move.eases.push_back(std::max(0.0, 1.0 - plan.share_left(matter)));
            helps = helps || plan.eased(matter);
        }
        if (made_.goal == Goal::less_draft) {
            helps = plan.score.greatest_over < made_.score.greatest_over - 1e-3;
        }
        if (helps) {
            moves_.push_back(std::move(move));
        }
    }

    /// All that is only undone together, as one move.
    void add_undoing() {
        Move all;
        all.gains.resize(short_.size());
        all.eases.resize(can_be_eased_.size());
        for (const Move& move : moves_) {
            const Remedy& step = move.steps.front();
            const bool fits = undoes_a_fault(step.kind)
                              && std::all_of(all.steps.begin(), all.steps.end(), [&](auto& other) {
                                     return go_together(other, step);
                                 });
            if (!fits) {
                continue;
            }
            all.steps.push_back(step);
            all.cost += move.cost;
            for (std::size_t n = 0; n < all.gains.size(); ++n) {
                all.gains[n] += move.gains[n];
            }
            for (std::size_t n = 0; n < all.eases.size(); ++n) {
                all.eases[n] += move.eases[n];
            }
        }
        if (all.steps.size() > 1) {
            moves_.push_back(std::move(all));
        }
    }

    [[nodiscard]] bool fit(const Move& a, const Move& b) const {
        return std::all_of(a.steps.begin(), a.steps.end(), [&](const Remedy& one) {
            return std::all_of(b.steps.begin(), b.steps.end(), [&](const Remedy& other) {
                return go_together(one, other);
            });
        });
    }

    /// Whether the moves together could do all that can be done, by twice what they gain alone.
    [[nodiscard]] bool could_do_all(Set& set) const {
        set.lacking = 0.0;
        bool could = true;
        for (std::size_t n = 0; n < short_.size(); ++n) {
            double gain = 0.0;
            for (const std::size_t move : set.moves) {
                gain += moves_[move].gains[n];
            }
            set.lacking = std::max(set.lacking, -spare_[n] - gain);
            could = could && more_together * gain >= -spare_[n];
        }
        for (std::size_t n = 0; n < can_be_eased_.size(); ++n) {
            double gone = 0.0;
            for (const std::size_t move : set.moves) {
                gone += moves_[move].eases[n];
            }
            set.lacking += std::max(0.0, 1.0 - gone);
            could = could && more_together * gone >= 1.0;
        }
        return could;
    }

    [[nodiscard]] std::size_t most_together() const {
        // Draft that is too strong, and upkeep, are no matter of three changes.
        return made_.goal == Goal::less_draft || made_.goal == Goal::clear_upkeep ? 2 : most_moves;
    }

    void list_sets(const std::vector<std::size_t>& before,
                   double cost,
                   std::size_t from,
                   std::vector<Set>& sets) const {
        for (std::size_t i = from; i < moves_.size(); ++i) {
            const Move& move = moves_[i];
            const bool fits =
                !move.does_all && std::all_of(before.begin(), before.end(), [&](std::size_t other) {
                    return fit(moves_[other], move);
                });
            if (!fits) {
                continue;
            }
            Set set;
            set.cost = cost + move.cost;
            set.moves = before;
            set.moves.push_back(i);
            const bool several = set.moves.size() > 1 || move.steps.size() > 1;
            if (several && could_do_all(set) == within_reach_) {
                sets.push_back(set);
            }
            if (set.moves.size() < most_together()) {
                list_sets(set.moves, set.cost, i + 1, sets);
            }
        }
    }

    /// What a plan that does all adds to those that are wanted.
    void count_if_done(const Plan& plan) {
        if (!does_all(made_, plan) || class_of(plan) != 0) {
            return;
        }
        any_done_ = true;
        if (alike_[kinds_of(plan)]++ < most_alike) {
            done_.push_back(plan.cost);
            std::sort(done_.begin(), done_.end());
        }
    }

    /// The cost from which on nothing more is wanted.
    [[nodiscard]] double enough_done() const {
        return done_.size() < options_.most ? std::numeric_limits<double>::infinity()
                                            : done_[options_.most - 1];
    }

    [[nodiscard]] bool holds_a_done_set(const Set& set) const {
        return std::any_of(done_sets_.begin(), done_sets_.end(), [&](const auto& done) {
            return std::includes(set.moves.begin(), set.moves.end(), done.begin(), done.end());
        });
    }

    /// Tries them until enough do it; false where the bound of work comes first.
    bool try_in_order(const std::vector<Set>& sets, FoundSets& found) {
        std::size_t next = 0;
        while (next < sets.size()) {
            std::vector<std::vector<Remedy>> steps;
            std::vector<const Set*> of;
            for (; next < sets.size() && of.size() < in_one_go; ++next) {
                if (sets[next].cost >= enough_done() && within_reach_) {
                    next = sets.size();
                    break;
                }
                if (tried_ >= bound()) {
                    found.tried_below = within_reach_ ? sets[next].cost : found.tried_below;
                    take(steps, of, found);
                    return false;
                }
                if (holds_a_done_set(sets[next])) {
                    continue;
                }
                ++tried_;
                of.push_back(&sets[next]);
                steps.push_back(steps_of(sets[next]));
            }
            take(steps, of, found);
        }
        return true;
    }

    [[nodiscard]] std::vector<Remedy> steps_of(const Set& set) const {
        std::vector<Remedy> steps;
        for (const std::size_t move : set.moves) {
            steps.insert(steps.end(), moves_[move].steps.begin(), moves_[move].steps.end());
        }
        // What is undone comes first: then one sees what is left to do.
        std::stable_partition(steps.begin(), steps.end(), [](const Remedy& step) {
            return undoes_a_fault(step.kind);
        });
        return steps;
    }

    /// The more conditions there are, the longer a run takes.
    [[nodiscard]] std::size_t bound() const {
        constexpr std::size_t most_states = 6 * most_tried;
        return std::clamp<std::size_t>(most_states
                                           / std::max<std::size_t>(1, made_.score.states.size()),
                                       most_tried / 4,
                                       most_tried);
    }

    void take(const std::vector<std::vector<Remedy>>& steps,
              const std::vector<const Set*>& of,
              FoundSets& found) {
        std::vector<std::size_t> from;
        std::vector<Plan> plans = searching_.sets(steps, from);
        judge_wholly(searching_, made_, plans);
        for (std::size_t n = 0; n < plans.size(); ++n) {
            if (does_all(made_, plans[n])) {
                done_sets_.push_back(of[from[n]]->moves);
                count_if_done(plans[n]);
            }
            found.plans.push_back(std::move(plans[n]));
        }
    }

    PlanSearch& searching_;
    const Improvement& made_;
    const ImproveOptions& options_;
    const std::vector<Plan>& singles_;
    std::vector<std::size_t> short_; ///< states that are required and fall short
    std::vector<double> spare_;      ///< of these
    std::vector<const Matter*> can_be_eased_;
    std::vector<Move> moves_;
    std::vector<double> done_; ///< costs of what does all, least first
    std::map<std::vector<RemedyKind>, std::size_t> alike_;
    std::vector<std::vector<std::size_t>> done_sets_;
    std::size_t tried_{};
    bool any_done_{};
    bool within_reach_{true};
};

} // namespace

FoundSets cheapest_sets(PlanSearch& searching,
                        const Improvement& made,
                        const ImproveOptions& options,
                        const std::vector<Plan>& singles) {
    return Sets(searching, made, options, singles).search();
}

} // namespace fluewright
