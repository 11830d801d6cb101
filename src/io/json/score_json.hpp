#pragma once

#include "fluewright/advice/score.hpp"
#include "io/json/json_text.hpp"
#include "json_number.hpp"

#include <string>
#include <string_view>

/// Scored states as JSON and CSV, the same for every command that writes them.
namespace fluewright::report {

[[nodiscard]] json::Value score_json(const Case& resolved, const Score& score);

/// "state,weather,passes,..."
[[nodiscard]] std::string_view score_csv_heading();

/// One line for each state, each after `head`.
void append_score_csv(std::string& out,
                      const Case& resolved,
                      const Score& score,
                      std::string_view head);

} // namespace fluewright::report
