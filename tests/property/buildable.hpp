#pragma once

#include "fluewright/model/fields/installation.hpp"

/// Makes a random run one that can be built.
namespace fluewright::property {

/// Changes a run so that its bends lead from each straight into the next and its top is outdoors:
/// bends that do not fit take the angle that does, are left out, or are put in.
void make_buildable(Installation& installation);

} // namespace fluewright::property
