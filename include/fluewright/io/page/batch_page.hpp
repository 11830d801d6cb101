#pragma once

#include "fluewright/io/batch/batch_tally.hpp"

#include <string>
#include <string_view>

/// Many installations as one page that holds all it needs: summary, how the margins spread, and
/// which fall short and why.
namespace fluewright {

struct BatchPageOptions {
    std::string_view version;
    std::string_view sentence; ///< how many of each outcome
    std::string from;          ///< files and folders, as given
    std::string_view rules;    ///< id of a body; empty: what each file asks for
};

/// The tally must have kept its rows.
[[nodiscard]] std::string batch_page(const BatchTally& tally, const BatchPageOptions& options);

} // namespace fluewright
