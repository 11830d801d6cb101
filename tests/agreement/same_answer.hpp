#pragma once

#include "fluewright/advice/assessment.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Whether two answers about one installation are the same, and if not, what differs.
namespace fluewright::agreement {

/// Sentences like "states 2 (low fire, mild): draft_pa 4.1 against 4.3"; empty where all agrees.
class Differences {
public:
    /// Two figures are the same within 1e-6 of their size (pressures within 1e-6 Pa, too), or where
    /// both are not finite.
    void number(std::string_view what, double one, double other);
    void word(std::string_view what, std::string_view one, std::string_view other);

    /// Whatever is compared until the next call stands under this heading.
    void under(std::string heading) { heading_ = std::move(heading); }

    [[nodiscard]] bool none() const { return list_.empty(); }

    /// The first twelve, a line each.
    [[nodiscard]] std::string text() const;

private:
    void add(std::string_view what, const std::string& one, const std::string& other);

    std::string heading_;
    std::vector<std::string> list_;
};

/// Everything an answer of `check` says: states, verdicts, limiting state, sentence, checks,
/// findings, size, labels of the run. What was assumed may differ.
[[nodiscard]] Differences compare(const Assessment& one, const Assessment& other);

/// The matter of a draft that is too strong, where it made the one fall short and is found of the
/// other: what `improve` calls cured the heater must hold. Null else.
[[nodiscard]] const Matter* leaves_strong_draft(const Assessment& present, const Assessment& then);

/// States that decide, their verdicts, and what is summed up of them.
[[nodiscard]] Differences compare(const Score& one, const Score& other);

} // namespace fluewright::agreement
