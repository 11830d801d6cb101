#pragma once

#include "fluewright/model/run/case.hpp"
#include "record.hpp"

/// What the program understood the file to say.
namespace fluewright::results {

template <>
const Record<Case>& record_of<Case>();

} // namespace fluewright::results
