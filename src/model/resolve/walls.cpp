#include "fluewright/core/same_name.hpp"
#include "fluewright/model/fields/own_names.hpp"
#include "resolving.hpp"

#include <algorithm>
#include <charconv>

namespace fluewright::resolving {
namespace {

constexpr double millimetre_m = 1e-3;
constexpr std::string_view air_gap_word = "air gap";

WallLayer layer_of(const catalog::Material& material, double thickness_m) {
    return {.thickness_m = thickness_m,
            .conductivity_w_mk = material.conductivity_w_mk,
            .conductivity_slope_w_mk2 = material.conductivity_slope_w_mk2,
            .density_kg_m3 = material.density_kg_m3,
            .specific_heat_j_kgk = material.specific_heat_j_kgk,
            .emissivity = material.emissivity,
            .air_gap = false};
}

WallLayer air_gap_layer(double thickness_m) {
    WallLayer gap;
    gap.thickness_m = thickness_m;
    gap.air_gap = true;
    return gap;
}

void push_layer(WallBuild& wall, const WallLayer& layer) {
    if (wall.layer_count < most_wall_layers) {
        wall.layers[wall.layer_count++] = layer;
    }
}

/// "stainless steel 0.5|mineral wool hot 25|stainless steel 0.5", as the compiler has checked it.
void push_catalog_layers(WallBuild& wall, std::string_view text) {
    while (!text.empty()) {
        const std::size_t bar = std::min(text.find('|'), text.size());
        const std::string_view item = text.substr(0, bar);
        text.remove_prefix(std::min(bar + 1, text.size()));
        const std::size_t blank = item.rfind(' ');
        double thickness_mm = 0.0;
        std::from_chars(item.data() + blank + 1, item.data() + item.size(), thickness_mm);
        const std::string_view material = item.substr(0, blank);
        if (material == air_gap_word) {
            push_layer(wall, air_gap_layer(thickness_mm * millimetre_m));
        } else if (const catalog::Material* row = catalog::find_material(material)) {
            push_layer(wall, layer_of(*row, thickness_mm * millimetre_m));
            if (wall.inner_material.empty()) {
                wall.inner_material = row->id;
            }
        }
    }
}

WallBuild from_catalog(const catalog::Wall& row) {
    WallBuild wall;
    wall.name = row.id;
    wall.kind = row.kind;
    wall.inner_emissivity = row.inner_emissivity;
    wall.outer_emissivity = row.outer_emissivity;
    wall.roughness_m = row.roughness_m;
    wall.rated_gas_temperature_k = row.rated_gas_temperature_k;
    wall.fuels = row.fuels;
    wall.sizes = row.sizes;
    push_catalog_layers(wall, row.layers);
    return wall;
}

/// A wall the file defines. What it leaves out comes from single-wall steel, and is noted.
WallBuild from_file(const CaseWork& work, const OwnWall& own) {
    const std::string pointer = "/walls/" + pointer_step(own.id);
    const catalog::Wall& plain = *catalog::find_wall("single-wall steel");
    const auto or_plain = [&](const Given& given, std::string_view key, Kind kind, double value) {
        if (!given) {
            work.assume(pointer + "/" + std::string{key},
                        own.id + ": " + std::string{key},
                        kind,
                        value,
                        plain.source,
                        plain.mark);
        }
        return given.value_or(value);
    };
    WallBuild wall;
    wall.name = own.id;
    wall.kind = own.kind.value_or(WallKind::single);
    wall.inner_emissivity =
        or_plain(own.inner_emissivity, "inner_emissivity", Kind::number, plain.inner_emissivity);
    wall.outer_emissivity =
        or_plain(own.outer_emissivity, "outer_emissivity", Kind::number, plain.outer_emissivity);
    wall.roughness_m = or_plain(own.roughness_m, "roughness", Kind::length, plain.roughness_m);
    wall.rated_gas_temperature_k = own.rated_gas_temperature_k.value_or(0.0);
    wall.fixed_resistance_m2k_w = own.thermal_resistance_m2k_w.value_or(0.0);
    wall.outside_diameter_m = own.outside_diameter_m.value_or(0.0);
    for (const OwnLayer& written : own.layers) {
        const double thickness_m = *written.thickness_m;
        const std::string material = written.material.value_or("");
        if (is_same_name(material, air_gap_word)) {
            push_layer(wall, air_gap_layer(thickness_m));
        } else if (const catalog::Material* row = catalog::find_material(material)) {
            WallLayer layer = layer_of(*row, thickness_m);
            if (written.conductivity_w_mk) {
                layer.conductivity_w_mk = *written.conductivity_w_mk;
                layer.conductivity_slope_w_mk2 = 0.0;
            }
            push_layer(wall, layer);
            if (wall.inner_material.empty()) {
                wall.inner_material = row->id;
            }
        } else {
            // Of no listed material: check_installation() has seen to it that the conductivity is
            // given.
            WallLayer layer = layer_of(*catalog::find_material("fired brick"), thickness_m);
            layer.conductivity_w_mk = *written.conductivity_w_mk;
            layer.conductivity_slope_w_mk2 = 0.0;
            push_layer(wall, layer);
        }
    }
    return wall;
}

} // namespace

WallLayer deposit_layer(const CaseWork& work, const Part& part, std::string_view pointer) {
    const double thickness_m = part.deposit_m.value_or(0.0);
    if (thickness_m <= 0.0) {
        return {};
    }
    std::string_view kind = "flaky creosote";
    if (part.deposit) {
        kind = *part.deposit == DepositKind::soot  ? "dry soot"
               : *part.deposit == DepositKind::ash ? "wood ash"
                                                   : name(*part.deposit);
    } else {
        work.assume_word(std::string{pointer} + "/deposit",
                         "what the deposit is",
                         kind,
                         "judgement",
                         "judgement");
    }
    return layer_of(*catalog::find_material(kind), thickness_m);
}

std::size_t wall_index(const CaseWork& work, std::string_view name, const WallLayer& deposit) {
    const OwnWall* own = find_own(work.written.walls, name);
    const catalog::Wall* row = own == nullptr ? catalog::find_wall(name) : nullptr;
    std::string id{own != nullptr ? std::string_view{own->id} : row->id};
    if (deposit.thickness_m > 0.0) {
        id += " with deposit " + std::to_string(deposit.thickness_m) + " "
              + std::to_string(deposit.conductivity_w_mk);
    }
    auto& walls = work.made.walls;
    const auto known =
        std::find_if(walls.begin(), walls.end(), [&](const WallBuild& w) { return w.id == id; });
    if (known != walls.end()) {
        return static_cast<std::size_t>(known - walls.begin());
    }
    WallBuild wall = own != nullptr ? from_file(work, *own) : from_catalog(*row);
    if (deposit.thickness_m > 0.0 && wall.layer_count < most_wall_layers) {
        std::copy_backward(wall.layers.begin(),
                           wall.layers.begin() + static_cast<std::ptrdiff_t>(wall.layer_count),
                           wall.layers.begin() + static_cast<std::ptrdiff_t>(wall.layer_count) + 1);
        wall.layers[0] = deposit;
        ++wall.layer_count;
        wall.inner_emissivity = deposit.emissivity;
    }
    wall.id = id;
    walls.push_back(std::move(wall));
    return walls.size() - 1;
}

} // namespace fluewright::resolving
