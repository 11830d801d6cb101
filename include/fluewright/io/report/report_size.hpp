#pragma once

#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

namespace fluewright {

/// The suggestion, then every size against every state and what rules it out.
[[nodiscard]] std::string size_table_text(const SizeTable& table, const Style& style);

/// The answer in its envelope; docs/output.md, size_answer.
[[nodiscard]] std::string size_table_json(const SizeTable& table, const AnswerInput& input);

/// One line for each size and state, with a heading line (RFC 4180); SI.
[[nodiscard]] std::string size_table_csv(const SizeTable& table);

/// A chart that stands alone: the draft over the need in every condition, and how far the door may
/// be opened, by size; a panel for each height.
[[nodiscard]] std::string size_table_svg(const SizeTable& table);

} // namespace fluewright
