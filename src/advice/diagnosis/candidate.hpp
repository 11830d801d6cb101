#pragma once

#include "fluewright/model/fields/fields.hpp"
#include "seen/evidence.hpp"

/// Checks that could be made next, as entries of the file they would become.
namespace fluewright::diagnosis {

enum class AnswerKind : std::uint8_t { yes_no, stick, course, quantity };

struct Candidate {
    const Check* check{};
    Observation blank; ///< the entry without its answer
    AnswerKind answers{};
    std::string place; ///< "behind part 2, the elbow"; empty where the check says it all
};

/// The checks of the table that this installation allows and that are not answered yet.
[[nodiscard]] std::vector<Candidate> candidates(const Installation& written, const Case& resolved);

/// The entry with an answer; `answer` for all but quantities.
[[nodiscard]] Observation answered(const Candidate& candidate, Answer answer);
[[nodiscard]] Observation answered(const Candidate& candidate, double value);

/// The answers a check can have, but for quantities.
[[nodiscard]] std::span<const Answer> answers_of(const Candidate& candidate);

/// The row of the number that an observation holds; null where it holds none.
[[nodiscard]] const FieldInfo* reading_field(const Observation& seen);

/// A reading as far as a file would take it as the answer to that check.
[[nodiscard]] double within_limits(const Candidate& candidate, double reading);

} // namespace fluewright::diagnosis
