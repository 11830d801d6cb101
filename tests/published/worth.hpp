#pragma once

#include "outcome.hpp"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace published {

using Topics = std::map<std::string, std::vector<Outcome>>;

/// The first page of the report: how many figures of which worth there are, the topics, and apart
/// from them what has no predictive value. `scripted` are the tables that a script makes again,
/// `set_to_tables` the section on constants that were.
[[nodiscard]] std::string head_of(const std::vector<Outcome>& outcomes,
                                  const Topics& topics,
                                  const std::set<std::string>& scripted,
                                  const std::string& set_to_tables);

} // namespace published
