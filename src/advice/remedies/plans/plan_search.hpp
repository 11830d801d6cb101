#pragma once

#include "fluewright/advice/remedies/improve.hpp"

#include <optional>
#include <span>
#include <unordered_map>
#include <utility>

namespace fluewright {

/// Makes and solves the runs that changes lead to. A run that came up before, by whatever way, is
/// not solved again; the first way to it, in the order of the search, stands for it.
class PlanSearch {
public:
    PlanSearch(const Installation& written,
               const Required& required,
               unsigned threads,
               std::function<void(std::size_t, std::size_t)> progress);

    [[nodiscard]] std::vector<Plan> singles(const std::vector<Remedy>& remedies);

    struct Pairs {
        std::vector<Plan> plans;
        std::vector<std::pair<std::size_t, std::size_t>> parents; ///< of each, among the singles
    };

    /// Pairs of changes of which one at least helps by itself.
    [[nodiscard]] Pairs pairs(const std::vector<Plan>& singles, const std::vector<bool>& helps);

    /// Those of the sets of changes that can be built and did not come up before; `from` tells of
    /// each plan which set it is.
    [[nodiscard]] std::vector<Plan> sets(const std::vector<std::vector<Remedy>>& sets,
                                         std::vector<std::size_t>& from);

    /// These changes together; nothing where they cannot be built.
    [[nodiscard]] std::optional<Plan> with_steps(const std::vector<Remedy>& steps);

    /// Asks of each plan what stands against it for that goal, by the rules of the present run; but
    /// for `Ask::all` of those only whose states pass. Takes some ten times as long as solving it.
    enum class Ask : std::uint8_t { all, passing };
    void find_matters_against(std::span<Plan> plans, const Improvement& made, Ask ask);

    [[nodiscard]] std::size_t tried() const { return tried_; }

    /// How many more runs, `most` at most, a search may solve. What a run costs is counted in
    /// marches, so that the answer does not hang on the machine: where each takes long there are
    /// fewer.
    [[nodiscard]] std::size_t affordable(std::size_t most) const;

    [[nodiscard]] double work() const { return work_; }

private:
    /// Whether the installation is new; remembers it.
    bool is_new(const Installation& changed);
    /// Resolves and scores; plans that cannot be built are marked by an empty score.
    void solve(std::vector<Plan>& plans);

    Installation start_;
    Required required_;
    unsigned threads_;
    std::function<void(std::size_t, std::size_t)> progress_;
    std::vector<Installation> seen_;
    std::unordered_multimap<std::size_t, std::size_t> by_hash_; ///< into seen_
    std::size_t tried_{};
    double work_{}; ///< of what was solved, in marches along one section
};

} // namespace fluewright
