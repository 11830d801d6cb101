#pragma once

#include "fluewright/model/fields/installation.hpp"

/// Runs made for a test often stay in one zone; a run that can be built ends outdoors.
namespace fluewright {

/// The same installation with the top of its run outdoors: its cap there, or else an open end,
/// which loses nothing and has no length.
inline Installation with_outdoor_top(Installation in) {
    if (in.run.empty()) {
        return in;
    }
    Choice<Zone> zone;
    for (const Part& part : in.run) {
        zone = part.zone ? part.zone : zone;
    }
    if (zone == Zone::outdoors) {
        return in;
    }
    if (in.run.back().part != PartKind::cap) {
        Part end;
        end.part = PartKind::cap;
        end.build = Build::open;
        in.run.push_back(end);
    }
    in.run.back().zone = Zone::outdoors;
    return in;
}

} // namespace fluewright
