#pragma once

#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

namespace fluewright {

/// The suggestion, then every size against every state and what rules it out.
[[nodiscard]] std::string size_table_text(const SizeTable& table, const Style& style);

/// {"schema", "sentence", "rows": [{..., "states": [...]}]}: SI, keys end in the unit.
[[nodiscard]] std::string
size_table_json(const SizeTable& table, std::string_view version, std::string_view file);

/// One line for each size and state, with a heading line (RFC 4180); SI.
[[nodiscard]] std::string size_table_csv(const SizeTable& table);

} // namespace fluewright
