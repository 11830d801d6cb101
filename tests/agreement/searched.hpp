#pragma once

#include <cstdint>
#include <cstdlib>
#include <sstream>
#include <string>
#include <vector>

namespace fluewright::agreement {

/// Searches are dear: of the laws about them ctest holds `usual` installations, or as many as the
/// variable FLUEWRIGHT_LAW_RUNS says; `.ci/laws` asks for the 500 that the others always have.
inline std::uint64_t searched(std::uint64_t usual) {
    // NOLINTNEXTLINE(concurrency-mt-unsafe): nothing else runs yet
    const char* asked = std::getenv("FLUEWRIGHT_LAW_RUNS");
    return asked == nullptr ? usual : std::strtoull(asked, nullptr, 10);
}

/// The seeds that the variable FLUEWRIGHT_LAW_SEEDS names, as in "140,146", to look at a run that
/// broke a law by itself; none where it is not there.
inline std::vector<std::uint64_t> seeds_asked() {
    // NOLINTNEXTLINE(concurrency-mt-unsafe): nothing else runs yet
    const char* asked = std::getenv("FLUEWRIGHT_LAW_SEEDS");
    std::istringstream list(asked == nullptr ? "" : asked);
    std::vector<std::uint64_t> seeds;
    for (std::string seed; std::getline(list, seed, ',');) {
        seeds.push_back(std::strtoull(seed.c_str(), nullptr, 10));
    }
    return seeds;
}

} // namespace fluewright::agreement
