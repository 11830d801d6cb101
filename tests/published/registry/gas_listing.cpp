#include "fluewright/advice/score.hpp"
#include "fluewright/model/standards/listing_basis.hpp"
#include "gas_vents.hpp"
#include "gas_vents_fit.hpp"
#include "outcome.hpp"
#include "rebuilt.hpp"
#include "registry.hpp"

#include <filesystem>
#include <stdexcept>

/// The tables of gas vents as files that somebody hands in: what `check --basis listing` says of an
/// input a little below and far above what the table allows.
namespace published {
namespace {

using namespace fluewright;
using gas_vents::Cell;
using gas_vents::System;

constexpr double thousand_btu_per_hour_w = 1055.05585262e3 / 3600.0;
constexpr double net_over_gross = 0.9022; ///< of natural gas of the catalog
constexpr double largest_w = 1e6;         ///< that a file may ask for

Part straight(double length_m, bool level) {
    Part part;
    part.part = PartKind::straight;
    if (level) {
        part.across_m = length_m;
        part.slope = 1.0 / 48.0;
    } else {
        part.up_m = length_m;
    }
    return part;
}

Installation file_of(const Cell& cell, double gross_w) {
    constexpr double over_roof_m = 0.3;
    Installation in;
    in.appliance.type =
        cell.system == System::draft_hood ? ApplianceType::draft_hood : ApplianceType::furnace;
    in.appliance.fuel.name = "natural gas";
    in.appliance.heat_input_w.high = net_over_gross * gross_w;
    in.appliance.outlet.diameter_m = cell.connector_diameter_m;
    if (cell.lateral_m > 0.0) {
        Part elbow;
        elbow.part = PartKind::elbow;
        in.run = {elbow, straight(cell.lateral_m, true), elbow};
        in.run.front().wall = cell.connector;
        in.run.front().zone = Zone::room;
    }
    Part upright = straight(cell.height_m - cell.lateral_m / 48.0 - over_roof_m, false);
    upright.wall = cell.vent;
    upright.diameter_m = cell.vent_diameter_m;
    upright.zone = Zone::room;
    in.run.push_back(upright);
    in.run.push_back(straight(over_roof_m, false));
    in.run.back().zone = Zone::outdoors;
    Part cap;
    cap.part = PartKind::cap;
    in.run.push_back(cap);
    return in;
}

/// Share of the cells of a table whose vent passes at so many per cent of the table's input.
double share_that_vents(const Inputs& in) {
    const double percent = in.number("percent");
    const std::string& system = in.text("system");
    const std::string& vent = in.text("vent");
    int all = 0;
    int venting = 0;
    for (const Row& row : read_rows(std::filesystem::path(FLUEWRIGHT_TREE) / "tests/published")) {
        if (row.check != "gas_vent_capacity"
            || row.inputs.find("system=" + system + ';') == std::string::npos
            || row.inputs.find("vent=" + vent + ';') == std::string::npos
            || row.inputs.find("lateral_ft=") == std::string::npos
            || row.inputs.find("flue_area_in2=") != std::string::npos) {
            continue;
        }
        const Cell cell = gas_vents::cell_of(Inputs(row.inputs));
        const double gross_w = row.expected * thousand_btu_per_hour_w * percent / 100.0;
        if (cell.common || gross_w * net_over_gross > largest_w) {
            continue;
        }
        const auto listed = listing_basis::of(file_of(cell, gross_w));
        ++all;
        venting += score(rebuilt::resolved(listed.value())).passes ? 1 : 0;
    }
    if (all == 0) {
        throw std::runtime_error("no row of that table");
    }
    return static_cast<double>(venting) / all;
}

} // namespace

void add_gas_listing_checks(Registry& registry) {
    registry["gas_vents_that_vent"] = {"share that vents", "1", share_that_vents};
}

} // namespace published
