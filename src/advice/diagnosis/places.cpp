#include "altered.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <algorithm>

namespace fluewright::diagnosis {
namespace {

std::vector<Place> at_parts(const Run& run, bool (*fits)(const RunPart&)) {
    std::vector<Place> places;
    for (const RunPart& part : run.parts) {
        if (fits(part)) {
            places.push_back({part.index, part.index, "at " + label(part)});
        }
    }
    return places;
}

bool holds_screen(const RunPart& part) {
    return has_screen(part.written);
}

/// Whether drafts were measured on both sides of a part.
bool is_measured_round(const RunPart& part, const Run& run, const std::vector<Observation>& seen) {
    bool below = false;
    bool above = false;
    for (const Observation& each : seen) {
        if (each.draft_pa) {
            const std::size_t point = point_of(each.at, run.parts.size());
            (static_cast<int>(point) <= part.index ? below : above) = true;
        }
    }
    return below && above;
}

/// Soot and nests gather at turns, on the flat and at the chimney top; an upright straight counts
/// where it is the last one, or where drafts below and above it were measured.
std::vector<Place> where_blocked(const Run& run, const std::vector<Observation>& seen) {
    std::vector<Place> places = at_parts(run, [](const RunPart& part) {
        return part.kind == PartKind::elbow || part.kind == PartKind::tee
               || part.kind == PartKind::reducer || (part.has_length() && part.lie != Lie::upright)
               || (part.kind == PartKind::cap && !holds_screen(part));
    });
    const auto last = std::find_if(run.parts.rbegin(), run.parts.rend(), [](const RunPart& part) {
        return part.lie == Lie::upright;
    });
    for (const RunPart& part : run.parts) {
        const bool is_last = last != run.parts.rend() && part.index == last->index;
        const bool passed = part.has_length() && part.lie == Lie::upright;
        if (is_last || (passed && is_measured_round(part, run, seen))) {
            places.push_back({part.index, part.index, "in " + label(part)});
        }
    }
    return places;
}

std::vector<Place> where_deposits(const Run& run) {
    const int last = static_cast<int>(run.parts.size()) - 1;
    std::vector<Place> places{{0, last, "along the whole flue"}};
    const auto cold = std::find_if(run.parts.begin(), run.parts.end(), [](const RunPart& part) {
        return part.index > 0 && part.zone.value != Zone::room;
    });
    if (cold != run.parts.end()) {
        places.push_back({cold->index, last, "from " + label(*cold) + " upwards"});
    }
    return places;
}

std::vector<Place> where_leaky(const Run& run) {
    std::vector<Place> places = at_parts(
        run, [](const RunPart& part) { return part.kind == PartKind::tee || part.cleanout; });
    const auto last_in_room =
        std::find_if(run.parts.rbegin(), run.parts.rend(), [](const RunPart& part) {
            return part.zone.value == Zone::room;
        });
    if (last_in_room != run.parts.rend()) {
        places.push_back({0, last_in_room->index, "at the joints in the room"});
    }
    return places;
}

} // namespace

std::vector<Place>
places_of(const Cause& cause, const Case& resolved, const std::vector<Observation>& seen) {
    const Place nowhere;
    const bool burns_wood = resolved.appliance.fuel_group == FuelGroup::wood;
    const CauseId id = id_of(cause);
    if (cause.kind != "hidden" || !applies_to(cause.kinds, kind_of(resolved.appliance))) {
        return {};
    }
    if (id == CauseId::blockage) {
        return where_blocked(resolved.run, seen);
    }
    if (id == CauseId::deposits) {
        return where_deposits(resolved.run);
    }
    if (id == CauseId::leaky_joints) {
        return where_leaky(resolved.run);
    }
    if (id == CauseId::clogged_screen) {
        return at_parts(resolved.run, holds_screen);
    }
    if (id == CauseId::shut_damper) {
        return at_parts(resolved.run,
                        [](const RunPart& part) { return part.kind == PartKind::damper; });
    }
    if (id == CauseId::smaller_flue) {
        return {{0, 0, "in width"}, {-1, -1, "in height"}};
    }
    if (id == CauseId::wet_wood && (!burns_wood || resolved.appliance.moisture >= 0.45)) {
        return {};
    }
    return {nowhere};
}

} // namespace fluewright::diagnosis
