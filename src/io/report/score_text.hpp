#pragma once

#include "fluewright/advice/score.hpp"
#include "fluewright/io/text/text_table.hpp"

#include <string>
#include <vector>

/// Scored states as text, the same for every command that compares runs.
namespace fluewright::report {

struct ScoredRow {
    std::vector<TableCell> cells; ///< what the row is, for the columns in front
    const Score* score;
};

/// A table for each weather: margin, gas at the chimney top and how far the door opens. `shape`
/// names the weathers of the scores.
[[nodiscard]] std::string score_tables(const Case& shape,
                                       const std::vector<TableColumn>& front,
                                       const std::vector<ScoredRow>& rows,
                                       const Style& style);

/// What the marks and headings of these tables mean.
[[nodiscard]] std::string score_legend(const Case& shape, const Style& style);

} // namespace fluewright::report
