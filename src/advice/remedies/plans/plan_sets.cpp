#include "plan_sets.hpp"

#include "plan_judging.hpp"
#include "plan_moves.hpp"

#include <algorithm>
#include <cstdint>
#include <functional>
#include <iterator>
#include <limits>
#include <map>
#include <set>
#include <utility>

namespace fluewright {
namespace {

constexpr std::size_t most_moves = 3;
constexpr std::size_t in_one_go = 24;
constexpr double without_end = std::numeric_limits<double>::infinity();

/// Places of moves, the least first.
using MoveSet = std::vector<std::size_t>;

MoveSet with_move(const MoveSet& moves, std::size_t more) {
    MoveSet all = moves;
    all.insert(std::upper_bound(all.begin(), all.end(), more), more);
    return all;
}

MoveSet without_move(const MoveSet& moves, std::size_t less) {
    MoveSet rest;
    std::copy_if(moves.begin(), moves.end(), std::back_inserter(rest), [less](std::size_t move) {
        return move != less;
    });
    return rest;
}

class Sets {
public:
    Sets(PlanSearch& searching,
         const Improvement& made,
         const ImproveOptions& options,
         const std::vector<Plan>& singles)
        : searching_(searching), made_(made), options_(options), moves_(made, singles) {
        for (const Plan& plan : singles) {
            count_if_done(plan);
        }
        list({}, 0);
        for (std::size_t i = 0; i < singles.size(); ++i) {
            join_if_unsettled({i}, singles[i]);
        }
    }

    FoundSets search() {
        const auto best = [this] { return best_done_; };
        found_.proven =
            try_all(likely_, [this] { return enough_done(); }) && try_all(joined_, best);
        if (!any_done_) {
            order_by_lacking();
        }
        found_.proven = found_.proven && try_all(unlikely_, best) && try_all(joined_, best);
        return std::move(found_);
    }

private:
    /// Sets by what they cost, or lack, and how many changes they are; of equals the first stands.
    using Queue = std::multimap<std::pair<double, std::size_t>, MoveSet>;

    [[nodiscard]] std::size_t most_together() const {
        // Draft that is too strong, and upkeep, are no matter of three changes.
        return made_.goal == Goal::less_draft || made_.goal == Goal::clear_upkeep ? 2 : most_moves;
    }

    [[nodiscard]] double cost_of(const MoveSet& moves) const {
        double cost = 0.0;
        for (const std::size_t move : moves) {
            cost += moves_[move].cost;
        }
        return cost;
    }

    [[nodiscard]] bool fits(const MoveSet& moves, std::size_t more) const {
        return std::all_of(
            moves.begin(), moves.end(), [&](std::size_t move) { return moves_.fit(move, more); });
    }

    void put(const MoveSet& moves, Queue& queue) const {
        queue.emplace(std::pair{cost_of(moves), moves.size()}, moves);
    }

    /// Every set, by whether it could do it by the sum of what its changes do alone.
    void list(const MoveSet& before, std::size_t from) {
        for (std::size_t i = from; i < moves_.all().size(); ++i) {
            const Move& move = moves_[i];
            if (move.settled || !move.helps || !fits(before, i)) {
                continue;
            }
            const MoveSet set = with_move(before, i);
            if (set.size() > 1 || move.steps.size() > 1) {
                put(set, moves_.could_do_all(moves_.sum(set)) ? likely_ : unlikely_);
            }
            if (set.size() < most_together()) {
                list(set, i + 1);
            }
        }
    }

    /// What does all but draws too hard, or brings a harm, may be joined by what takes that away.
    void join_if_unsettled(const MoveSet& set, const Plan& plan) {
        if (!does_all(made_, plan) || is_settled(made_, plan) || set.size() >= most_together()) {
            return;
        }
        for (std::size_t i = 0; i < moves_.all().size(); ++i) {
            const Move& move = moves_[i];
            const bool may = !move.settled && (move.lowers || plan.new_harm);
            if (may && fits(set, i)) {
                put(with_move(set, i), joined_);
            }
        }
    }

    /// Where nothing does it, what comes nearest may.
    void order_by_lacking() {
        Queue ordered;
        for (auto& [key, moves] : unlikely_) {
            ordered.emplace(std::pair{moves_.lacking(moves_.sum(moves)), moves.size()}, moves);
        }
        unlikely_ = std::move(ordered);
    }

    /// What a plan that does all adds to those that are wanted.
    void count_if_done(const Plan& plan) {
        if (!does_all(made_, plan) || class_of(plan) != 0) {
            return;
        }
        any_done_ = true;
        best_done_ = std::min(best_done_, plan.cost);
        if (alike_[kinds_of(plan)]++ < most_alike) {
            done_.push_back(plan.cost);
            std::sort(done_.begin(), done_.end());
        }
    }

