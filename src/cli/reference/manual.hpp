#pragma once

#include <string>

namespace fluewright::cli {

/// The manual page in the language of mdoc(7), from the tables that --help is made from.
[[nodiscard]] std::string manual_page();

} // namespace fluewright::cli
