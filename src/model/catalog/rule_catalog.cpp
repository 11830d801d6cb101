#include "fluewright/model/catalog/rule_catalog.hpp"

#include <algorithm>
#include <array>

namespace fluewright::catalog {
namespace {

#include "fluewright_data/building_elements.inc"
#include "fluewright_data/clearances_shield_shares.inc"
#include "fluewright_data/clearances_shields.inc"
#include "fluewright_data/clearances_unlisted.inc"
#include "fluewright_data/connector_thickness.inc"
#include "fluewright_data/fireplace_flues_bc.inc"
#include "fluewright_data/flue_sizes_uk.inc"
#include "fluewright_data/rule_bodies.inc"
#include "fluewright_data/rules.inc"
#include "fluewright_data/stock_lengths.inc"
#include "fluewright_data/wall_passes.inc"

static_assert(std::all_of(rule_rows.begin(), rule_rows.end(), [](const Rule& rule) {
    const bool body = rule.body == "any"
                      || std::any_of(rule_body_rows.begin(),
                                     rule_body_rows.end(),
                                     [&](const RuleBody& row) { return row.id == rule.body; });
    const bool severity = rule.severity == "danger" || rule.severity == "fault"
                          || rule.severity == "warning" || rule.severity == "note";
    const bool strength =
        rule.strength == "rule" || rule.strength == "advice" || rule.strength == "local";
    // What nobody has looked up weighs as trade practice.
    const bool remembered_rule = rule.strength == "rule" && rule.mark == "from memory";
    return body && severity && strength && !remembered_rule && !rule.matter.empty()
           && !rule.says.empty() && !rule.applies.empty();
}));

template <class Rows>
auto find(const Rows& rows, std::string_view id) -> const typename Rows::value_type* {
    const auto row =
        std::find_if(rows.begin(), rows.end(), [&](const auto& r) { return r.id == id; });
    return row == rows.end() ? nullptr : &*row;
}

} // namespace

std::span<const Rule> rules() {
    return rule_rows;
}

std::span<const RuleBody> rule_bodies() {
    return rule_body_rows;
}

std::span<const ShieldClearance> shield_clearances() {
    return shield_clearance_rows;
}

std::span<const ShieldShare> shield_shares() {
    return shield_share_rows;
}

std::span<const UnlistedClearance> unlisted_clearances() {
    return unlisted_clearance_rows;
}

std::span<const ConnectorThickness> connector_thicknesses() {
    return connector_thickness_rows;
}

std::span<const WallPass> wall_passes() {
    return wall_pass_rows;
}

std::span<const FireplaceFlue> fireplace_flues() {
    return fireplace_flue_rows;
}

std::span<const FlueSizeUk> flue_sizes_uk() {
    return flue_size_uk_rows;
}

std::span<const BuildingElement> building_elements() {
    return building_element_rows;
}

std::span<const StockLength> stock_lengths() {
    return stock_length_rows;
}

const Rule* find_rule(std::string_view id) {
    return find(rule_rows, id);
}

const Rule& rule_of(RuleId id) {
    return rule_rows[static_cast<std::size_t>(id)];
}

const RuleBody* find_rule_body(std::string_view id) {
    return find(rule_body_rows, id);
}

const ShieldClearance* find_shield(std::string_view id) {
    return find(shield_clearance_rows, id);
}

const WallPass* find_wall_pass(std::string_view id) {
    return find(wall_pass_rows, id);
}

const UnlistedClearance* find_unlisted(std::string_view id) {
    return find(unlisted_clearance_rows, id);
}

const BuildingElement* find_building_element(std::string_view id) {
    return find(building_element_rows, id);
}

} // namespace fluewright::catalog
