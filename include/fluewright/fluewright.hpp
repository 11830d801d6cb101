#pragma once

/// The library in one include: read an installation or build one in code, solve it, judge it.
///
///     const auto installation = fluewright::read_installation(text);
///     const auto answer = fluewright::assess(*installation, {});
///     std::cout << answer->sentence << '\n';
///
/// Everything a call needs goes in by argument and comes back by value; nothing is printed, no
/// exception is thrown. What is wrong with the input comes back as Diagnostics or Faults in place
/// of the value, with a pointer to the value at fault. Figures are SI in double; the unit stands in
/// the name. `examples/cpp` holds two whole programs.

// Text and installation.
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/fields/installation.hpp"

// Complete it, solve it.
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"

// Judge it, size it, improve it, find out why it smokes.
#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/remedies/improve.hpp"
