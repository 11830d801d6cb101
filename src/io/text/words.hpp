#pragma once

#include "fluewright/advice/assessment.hpp"

#include <string>

/// Names that text and JSON share.
namespace fluewright::report {

/// "low fire, mild"
[[nodiscard]] std::string state_words(const Case& resolved, const StateResult& state);

/// Whether the last section is a bare top the program added, no part of the file.
[[nodiscard]] bool has_added_top(const Case& resolved);

/// "outlet", "2 elbow", "5 step" where the flue changes size without a part for it, "chimney top".
/// Parts are counted from 1, as in the file.
[[nodiscard]] std::string section_words(const Case& resolved, std::size_t section);

/// The joint at the lower end of a part, in one state.
struct Joint {
    std::size_t section; ///< above it
    double height_m;
    double pressure_pa; ///< in the flue, against the air round the joint
    double leak_kg_s;   ///< into the flue positive
};

/// Every joint of the run from the outlet up; empty where the state has no profile.
[[nodiscard]] std::vector<Joint> joints_of(const Case& resolved, const StateResult& state);

/// Whether what leaks from the lower end of a section is in the house: where the parts on both
/// sides stand outdoors, as at a cap, it is where the flue brings it anyway.
[[nodiscard]] bool leaks_indoors(const Case& resolved, std::size_t section);

/// What the joint at the lower end of a section does at a pressure against the air round it.
[[nodiscard]] std::string_view
leak_words(const Case& resolved, std::size_t section, double pressure_in_zone_pa, StateKind state);

/// Whether the figures of a state mean anything; without a working point only the verdict does.
[[nodiscard]] bool has_working_point(const StateResult& state);

/// Whether the wall has a temperature of its own at a station: parts without length lose no heat.
[[nodiscard]] bool
has_wall_temperature(const Case& resolved, const StateResult& state, std::size_t station);

/// Whether a size was computed; one that breaks a rule of the trade is not.
[[nodiscard]] bool was_computed(const SizeTrial& trial);

} // namespace fluewright::report
