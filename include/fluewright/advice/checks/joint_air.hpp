#pragma once

#include "fluewright/model/run/case.hpp"
#include "fluewright/model/states/states.hpp"

#include <cstddef>

/// The air round a joint.
namespace fluewright {

/// The pressure in the flue at the joint below a section, against the air that smoke would come out
/// into. Between two zones a joint may stand in either: it is taken to stand in the one where smoke
/// does more harm, the room before an attic or a chase, and these before the open air. A cap stands
/// where its section does.
struct JointAir {
    Zone zone{};
    double over_pa{};
};

/// `section` counts the sections of the case; the state has a profile.
[[nodiscard]] JointAir
joint_air(const Case& resolved, const StateResult& state, std::size_t section);

} // namespace fluewright
