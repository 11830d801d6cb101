#pragma once

#include "fluewright/model/fields/installation.hpp"

#include <cstdint>

namespace fluewright::property {

class Random;

/// An installation with all that a file can say round its run: house, fans and openings, roof,
/// alarms, rules of every body, joints and their leaks, regulators and hoods, shields and passages,
/// values left out for the program to assume. Half of them are heaters and runs as people usually
/// have them, with a fault or two; the other half is random_installation(). Each is as the reader
/// gives it from a file, so that it can be written out and read again. The same seed gives the
/// same.
[[nodiscard]] Installation random_household(std::uint64_t seed);

/// A stove, a gas appliance or a fireplace of ordinary size with the run people usually build for
/// it: up, across, and up a chimney of steel, clay or a liner.
[[nodiscard]] Installation usual_heater(Random& random);

/// Adds what stands round the run, and what its parts may say beside their shape.
void add_details(Random& random, Installation& made);

/// Leaves out some of the values that resolve() can assume.
void leave_out(Random& random, Installation& made);

} // namespace fluewright::property
