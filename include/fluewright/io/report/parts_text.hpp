#pragma once

#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

/// What to buy, what to cut, where it grows.
namespace fluewright {

struct PartsReportOptions {
    Style style;
    std::string_view version; ///< of the program
    std::string_view file;    ///< as the user named it
    std::string_view title;
};

[[nodiscard]] std::string parts_text(const PartsList& list, const PartsReportOptions& options);

/// One row for each thing to buy and each cut; lengths in m, weights in kg.
///
///   kind,what,size,count,unit,length_m,from_m,weight_kg,at_hand,where,note
[[nodiscard]] std::string parts_csv(const PartsList& list);

/// {"schema", "program", "file", "parts", "cuts", "stretches", "growth", "joints", "totals",
/// "assumed"}, in SI.
[[nodiscard]] std::string parts_json(const PartsList& list, const PartsReportOptions& options);

} // namespace fluewright
