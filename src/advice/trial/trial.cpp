#include "fluewright/advice/trial/trial.hpp"

#include "fluewright/model/resolve/resolve.hpp"

namespace fluewright {

Result<Trial, Faults> try_out(Installation changed) {
    Result<Case, Faults> resolved = resolve(changed);
    if (!resolved) {
        return Failure{std::move(resolved).error()};
    }
    Trial trial;
    trial.changed = std::move(changed);
    trial.resolved = std::move(resolved).value();
    trial.score = score(trial.resolved);
    return trial;
}

Result<Score, Faults> score_of(const Installation& changed) {
    const Result<Case, Faults> resolved = resolve(changed);
    if (!resolved) {
        return Failure{resolved.error()};
    }
    return score(*resolved);
}

Result<Trial, std::string> try_out(std::span<const Change> changes, const Installation& written) {
    Result<Installation, std::string> made = changed(changes, written);
    if (!made) {
        return Failure{std::move(made).error()};
    }
    Result<Trial, Faults> trial = try_out(std::move(made).value());
    if (!trial) {
        const Faults& faults = trial.error();
        return Failure{faults.empty() ? std::string{"cannot be built this way"}
                                      : faults.front().message};
    }
    return std::move(trial).value();
}

Result<Trial, std::string> try_out(const Change& change, const Installation& written) {
    return try_out(std::span{&change, 1}, written);
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
    sum_up(assessment.installation, made);
    return made;
}

} // namespace fluewright
