#include "fluewright/model/catalog/catalog.hpp"

#include "catalog_checks.hpp"
#include "fluewright/core/same_name.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace fluewright::catalog {
namespace {

#include "fluewright_data/appliance_defaults.inc"
#include "fluewright_data/clay_liners.inc"
#include "fluewright_data/defaults.inc"
#include "fluewright_data/fittings.inc"
#include "fluewright_data/fuels.inc"
#include "fluewright_data/glossary.inc"
#include "fluewright_data/materials.inc"
#include "fluewright_data/remedy_effort.inc"
#include "fluewright_data/sources.inc"
#include "fluewright_data/trade_sizes.inc"
#include "fluewright_data/walls.inc"

static_assert(std::all_of(source_rows.begin(), source_rows.end(), [](const Source& source) {
    return !source.kind.empty() && !source.document.empty() && !source.place.empty();
}));

static_assert(std::all_of(word_rows.begin(), word_rows.end(), [](const Word& row) {
    return !row.meaning.empty() && row.meaning.back() == '.';
}));
static_assert(analyses_complete(fuel_rows),
              "fuels.csv: the elements of a fuel do not add up to 100 %");
static_assert(layers_known(wall_rows, material_rows),
              "walls.csv: a layer is of no listed material");
static_assert(rated_or_said_why(wall_rows),
              "walls.csv: a wall has neither a rated gas temperature nor a reason for none");
static_assert(std::all_of(fitting_rows.begin(), fitting_rows.end(), [](const Fitting& fitting) {
    return fitting.loss_low <= fitting.loss && fitting.loss <= fitting.loss_high;
}));
static_assert(std::all_of(default_rows.begin(), default_rows.end(), [](const Default& row) {
    return row.low <= row.value && row.value <= row.high && !row.unit.empty()
           && !row.meaning.empty();
}));
static_assert(std::all_of(appliance_default_rows.begin(),
                          appliance_default_rows.end(),
                          [](const ApplianceDefault& row) {
                              return row.air_ratio_high <= row.air_ratio_low
                                     && row.draft_needed_low_pa <= row.draft_needed_high_pa
                                     && row.draft_needed_high_pa < row.draft_greatest_pa
                                     && row.unburned_share_high + row.efficiency_net < 1.0;
                          }));

bool among_aliases(std::string_view asked, std::string_view aliases) {
    while (!aliases.empty()) {
        const std::string_view alias = aliases.substr(0, aliases.find('|'));
        if (same_letters(asked, alias)) {
            return true;
        }
        aliases.remove_prefix(std::min(alias.size() + 1, aliases.size()));
    }
    return false;
}

template <class Rows>
auto find(const Rows& rows, std::string_view id) -> const typename Rows::value_type* {
    const std::string_view asked = without_blanks_around(id);
    // Most files write names as the tables do, which costs no look at letters and aliases.
    const auto exact = std::find_if(
        rows.begin(), rows.end(), [&](const auto& candidate) { return candidate.id == asked; });
    if (exact != rows.end()) {
        return &*exact;
    }
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& candidate) {
        if constexpr (requires { candidate.aliases; }) {
            if (among_aliases(asked, candidate.aliases)) {
                return true;
            }
        }
        return same_letters(asked, candidate.id);
    });
    return row == rows.end() ? nullptr : &*row;
}

} // namespace

std::span<const Source> sources() {
    return source_rows;
}

std::span<const Word> words() {
    return word_rows;
}

std::span<const Fuel> fuels() {
    return fuel_rows;
}

std::span<const Material> materials() {
    return material_rows;
}

std::span<const Wall> walls() {
    return wall_rows;
}

std::span<const Fitting> fittings() {
    return fitting_rows;
}

std::span<const TradeSize> trade_sizes() {
    return trade_size_rows;
}

std::span<const ClayLiner> clay_liners() {
    return clay_liner_rows;
}

std::span<const ApplianceDefault> appliance_defaults() {
    return appliance_default_rows;
}

std::span<const Default> defaults() {
    return default_rows;
}

std::span<const RemedyEffort> remedy_efforts() {
    return remedy_effort_rows;
}

const Word* find_word(std::string_view word) {
    return find(word_rows, word);
}

const Source* find_source(std::string_view id) {
    return find(source_rows, id);
}

const Fuel* find_fuel(std::string_view id) {
    return find(fuel_rows, id);
}

const Material* find_material(std::string_view id) {
    return find(material_rows, id);
}

const Wall* find_wall(std::string_view id) {
    return find(wall_rows, id);
}

const Fitting* find_fitting(std::string_view id) {
    return find(fitting_rows, id);
}

const ClayLiner* find_clay_liner(std::string_view id) {
    return find(clay_liner_rows, id);
}

const TradeSize* find_trade_size(std::string_view id) {
    return find(trade_size_rows, id);
}

const ApplianceDefault* find_appliance_default(ApplianceType type, FuelGroup fuel_group) {
    const auto row =
        std::find_if(appliance_default_rows.begin(),
                     appliance_default_rows.end(),
                     [&](const ApplianceDefault& candidate) {
                         return candidate.type == type && candidate.fuel_group == fuel_group;
                     });
    return row == appliance_default_rows.end() ? nullptr : &*row;
}

const Default* find_default(std::string_view id) {
    return find(default_rows, id);
}

const Default& default_of(DefaultId id) {
    return default_rows[static_cast<std::size_t>(id)];
}

} // namespace fluewright::catalog
