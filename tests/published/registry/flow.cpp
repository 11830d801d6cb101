#include "fluewright/core/constants.hpp"
#include "fluewright/physics/fittings.hpp"
#include "fluewright/physics/friction.hpp"
#include "registry.hpp"

#include <cmath>

namespace published {
namespace {

using namespace fluewright;

double angle_of(const Inputs& in) {
    return in.number("angle_deg") * constants::pi / 180.0;
}

fittings::Junction junction_of(const Inputs& in) {
    return {.angle_rad = angle_of(in),
            .area_ratio = in.number("area_ratio"),
            .branch_flow = in.number("branch_flow")};
}

/// A cone by its two diameters and its included angle.
fittings::Cone cone_of(const Inputs& in) {
    const double small_m = in.number("small_m");
    const double large_m = in.number("large_m");
    return {.small_diameter_m = small_m,
            .large_diameter_m = large_m,
            .length_m = 0.5 * (large_m - small_m) / std::tan(0.5 * angle_of(in))};
}

void add_friction(Registry& registry) {
    const auto factor = [](double (*law)(double, double)) {
        return [law](const Inputs& in) { return law(in.number("re"), in.number("rel_roughness")); };
    };
    registry["friction_colebrook"] = {"friction factor", "", factor(friction::colebrook_1939)};
    registry["friction_churchill"] = {"friction factor", "", factor(friction::churchill_1977)};
    registry["friction_laminar"] = {
        "friction factor", "", [](const Inputs& in) { return friction::laminar(in.number("re")); }};
}

/// A check of a loss coefficient.
void add_loss(Registry& registry,
              const std::string& name,
              std::function<double(const Inputs&)> compute) {
    registry[name] = {"loss coefficient", "", std::move(compute)};
}

void add_bends_and_tees(Registry& registry) {
    add_loss(registry, "bend_smooth", [](const Inputs& in) {
        return fittings::bend_smooth(angle_of(in), in.number("radius_over_diameter"));
    });
    add_loss(registry, "bend_mitered", [](const Inputs& in) {
        return fittings::bend_mitered(angle_of(in));
    });
    add_loss(registry, "bend_gored", [](const Inputs& in) {
        return fittings::bend_gored(angle_of(in));
    });
    add_loss(registry, "tee_from_branch", [](const Inputs& in) {
        return fittings::tee_from_branch(junction_of(in));
    });
    add_loss(registry, "tee_along_main", [](const Inputs& in) {
        return fittings::tee_along_main(junction_of(in));
    });
}

void add_area_changes(Registry& registry) {
    add_loss(registry, "sudden_enlargement", [](const Inputs& in) {
        return fittings::sudden_enlargement(in.number("area_ratio"));
    });
    add_loss(registry, "sudden_contraction", [](const Inputs& in) {
        return fittings::sudden_contraction(in.number("area_ratio"));
    });
    add_loss(
        registry, "increaser", [](const Inputs& in) { return fittings::increaser(cone_of(in)); });
    add_loss(registry, "reducer", [](const Inputs& in) { return fittings::reducer(cone_of(in)); });
}

void add_openings(Registry& registry) {
    registry["bend_spacing_factor"] = {
        "loss with a turn behind over loss without", "", [](const Inputs& in) {
            return fittings::bend_spacing_factor(angle_of(in), in.number("spacing_over_diameter"));
        }};
    add_loss(registry, "disc_damper", [](const Inputs& in) {
        return fittings::disc_damper(angle_of(in), in.number_or("free_area_shut", 0.0));
    });
    add_loss(registry, "obstruction", [](const Inputs& in) {
        return fittings::obstruction(in.number("free_area"));
    });
    add_loss(registry, "screen", [](const Inputs& in) {
        return fittings::screen(in.number("free_area"));
    });
}

} // namespace

void add_flow_checks(Registry& registry) {
    add_friction(registry);
    add_bends_and_tees(registry);
    add_area_changes(registry);
    add_openings(registry);
}

} // namespace published
