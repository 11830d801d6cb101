#pragma once

#include "fluewright/advice/remedies/improve.hpp"

#include <vector>

/// What changes do alone, and what that lets expect of several together.
namespace fluewright {

/// What a plan does of what is to be done.
struct PlanEffect {
    std::vector<double> gains; ///< in each state that is short
    std::vector<double> eases; ///< share of each matter that stands that is gone
};

/// One change, or all that is only undone, with what it does alone.
struct Move {
    std::vector<Remedy> steps;
    double cost{};
    PlanEffect alone;
    bool helps{};   ///< gains somewhere, or eases something
    bool settled{}; ///< is_settled()
    bool lowers{};  ///< leaves less draft where that is strongest
};

/// Whether a plan does all that can be done, and no further change could take away what speaks
/// against it: nothing does, or a listing that it may void.
[[nodiscard]] bool is_settled(const Improvement& made, const Plan& plan);

class PlanMoves {
public:
    /// `singles` are judged.
    PlanMoves(const Improvement& made, const std::vector<Plan>& singles);

    [[nodiscard]] const std::vector<Move>& all() const { return moves_; }

    [[nodiscard]] const Move& operator[](std::size_t i) const { return moves_[i]; }

    /// Whether the moves can be made together.
    [[nodiscard]] bool fit(std::size_t one, std::size_t other) const;

    [[nodiscard]] PlanEffect effect_of(const Plan& plan) const;

    /// The sum of what moves do alone.
    [[nodiscard]] PlanEffect sum(const std::vector<std::size_t>& moves) const;

    /// Whether twice that does all that can be done: changes may gain more together than the sum of
    /// what each gains alone, seldom more than twice as much.
    [[nodiscard]] bool could_do_all(const PlanEffect& expected) const;

    /// What that lacks: of the state that lacks most, and of each matter.
    [[nodiscard]] double lacking(const PlanEffect& expected) const;

    /// In each the greater of two.
    [[nodiscard]] static PlanEffect greater(PlanEffect one, const PlanEffect& other);
    [[nodiscard]] static PlanEffect plus(PlanEffect one, const PlanEffect& other);

private:
    void add(const Plan& plan);
    void add_undoing();

    const Improvement& made_;
    std::vector<std::size_t> short_; ///< states that are required and fall short
    std::vector<double> spare_;      ///< of these
    std::vector<const Matter*> can_be_eased_;
    std::vector<Move> moves_;
};

} // namespace fluewright
