#pragma once

#include <cstdint>
#include <cstdlib>

namespace fluewright::agreement {

/// Searches are dear: of the laws about them ctest holds `usual` installations, or as many as the
/// variable FLUEWRIGHT_LAW_RUNS says; `.ci/laws` asks for the 500 that the others always have.
inline std::uint64_t searched(std::uint64_t usual) {
    // NOLINTNEXTLINE(concurrency-mt-unsafe): nothing else runs yet
    const char* asked = std::getenv("FLUEWRIGHT_LAW_RUNS");
    return asked == nullptr ? usual : std::strtoull(asked, nullptr, 10);
}

} // namespace fluewright::agreement
