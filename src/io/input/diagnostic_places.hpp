#pragma once

#include "fluewright/io/input/diagnostic.hpp"
#include "json_document.hpp"

namespace fluewright::json {

/// The fault with the byte its pointer leads to; an empty `found` is filled with what stands there.
[[nodiscard]] Trouble trouble_of(Fault fault, const Document& document);

/// The same in the order of the text, with lines and columns.
[[nodiscard]] Diagnostics
placed(std::vector<Trouble> troubles, std::string_view text, std::string_view file);

} // namespace fluewright::json
