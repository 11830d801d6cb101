#pragma once

#include "fluewright/model/run/case.hpp"

#include <string>
#include <string_view>
#include <vector>

/// What a named method of calculation gives: every intermediate term by the symbol its own document
/// uses, in the order of the calculation, so that an engineer can follow each line.
namespace fluewright {

struct MethodTerm {
    std::string_view symbol;
    std::string_view meaning;
    double value{};
    std::string_view unit; ///< SI, empty for numbers without one
    std::string_view mark; ///< how its coefficients are known; "computed" where it has none
};

/// Terms that belong together: the site, one stretch of the run, a sum.
struct MethodGroup {
    std::string title;
    std::vector<MethodTerm> terms;
};

/// A condition of the method: `have` against `want`.
struct MethodCriterion {
    std::string_view symbols{}; ///< "PZ >= PZe"
    std::string_view meaning{};
    double have{};
    double want{};
    bool at_most{}; ///< `have` must not exceed `want`; otherwise it must reach it
    std::string_view unit{};
    std::string_view mark{};
    bool counts{true}; ///< whether it decides the verdict

    [[nodiscard]] bool met() const { return at_most ? have <= want : have >= want; }
};

/// The same quantity by the method and by the full physics under the method's conditions.
struct MethodComparison {
    std::string_view what;
    double by_method{};
    double by_physics{};
    std::string_view unit;
};

/// One output of the appliance.
struct MethodFiring {
    std::string_view name; ///< "high fire" or "low fire"
    std::vector<MethodGroup> groups;
    std::vector<MethodCriterion> criteria;
    std::vector<MethodComparison> comparisons;
};

struct MethodResult {
    std::string_view id;
    std::string_view title;
    std::string_view known_from; ///< how the document is known
    std::vector<MethodFiring> firings;
    std::vector<std::string> notes; ///< what was chosen where the file or the document is silent

    /// Whether every criterion that counts is met.
    [[nodiscard]] bool met() const;

    /// Where the run is none that the method is made for: why, in a sentence; it is a note as well.
    /// What is not met then tells nothing but that.
    std::string beyond{};

    /// "PZ >= PZe at low fire; PZ >= PB at low fire": the criteria that count and are not met.
    [[nodiscard]] std::string not_met_words() const;
};

} // namespace fluewright
