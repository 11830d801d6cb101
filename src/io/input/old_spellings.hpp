#pragma once

#include "json_document.hpp"

namespace fluewright::json {

/// Puts the present spelling in the place of keys and words that earlier versions of the format
/// used, so that old files go on being read. Places in the text stay as they are.
void modernize(Document& document);

/// parse(), in present spelling.
[[nodiscard]] Parsed parse_installation(std::string_view text);

} // namespace fluewright::json
