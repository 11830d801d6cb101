#pragma once

#include "engine.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "next_check.hpp"
#include "seen/urgent.hpp"

/// Weights into sentences.
namespace fluewright::diagnosis {

/// Below this probability a row is not asked whether it accounts for all that was seen.
inline constexpr double least_to_judge = 0.05;

/// The causes of a row in words; of none "nothing hidden".
[[nodiscard]] std::string row_title(const Row& row);

class OutcomeBuilder {
public:
    OutcomeBuilder(const Installation& written,
                   const Case& resolved,
                   Engine& engine,
                   const std::vector<Evidence>& evidence);

    /// All but the checks.
    [[nodiscard]] Diagnosis build();

    /// The likeliest rows of the engine.
    [[nodiscard]] std::vector<std::size_t> leading(std::size_t count) const;

    /// What was seen to act on, once built.
    [[nodiscard]] const Urgent& urgent() const { return urgent_; }

    [[nodiscard]] NextCheck next_check(const Ranked& ranked) const;

private:
    [[nodiscard]] Expectation expectation_of(const Expected& expected) const;
    void add_hidden(Diagnosis& result, std::size_t row);
    [[nodiscard]] std::optional<std::size_t> row_of(const Cause& flaw) const;
    void add_unhidden(Diagnosis& result);
    void bear(Explanation& explanation, std::size_t row) const;
    void judge_fit(Diagnosis& result);
    [[nodiscard]] bool conflicts(std::size_t row, std::size_t evidence) const;
    [[nodiscard]] std::size_t best_of(std::size_t row) const;
    /// The likeliest row worth the name that accounts for all that was seen.
    [[nodiscard]] std::optional<std::size_t> row_that_explains() const;
    void doubt(Diagnosis& result) const;
    void say(Diagnosis& result) const;

    const Installation& written_;
    const Case& resolved_;
    Engine& engine_;
    const std::vector<Evidence>& evidence_;
    std::vector<Posterior> without_; ///< by evidence
    Urgent urgent_;
};

/// Whether two of the causes let expect another answer: no other check is worth a person's time.
[[nodiscard]] bool tells_apart(const NextCheck& check);

/// Whether causes that together are likely enough leave so little of the flue open that a fire for
/// a check sends its gas into the room; judgement.
[[nodiscard]] bool leaves_flue_nearly_shut(const std::vector<Explanation>& explanations);

/// What to mend before anything else is looked for: what the file shows in the way, or what was
/// looked at and found bad, where that is the first explanation; empty else.
[[nodiscard]] std::string mend_first_words(const Explanation& first,
                                           const std::vector<Evidence>& evidence);

/// "yes", "over weeks"
[[nodiscard]] std::string_view reply_word(Answer answer);

/// How a run does in its tightest state once a cause is gone.
[[nodiscard]] Cured once_cured(const Trial& trial);

} // namespace fluewright::diagnosis