    /// The cost from which on nothing more is wanted.
    [[nodiscard]] double enough_done() const {
        if (done_.size() < options_.most) {
            return without_end;
        }
        return done_[options_.most - 1];
    }

    [[nodiscard]] bool holds_a_settled_set(const MoveSet& moves) const {
        return std::any_of(settled_.begin(), settled_.end(), [&](const MoveSet& done) {
            return std::includes(moves.begin(), moves.end(), done.begin(), done.end());
        });
    }

    /// Three changes gain what two of them did together and the third alone, or the sum; seldom
    /// more than twice as much. Two are tried whatever they gain alone.
    [[nodiscard]] bool may_do_it(const MoveSet& moves) const {
        if (moves.size() < most_moves) {
            return true;
        }
        PlanEffect expected = moves_.sum(moves);
        for (const std::size_t third : moves) {
            const auto pair = effects_.find(without_move(moves, third));
            if (pair != effects_.end()) {
                expected = PlanMoves::greater(std::move(expected),
                                              PlanMoves::plus(pair->second, moves_[third].alone));
            }
        }
        return moves_.could_do_all(expected);
    }

    /// Whether there is no point in trying them: they cost too much, or hold what does all, or did
    /// too little in part.
    [[nodiscard]] bool is_idle(const MoveSet& moves, double most, bool by_sum) const {
        return cost_of(moves) >= most || listed_.count(moves) > 0 || holds_a_settled_set(moves)
               || (!by_sum && !may_do_it(moves));
    }

    /// Of the sets that were not tried.
    [[nodiscard]] double least_cost_left() const {
        double least = without_end;
        for (const Queue* queue : {&likely_, &joined_, &unlikely_}) {
            for (const auto& [key, moves] : *queue) {
                const double cost = cost_of(moves);
                if (cost < least && !is_idle(moves, without_end, queue != &unlikely_)) {
                    least = cost;
                }
            }
        }
        return least;
    }

    /// Tries the sets in their order, those too that come while it does, until one costs `most`;
    /// false where the bound of work comes first.
    bool try_all(Queue& queue, const std::function<double()>& most) {
        const bool by_sum = &queue != &unlikely_;
        while (!queue.empty()) {
            std::vector<std::vector<Remedy>> steps;
            std::vector<MoveSet> of;
            const std::size_t affordable = searching_.affordable(in_one_go);
            while (!queue.empty() && (of.size() < affordable || affordable == 0)) {
                const MoveSet moves = queue.begin()->second;
                const bool idle = is_idle(moves, most(), by_sum);
                if (!idle && affordable == 0) {
                    found_.tried_below = least_cost_left();
                    return false;
                }
                queue.erase(queue.begin());
                if (!idle) {
                    listed_.insert(moves);
                    steps.push_back(steps_of(moves));
                    of.push_back(moves);
                }
            }
            take(steps, of);
        }
        return true;
    }

    [[nodiscard]] std::vector<Remedy> steps_of(const MoveSet& set) const {
        std::vector<Remedy> steps;
        for (const std::size_t move : set) {
            steps.insert(steps.end(), moves_[move].steps.begin(), moves_[move].steps.end());
        }
        // What is undone comes first: then one sees what is left to do.
        std::stable_partition(steps.begin(), steps.end(), [](const Remedy& step) {
            return undoes_a_fault(step.kind);
        });
        return steps;
    }

    void take(const std::vector<std::vector<Remedy>>& steps, const std::vector<MoveSet>& of) {
        std::vector<std::size_t> from;
        std::vector<Plan> plans = searching_.sets(steps, from);
        judge_wholly(searching_, made_, plans);
        for (std::size_t n = 0; n < plans.size(); ++n) {
            const MoveSet& moves = of[from[n]];
            if (is_settled(made_, plans[n])) {
                settled_.push_back(moves);
            } else if (moves.size() < most_moves) {
                effects_.emplace(moves, moves_.effect_of(plans[n]));
                join_if_unsettled(moves, plans[n]);
            }
            count_if_done(plans[n]);
            found_.plans.push_back(std::move(plans[n]));
        }
    }

    PlanSearch& searching_;
    const Improvement& made_;
    const ImproveOptions& options_;
    PlanMoves moves_;
    Queue likely_;
    Queue joined_; ///< what does all, but not well, with one more
    Queue unlikely_;
    std::set<MoveSet> listed_; ///< that came up
    std::map<MoveSet, PlanEffect> effects_;
    std::vector<MoveSet> settled_;
    std::vector<double> done_; ///< costs of what does all, least first
    std::map<std::vector<RemedyKind>, std::size_t> alike_;
    double best_done_{without_end};
    bool any_done_{};
    FoundSets found_;
};

} // namespace

FoundSets cheapest_sets(PlanSearch& searching,
                        const Improvement& made,
                        const ImproveOptions& options,
                        const std::vector<Plan>& singles) {
    return Sets(searching, made, options, singles).search();
}

} // namespace fluewright
