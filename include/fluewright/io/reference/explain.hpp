#pragma once

#include "fluewright/advice/checks/check.hpp"
#include "fluewright/advice/diagnosis/tables.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>
#include <vector>

/// What stands behind a word of the report or a key of the file.
namespace fluewright {

/// A finding: meaning, what to do, and every check that speaks of it with its source spelled out.
[[nodiscard]] std::string explain_matter(const Matter& matter, const Style& style);

/// One check: what is asked of what, its source spelled out, and the matter it speaks of.
[[nodiscard]] std::string explain_check(const Check& check, const Style& style);

/// A cause of trouble, as `diagnose` names it in JSON: mechanism, weight, confirming check, cure.
[[nodiscard]] std::string explain_cause(const diagnosis::Cause& cause, const Style& style);

/// Why a pointer leads to no key.
struct UnknownKey {
    std::string message; ///< lower case, no final stop
    std::string help;    ///< the nearest key, or empty
};

/// What has a page: findings, checks and rules, kinds of harm, ways of firing, causes, looks and
/// readings, changes, bodies of rules, sources; with hyphens between their words.
[[nodiscard]] std::vector<std::string> explained_ids();

/// The page of an id; all of them where one id stands for several things. Capitals, blanks and
/// commas do not matter. Failure: what it is nearest to.
[[nodiscard]] Result<std::string, UnknownKey> explain_id(std::string_view typed,
                                                         const Style& style);

/// A key of the input file by its JSON pointer: meaning, range, units, example, what stands in for
/// it. A pointer to an object lists its keys. List entries and names of the user's own may stand in
/// the pointer ("/run/2/up", "/walls/brick/roughness") or be left out ("/run/up").
[[nodiscard]] Result<std::string, UnknownKey> explain_key(std::string_view pointer,
                                                          const Style& style);

/// The meaning of the key a pointer leads to, as the table of fields has it; empty for none.
[[nodiscard]] std::string_view meaning_of_key(std::string_view pointer);

} // namespace fluewright
