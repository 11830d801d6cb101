#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/advice/trial/trial.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
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

/// One change or several together, tried, with what comes of it.
struct Plan : Trial {
    std::vector<Remedy> steps;
    double cost{}; ///< effort, or the user's price
    double gain{}; ///< of what the goal asks for; more than enough counts as enough
    bool cures{};  ///< what is required passes, and the goal is met
    /// standing() with the change made: of every plan where findings are to be cleared, else of
    /// those shown.
    std::vector<const Matter*> standing;
    bool too_strong{}; ///< more draft than the appliance holds, and not so before
    bool on_front{};   ///< no other plan costs no more and leaves more to spare
    std::size_t rank{};

    // Of the plans shown only:
    std::vector<const Matter*> raised;  ///< findings of which there was none before
    std::vector<const Matter*> cleared; ///< findings of which none is left
    std::vector<std::string> worsens;   ///< in words, with figures

    /// What ranks plans of one class: gain over cost.
    [[nodiscard]] double merit() const { return gain / cost; }
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
    Score score;                         ///< of the present installation
    std::vector<const Matter*> standing; ///< against the present installation
    std::vector<const Matter*> stuck;    ///< of these, what no change that was tried clears
    std::string sentence;                ///< the answer, for a person
    std::string reason;                  ///< why nothing helps; empty else
    std::vector<Plan> plans;             ///< the best by rank, then the rest of the front, by rank
    std::size_t tried{};                 ///< runs solved; no two of them are the same
    std::vector<std::string> unpriced;   ///< titles left out for want of a price
    std::string currency;                ///< empty: cost is effort
};

/// Searches single changes, pairs where asked for or where no single change cures, and where no
/// pair does either, a third change beside the nearest pairs. Faults: those of resolve().
///
/// Ranking  plans that cure before those that do not, among these those that bring no new danger
///          and no new over-draft first, then by cost, then by gain. Those that do not cure, or
///          better upkeep in part, by gain over cost, then by cost; then in the order of the table.
///          Gain beyond `spare_wanted_share` counts for nothing.
/// Amounts  beside a plan that cures stands the same with the least height, inlet or opening that
///          cures with as much to spare as is wanted, in steps of the trade.
/// [theory eq. 42]
[[nodiscard]] Result<Improvement, Faults> improve(const Installation& written,
                                                  const ImproveOptions& options);

/// Whether `a` ranks before `b` by what a quick score tells; ties by order of search.
[[nodiscard]] bool ranks_before(const Plan& a, const Plan& b);

/// Marks the plans that no other beats in cost and in what is left to spare.
void mark_front(std::vector<Plan>& plans, Goal goal);

} // namespace fluewright
