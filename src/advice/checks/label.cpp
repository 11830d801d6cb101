#include "label.hpp"

#include "fluewright/model/catalog/rule_catalog.hpp"

#include <algorithm>

namespace fluewright::checking {
namespace {

/// The least distance a label of bare pipe can give, and be believed.
double least_believed_m(const View& view, const Piece& piece) {
    if (view.heater().fuel_group == FuelGroup::gas) {
        return least_gas_pipe_m;
    }
    if (piece.part->shield) {
        const catalog::Rule& shielded = catalog::rule_of(RuleId::connector_clearance_shielded);
        return piece.level() ? shielded.second : shielded.figure;
    }
    if (view.body == "us") {
        return catalog::rule_of(RuleId::connector_clearance_single_wall).figure;
    }
    if (view.body == "ca") {
        return catalog::rule_of(RuleId::ca_flue_pipe_clearance).figure;
    }
    const catalog::Rule& trade = catalog::rule_of(RuleId::trade_pipe_distance);
    return std::min(trade.figure, trade.second * piece.section->built_diameter_m);
}

} // namespace

bool goes_by_label(const View& view, const Piece& piece) {
    const Given& label = piece.part->listed_clearance_m;
    const bool bare =
        piece.is_single() && (view.solid_fuel() || view.heater().fuel_group == FuelGroup::gas);
    return label && (!bare || view.reaches(*label, least_believed_m(view, piece), Kind::length));
}

std::string uncounted_label(const View& view, const Piece& piece) {
    if (!view.with_words || !piece.part->listed_clearance_m || goes_by_label(view, piece)) {
        return {};
    }
    return "; its listed " + view.show(*piece.part->listed_clearance_m, Kind::length)
           + " does not count: single-wall pipe has no listing of its own";
}

} // namespace fluewright::checking
