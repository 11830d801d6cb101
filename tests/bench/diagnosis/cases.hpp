#pragma once

#include "truth.hpp"

/// Synthetic cases for diagnosis.
namespace bench {

struct CaseOfBench {
    fluewright::Installation written; ///< with what was observed
    Truth truth;
};

/// Case number `number`: a random installation with a planted cause (of ten one without any and one
/// with a flaw in the design that the file shows), complaints, and readings of which some are
/// missing.
[[nodiscard]] CaseOfBench make_case(std::uint64_t number);

/// The same planted cause with nothing but the complaints observed.
[[nodiscard]] CaseOfBench make_complaint(std::uint64_t number);

} // namespace bench
