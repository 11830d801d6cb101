#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/advice/trial/trial.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Which changes make a run work, ranked by what they gain against what they cost.
namespace fluewright {

/// What a kind of remedy costs its user, in money of the user's own.
struct Price {
    double fixed{};
    double per_metre{};
};

struct PriceList {
    std::string currency;
    std::map<std::string, Price, std::less<>> prices; ///< by the id of a remedy
};

/// What is asked of a change.
enum class Goal : std::uint8_t {
    clear_findings, ///< a danger or fault counts and stands, whatever the states are
    more_to_spare,  ///< a state that is required falls short
    less_draft,     ///< what is required passes, and the draft is more than the appliance holds
    clear_upkeep,   ///< what is required passes; a matter of upkeep stands
};

/// How much of a matter that stood is left: 1 as bad as it was, 0 gone.
struct MatterLeft {
    const Matter* matter{};
    double share{};
};

/// One change or several together, tried, with what comes of it.
struct Plan : Trial {
    std::vector<Remedy> steps;
    double cost{}; ///< effort, or the user's price
    double gain{}; ///< of what the goal asks for; more than enough counts as enough
    bool cures{};  ///< what is required passes, and the goal is met

    bool judged{}; ///< what stands against it was asked for; the next six are known then
    /// matters_against() with the change made.
    std::vector<const Matter*> against;
    std::vector<MatterLeft> left; ///< of each matter that stood
    double trouble{};             ///< of these together; a matter that is new makes 1
    double warnings{};            ///< half of each warning of draft that is new, less those gone
    bool works{};                 ///< what `check` says of it
    bool new_harm{};              ///< brings a danger or a fault that the present run has not

    bool too_strong{};     ///< more draft than the appliance holds, and not so before
    bool undoes{};         ///< only takes away what was wrong: opens, sweeps, closes, cleans, stops
    std::string undecided; ///< of fire and carbon monoxide, with the plan; empty where decided
    bool short_of_wanted{}; ///< the door was short, and opens less far than wanted even so
    bool cautioned{};       ///< a step may void the listing of the heater
    bool on_front{};        ///< no other plan costs no more and leaves more to spare
    std::size_t rank{};

    // Of the plans shown only:
    std::vector<const Matter*> raised;  ///< raised_by()
    std::vector<const Matter*> cleared; ///< findings of which none is left
    std::vector<const Matter*> worse;   ///< findings past their limit by more than before
    std::vector<const Matter*> better;  ///< findings past their limit by less
    std::vector<std::string> worsens;   ///< in words, with figures

    /// What ranks plans of one class: gain over cost.
    [[nodiscard]] double merit() const { return gain / cost; }

    /// How much is left of a matter that stood; 1 where it was not asked for.
    [[nodiscard]] double share_left(const Matter* matter) const;

    /// Whether less is left of a matter that stood.
    [[nodiscard]] bool eased(const Matter* matter) const;
};

struct ImproveOptions {
    bool pairs{false}; ///< two changes together even where one suffices
    std::size_t most{5};
    std::optional<PriceList> prices{};
    std::vector<RemedyKind> without{}; ///< kinds of change that are not to be made
    std::vector<RemedyKind> only{};    ///< where not empty, the kinds that may be made
    std::optional<double> budget{};    ///< the most a plan may cost, in effort or in prices
    std::optional<UnitSystem> units{};
    Required required{};
    std::string rules{}; ///< id of a set of rules; empty: what the file asks for
    unsigned threads{1}; ///< the answer does not depend on it
    /// Called now and then with the runs solved and those to solve; may be empty.
    std::function<void(std::size_t, std::size_t)> progress{};
};

struct Improvement {
    enum class Outcome : std::uint8_t {
        leave_alone, ///< works as it stands, and nothing that was tried betters its upkeep
        one_cures,
        two_cure,
        three_cure,
        hopeless, ///< nothing that was tried makes it work
    };

    Outcome outcome{};
    Goal goal{};
    Assessment present;
    Score score;                        ///< of the present installation
    std::vector<const Matter*> against; ///< against the present installation
    Required asked; ///< what a change is to reach: reloading too, where it is what falls short
    std::string_view trouble; ///< said first where one was seen that the run does not explain
    std::vector<const Matter*> unmoved; ///< of these, what no single change eases
    std::vector<const Matter*> stuck;   ///< of these, what no change that was tried clears
    std::string sentence;               ///< the answer, for a person
    std::string reason;                 ///< why nothing helps; empty else
    std::vector<Plan> plans;            ///< the best by rank, no more than asked for
    /// The search came to its end: no two changes that cost less than the best were left untried,
    /// nor any set that could do it by twice what its parts do.
    bool proven{};
    double tried_below{}; ///< else: the cost below which all sets were tried
    bool limited{};       ///< kinds, budget or prices left changes out
    std::optional<double> budget;
    std::optional<Plan> over_budget; ///< the cheapest that cures, where none does within the budget
    std::size_t tried{};             ///< runs solved; no two of them are the same
    std::vector<std::string> unpriced; ///< titles left out for want of a price
    std::string currency;              ///< empty: cost is effort
};

/// Searches single changes, then pairs and triples, most of them in the order of their cost, until
/// the best `most` are found or a count of marches is reached; where asked for, all pairs. Of a set
/// of changes no part does as much. Faults: those of resolve().
///
/// Ranking  plans that cure before those that do not. Of these last those that bring a new danger
///          or fault, before them those after which the door opens less far than wanted, before
///          them those that bring over 5 % more draft than the appliance holds or may void a
///          listing; what only undoes a fault ranks with the first, however strong the draft is
///          then. Of one class, where findings are to be cleared, what leaves fewer goes first, to
///          a half of one; then less cost, where what is just enough costs twice as much; then more
///          gain; where no finding is, those that do not cure by gain over cost. Then in the order
///          of the table. Gain beyond `spare_wanted_share` counts for nothing; a matter that is
///          left, but is less bad, counts for its share. Left out is what costs five times the
///          best, unless all pairs are asked for.
/// Amounts  beside a plan that cures stands the same with the least height, inlet, opening, smaller
///          fire or hold on the draft that cures with as much to spare as is wanted, in steps of
///          the trade.
/// [theory eq. 42]
[[nodiscard]] Result<Improvement, Faults> improve(const Installation& written,
                                                  const ImproveOptions& options);

/// Whether `a` ranks before `b` by what a quick score tells; ties by order of search.
[[nodiscard]] bool ranks_before(const Plan& a, const Plan& b);

/// What a plan costs, for a person: "effort 5", or by the user's prices "20.00 EUR".
[[nodiscard]] std::string cost_words(const Improvement& made, double cost);

/// Whether a plan cures with next to nothing to spare: a little more wind or cold undoes it.
[[nodiscard]] bool is_barely_enough(const Plan& plan);

/// Marks the plans that no other beats in cost and in what is left to spare.
void mark_front(std::vector<Plan>& plans, Goal goal);

} // namespace fluewright
