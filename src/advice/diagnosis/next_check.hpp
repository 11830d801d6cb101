#pragma once

#include "candidate.hpp"
#include "engine.hpp"

/// Which check tells the causes apart best for its effort.   [theory eq. 66]
namespace fluewright::diagnosis {

struct Expected {
    std::size_t row{};
    double x{};   ///< of a reading, the median of what is predicted
    double low{}; ///< below and above which a tenth of it lies
    double high{};
    double share{};     ///< of the answer yes
    Evidence likeliest; ///< the likeliest outcome
};

struct Ranked {
    Candidate candidate;
    double bits{};                  ///< expected fall of the entropy over the rows
    double worth{};                 ///< bits for the effort
    std::vector<Expected> expected; ///< for the leading rows
    std::vector<Expected> further;  ///< for those behind them, by weight
};

/// All candidates, the most worthwhile first. `leading` rows get their expected readings.
[[nodiscard]] std::vector<Ranked> rank_checks(Engine& engine,
                                              const Installation& written,
                                              std::vector<Candidate> candidates,
                                              const std::vector<std::size_t>& leading);

} // namespace fluewright::diagnosis
