#pragma once

#include <string_view>

/// Feeds one input to the whole program short of its output: read, and where it is accepted,
/// assess. Aborts when an accepted input gives a figure that is not finite or a state the solver
/// gave up.
void take_one_input(std::string_view bytes);
