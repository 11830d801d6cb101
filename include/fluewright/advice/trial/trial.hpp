#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/trial/change.hpp"

/// One change tried: made, resolved, solved and judged. Everything that promises something of an
/// installation it does not have before it asks here, so that the promise is what `check` says of
/// the changed file.
namespace fluewright {

/// A changed installation and the states that decide about it.
struct Trial {
    Installation changed; ///< as a file would hold it
    Case resolved;
    Score score;
};

/// Resolves and scores an installation that is changed already. Faults: those of resolve().
[[nodiscard]] Result<Trial, Faults> try_out(Installation changed, const Required& required = {});

/// Makes the changes, resolves and scores. Failure: why this cannot be built, a sentence without
/// its full stop.
[[nodiscard]] Result<Trial, std::string> try_out(std::span<const Change> changes,
                                                 const Installation& written,
                                                 const Required& required = {});
[[nodiscard]] Result<Trial, std::string>
try_out(const Change& change, const Installation& written, const Required& required = {});

/// What `check` would answer about a trial, as far as it can pass or not.
struct Passing {
    bool works{};
    std::vector<const Matter*>
        against; ///< matters_against(); empty where a state falls short already
    std::vector<const Matter*> found; ///< those of all findings, whether they count or not
};

/// Asks the verdict. Of a trial whose states fall short the findings are not looked for, as it
/// cannot pass. `required` is that of the trial; `rules` as in AssessOptions.
[[nodiscard]] Passing
passing(const Trial& trial, const Required& required = {}, const std::string& rules = {});

/// The whole answer about a trial, with profile and findings: that of assess() on its installation.
[[nodiscard]] Assessment assess(const Trial& trial, const AssessOptions& options);

/// The states that decide, as an assessment has solved them.
[[nodiscard]] Score score_of(const Assessment& assessment);

} // namespace fluewright
