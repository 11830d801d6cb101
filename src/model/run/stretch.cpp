#include "stretch.hpp"

#include <algorithm>

namespace fluewright {
namespace {

Stretch stretch_of(const WallBuild& wall, FuelGroup fuel) {
    const bool vent = (fuel == FuelGroup::gas && wall.kind == WallKind::double_wall)
                      || (fuel == FuelGroup::oil && wall.is_vent_for(fuel));
    return is_chimney_wall(wall.kind) || vent ? Stretch::chimney : Stretch::connector;
}

/// Whether the gas turns in this tee into a chimney: its next straight is one.
bool is_base_tee(const Run& run, const RunPart& part) {
    if (part.kind != PartKind::tee || part.flow.value != TeeFlow::side) {
        return false;
    }
    const RunPart* next = run.straight_behind(part);
    return next != nullptr && next->in_chimney();
}

} // namespace

double WallBuild::insulation_m() const {
    double thick_m = 0.0;
    for (std::size_t i = 1; i < layer_count; ++i) { // what has grown inside comes first
        const WallLayer& layer = layers[i];
        const bool insulates =
            !layer.air_gap && layer.conductivity_w_mk < insulation_conductivity_most_w_mk;
        thick_m += insulates ? layer.thickness_m : 0.0;
    }
    return thick_m;
}

bool WallBuild::may_serve(FuelGroup group) const {
    std::string_view left = fuels;
    while (!left.empty()) {
        const std::size_t end = std::min(left.find('|'), left.size());
        if (left.substr(0, end) == fluewright::name(group)) {
            return true;
        }
        left.remove_prefix(std::min(end + 1, left.size()));
    }
    return fuels.empty();
}

void decide_stretches(Run& run, std::span<const WallBuild> walls, FuelGroup fuel) {
    std::optional<Stretch> said;
    for (RunPart& part : run.parts) {
        if (part.written.belongs_to) {
            said = part.written.belongs_to;
        }
        part.stretch = said ? Known<Stretch>{*said, true}
                            : Known<Stretch>{stretch_of(walls[part.wall], fuel), false};
    }
    for (RunPart& part : run.parts) {
        if (!part.stretch.given && is_base_tee(run, part)) {
            part.stretch.value = Stretch::chimney;
        }
    }
    for (std::size_t i = 1; i < run.parts.size(); ++i) {
        if (run.parts[i].kind == PartKind::cap && !run.parts[i].stretch.given) {
            run.parts[i].stretch.value = run.parts[i - 1].stretch.value;
        }
    }
}

} // namespace fluewright
