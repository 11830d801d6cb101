#include "altered.hpp"

#include <algorithm>

namespace fluewright::diagnosis {
namespace {

bool has_screen(const Part& part) {
    return part.part == PartKind::screen
           || (part.part == PartKind::cap
               && (part.mesh_m.has_value() || part.free_area.has_value()));
}

std::vector<Place> at_parts(const Installation& written, bool (*fits)(const Part&)) {
    std::vector<Place> places;
    for (std::size_t i = 0; i < written.run.size(); ++i) {
        if (fits(written.run[i])) {
            const int part = static_cast<int>(i);
            places.push_back({part, part, "at " + part_words(written, part)});
        }
    }
    return places;
}

/// Soot and nests gather at turns, on the flat and at the mouth; a straight counts where it is
/// level or the last one.
std::vector<Place> where_blocked(const Installation& written) {
    std::vector<Place> places = at_parts(written, [](const Part& part) {
        return part.part == PartKind::elbow || part.part == PartKind::tee
               || part.part == PartKind::reducer
               || (part.part == PartKind::straight && part.across_m)
               || (part.part == PartKind::cap && !has_screen(part));
    });
    for (int i = static_cast<int>(written.run.size()) - 1; i >= 0; --i) {
        const Part& part = written.run[static_cast<std::size_t>(i)];
        if (part.part == PartKind::straight && !part.across_m) {
            places.push_back({i, i, "in " + part_words(written, i)});
            break;
        }
    }
    return places;
}

std::vector<Place> where_deposits(const Installation& written, const Case& resolved) {
    const int last = static_cast<int>(written.run.size()) - 1;
    std::vector<Place> places{{0, last, "along the whole flue"}};
    for (const Section& section : resolved.sections) {
        if (section.part > 0 && section.zone != Zone::room) {
            places.push_back(
                {section.part, last, "from " + part_words(written, section.part) + ", upwards"});
            break;
        }
    }
    return places;
}

std::vector<Place> where_leaky(const Installation& written, const Case& resolved) {
    std::vector<Place> places = at_parts(written, [](const Part& part) {
        return part.part == PartKind::tee || part.cleanout.value_or(false);
    });
    int last_in_room = -1;
    for (const Section& section : resolved.sections) {
        if (section.zone == Zone::room) {
            last_in_room = std::max(last_in_room, section.part);
        }
    }
    last_in_room = std::min(last_in_room, static_cast<int>(written.run.size()) - 1);
    if (last_in_room >= 0) {
        places.push_back({0, last_in_room, "at the joints in the room"});
    }
    return places;
}

} // namespace

std::string part_words(const Installation& written, int part) {
    const auto index = static_cast<std::size_t>(part);
    if (part < 0) {
        return "the outlet";
    }
    if (index >= written.run.size()) {
        return "the mouth";
    }
    return "part " + std::to_string(part + 1) + ", the "
           + std::string{name(written.run[index].part.value_or(PartKind::straight))};
}

std::vector<Place>
places_of(const Cause& cause, const Installation& written, const Case& resolved) {
    const Place nowhere;
    const bool stove = resolved.appliance.type == ApplianceType::stove
                       || resolved.appliance.type == ApplianceType::furnace
                       || resolved.appliance.type == ApplianceType::boiler;
    const bool burns_wood = resolved.appliance.fuel_group == FuelGroup::wood;
    const std::string_view id = cause.id;
    if (cause.kind != "hidden") {
        return {};
    }
    if (id == "blockage") {
        return where_blocked(written);
    }
    if (id == "deposits") {
        return where_deposits(written, resolved);
    }
    if (id == "leaky-joints") {
        return where_leaky(written, resolved);
    }
    if (id == "clogged-screen") {
        return at_parts(written, has_screen);
    }
    if (id == "shut-damper") {
        return at_parts(written, [](const Part& part) { return part.part == PartKind::damper; });
    }
    if (id == "smaller-flue") {
        return {{0, 0, "in width"}, {-1, -1, "in height"}};
    }
    if (id == "wet-wood" && (!burns_wood || resolved.appliance.moisture >= 0.45)) {
        return {};
    }
    if ((id == "leaky-stove" || id == "clogged-passages") && !stove) {
        return {};
    }
    return {nowhere};
}

} // namespace fluewright::diagnosis
