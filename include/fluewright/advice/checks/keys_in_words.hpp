#pragma once

#include <string>
#include <vector>

namespace fluewright {

/// Keys of the file in words, parts gathered: "`clearance` of parts 1 and 3, `site.roof.pitch`".
/// `pointers` are JSON pointers into the file.
[[nodiscard]] std::string keys_in_words(const std::vector<std::string>& pointers);

} // namespace fluewright
