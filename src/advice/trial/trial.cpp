#include "fluewright/advice/trial/trial.hpp"

#include "fluewright/model/resolve/resolve.hpp"

namespace fluewright {

Result<Trial, Faults> try_out(Installation changed, const Required& required) {
    Result<Case, Faults> resolved = resolve(changed);
    if (!resolved) {
        return Failure{std::move(resolved).error()};
    }
    Trial trial;
    trial.changed = std::move(changed);
    trial.resolved = std::move(resolved).value();
    trial.score = score(trial.resolved, required);
    return trial;
}

Result<Trial, std::string>
try_out(std::span<const Change> changes, const Installation& written, const Required& required) {
    Result<Installation, std::string> made = changed(changes, written);
    if (!made) {
        return Failure{std::move(made).error()};
    }
    Result<Trial, Faults> trial = try_out(std::move(made).value(), required);
    if (!trial) {
        const Faults& faults = trial.error();
        return Failure{faults.empty() ? std::string{"cannot be built this way"}
                                      : faults.front().message};
    }
    return std::move(trial).value();
}

Result<Trial, std::string>
try_out(const Change& change, const Installation& written, const Required& required) {
    return try_out(std::span{&change, 1}, written, required);
}

namespace {

std::vector<const Matter*> matters_of(const Findings& findings) {
    std::vector<const Matter*> matters;
    for (const Finding& finding : findings) {
        matters.push_back(finding.matter);
    }
    return matters;
}

} // namespace

Passing passing(const Trial& trial, const Required& required, const std::string& rules) {
    if (!trial.score.passes) {
        return {};
    }
    const Assessment then = assess(trial,
                                   {.size_search = false,
                                    .words = false,
                                    .spread = false,
                                    .required = required,
                                    .rules = rules});
    return {.works = then.works(),
            .against = matters_against(then),
            .found = matters_of(then.findings)};
}

Assessment assess(const Trial& trial, const AssessOptions& options) {
    return assess(trial.changed, trial.resolved, options);
}

Score score_of(const Assessment& assessment) {
    Score made;
    for (std::size_t i = 0; i < assessment.verdicts.size(); ++i) {
        if (assessment.verdicts[i].counts) {
            made.states.push_back(assessment.solution.states[i]);
            made.states.back().stations.clear();
            made.verdicts.push_back(assessment.verdicts[i]);
        }
    }
    sum_up(assessment.installation, assessment.required, made);
    return made;
}

} // namespace fluewright
