#pragma once

#include "../catch.hpp"
#include "../property/random_household.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "same_answer.hpp"
#include "searched.hpp"

#include <cstdint>
#include <cstdlib>
#include <iostream>

/// What the tests of the laws share.
namespace fluewright::agreement {

using property::random_household;

/// How many installations every law is held against.
inline constexpr std::uint64_t households = 500;

/// Ends the test with what differs and the installation as a file, so that it can be run again.
[[noreturn]] inline void
fail_law(std::uint64_t seed, const std::string& what, const Installation& written) {
    // Not by the test library, which would break the lines of the file.
    std::cout << "seed " << seed << ": " << what << '\n' << write_installation(written);
    FAIL("seed " << seed << "; what differs stands above");
    std::abort();
}

/// Whether an answer is wanted with its sentences, or figures and findings only, which takes less.
enum class Words : std::uint8_t { with, without };

/// `check` with everything but the size search, which has a law of its own.
inline Assessment checked(const Installation& written, Words words = Words::without) {
    const bool all = words == Words::with;
    auto assessed = assess(written, {.size_search = false, .words = all, .spread = all});
    if (!assessed) {
        const Fault& fault = assessed.error().front();
        fail_law(0, fault.pointer + ": " + fault.message, written);
    }
    return std::move(assessed).value();
}

} // namespace fluewright::agreement
