#pragma once

#include "cases.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"

#include <string>
#include <vector>

/// What the benchmark found, as figures and as a page.
namespace bench {

struct GivenAnswer {
    std::string id;
    double probability{};
};

struct Scored {
    std::string truth;
    std::vector<GivenAnswer> answers; ///< by probability
    double size_error{-1.0};          ///< share of the true size; negative where there is none
    bool size_covered{};
    double seconds{};
};

struct Walk {
    std::size_t checks{};
    double effort{};
    bool found{};
};

struct Results {
    std::vector<Scored> scored;
    std::vector<Walk> suggested;
    std::vector<Walk> random;
};

/// Share of cases with the true cause among the first `count`.
[[nodiscard]] double top_share(const Results& results, std::size_t count);

[[nodiscard]] std::string report(const Results& results);

/// An entry of the file as the reply to a check.
[[nodiscard]] fluewright::Reply reply_of(const fluewright::Observation& seen);

} // namespace bench
