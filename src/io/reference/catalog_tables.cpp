#include "catalog_rules.hpp"
#include "fluewright/advice/checks/check.hpp"
#include "fluewright/io/reference/catalog_report.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <array>
#include <numbers>

namespace fluewright {
namespace {

constexpr CatalogColumn name_column{"name", "name"};
constexpr CatalogColumn aliases_column{"aliases", "also called", Kind::number, CatalogPlace::line};
constexpr CatalogColumn source_column{"source", "source"};
constexpr CatalogColumn mark_column{"mark", "how known"};
constexpr CatalogColumn source_below{"source", "source", Kind::number, CatalogPlace::line};
constexpr CatalogColumn mark_below{"mark", "how known", Kind::number, CatalogPlace::same_line};
constexpr CatalogColumn note_column{"note", "note", Kind::number, CatalogPlace::line};

double radians(double degrees) {
    return degrees * std::numbers::pi / 180.0;
}

/// A number that 0 stands for as missing.
CatalogCell unless_zero(double value) {
    return value > 0.0 ? CatalogCell{value} : CatalogCell{};
}

CatalogTable fuels() {
    CatalogTable table{"fuels",
                       "Fuels that `appliance.fuel.name` may name; analysis of the dry fuel",
                       {name_column,
                        {"group", "group"},
                        {"carbon", "C", Kind::fraction},
                        {"hydrogen", "H", Kind::fraction},
                        {"oxygen", "O", Kind::fraction},
                        {"nitrogen", "N", Kind::fraction, CatalogPlace::line},
                        {"sulfur", "S", Kind::fraction, CatalogPlace::same_line},
                        {"ash", "ash", Kind::fraction},
                        {"gross_heating_value_dry", "gross, dry", Kind::heating_value},
                        {"default_moisture", "moisture", Kind::moisture},
                        aliases_column,
                        source_below,
                        mark_below,
                        note_column},
                       {}};
    for (const auto& row : catalog::fuels()) {
        table.rows.push_back({row.id,
                              name(row.group.value()),
                              row.carbon,
                              row.hydrogen,
                              row.oxygen,
                              row.nitrogen,
                              row.sulphur,
                              row.ash,
                              row.gross_heating_value_dry_j_kg,
                              row.default_moisture,
                              row.aliases,
                              row.source,
                              row.mark,
                              row.note});
    }
    return table;
}

CatalogTable walls() {
    CatalogTable table{"walls",
                       "Walls that `wall` of a part may name; layers from the inside out, in mm",
                       {name_column,
                        {"kind", "kind"},
                        {"roughness", "rough", Kind::length},
                        {"inner_emissivity", "inner e."},
                        {"outer_emissivity", "outer e."},
                        {"rated_gas_temperature", "rated gas", Kind::temperature},
                        {"unrated_because", "no rating", Kind::number, CatalogPlace::line},
                        {"layers", "layers", Kind::number, CatalogPlace::line},
                        aliases_column,
                        source_below,
                        mark_below,
                        note_column},
                       {}};
    for (const auto& row : catalog::walls()) {
        table.rows.push_back({row.id,
                              name(row.kind.value()),
                              row.roughness_m,
                              row.inner_emissivity,
                              row.outer_emissivity,
                              unless_zero(row.rated_gas_temperature_k),
                              row.unrated_because,
                              row.layers,
                              row.aliases,
                              row.source,
                              row.mark,
                              row.note});
    }
    return table;
}

CatalogTable fittings() {
    CatalogTable table{"fittings",
                       "Loss coefficients on the velocity head in the part's own pipe",
                       {name_column,
                        {"part", "part"},
                        {"build", "build"},
                        {"angle", "angle", Kind::angle},
                        {"loss", "loss"},
                        {"loss_low", "low"},
                        {"loss_high", "high"},
                        source_below,
                        mark_below,
                        note_column},
                       {}};
    for (const auto& row : catalog::fittings()) {
        table.rows.push_back({row.id,
                              row.part,
                              row.build,
                              unless_zero(radians(row.angle_deg)),
                              row.loss,
                              row.loss_low,
                              row.loss_high,
                              row.source,
                              row.mark,
                              row.note});
    }
    return table;
}

CatalogTable sizes() {
    CatalogTable table{"sizes",
                       "Trade sizes of round pipe that the size search tries",
                       {name_column,
                        {"system", "system"},
                        {"inside_diameter", "inside", Kind::length},
                        {"seldom_sold_as", "seldom sold as", Kind::number, CatalogPlace::line},
                        source_column,
                        mark_column},
                       {}};
    for (const auto& row : catalog::trade_sizes()) {
        table.rows.push_back(
            {row.id, row.system, row.inside_diameter_m, row.seldom_sold_as, row.source, row.mark});
    }
    return table;
}

CatalogTable liners() {
    CatalogTable table{"liners",
                       "Clay liners that `liner` of a part may name",
                       {name_column,
                        {"shape", "shape"},
                        {"inside_width", "width", Kind::length},
                        {"inside_depth", "depth", Kind::length},
                        {"net_area", "net area", Kind::area},
                        aliases_column,
                        source_below,
                        mark_below,
                        note_column},
                       {}};
    for (const auto& row : catalog::clay_liners()) {
        table.rows.push_back({row.id,
                              row.shape,
                              row.inside_width_m,
                              row.inside_depth_m,
                              row.net_area_m2,
                              row.aliases,
                              row.source,
                              row.mark,
                              row.note});
    }
    return table;
}

CatalogTable materials() {
    CatalogTable table{
        "materials",
        "Materials that a layer of your own wall may name",
        {name_column,
         {"conductivity", "conducts", Kind::conductivity},
         {"density", "density", Kind::density},
         {"specific_heat", "heat", Kind::specific_heat},
         {"emissivity", "emiss."},
         {"roughness", "roughness", Kind::length, CatalogPlace::line},
         {"expansion_per_k", "expansion per K", Kind::number, CatalogPlace::same_line},
         source_below,
         mark_below,
         note_column},
        {}};
    for (const auto& row : catalog::materials()) {
        table.rows.push_back({row.id,
                              row.conductivity_w_mk,
                              row.density_kg_m3,
                              row.specific_heat_j_kgk,
                              row.emissivity,
                              row.roughness_m,
                              row.expansion_per_k,
                              row.source,
                              row.mark,
                              row.note});
    }
    return table;
}

CatalogTable appliances() {
    CatalogTable table{
        "appliances",
        "What is assumed of an appliance when the file does not say",
        {name_column,
         {"air_ratio_high", "air high"},
         {"air_ratio_low", "low"},
         {"efficiency_net", "effic.", Kind::fraction},
         {"draft_needed_high", "draft high", Kind::pressure},
         {"draft_needed_low", "low", Kind::pressure},
         {"draft_greatest", "greatest", Kind::pressure},
         {"low_fire_share", "low fire", Kind::fraction},
         {"unburned_share_high", "unburned, high fire", Kind::fraction, CatalogPlace::line},
         {"unburned_share_low", "unburned, low fire", Kind::fraction, CatalogPlace::same_line},
         {"load_density", "load over firebox volume", Kind::density, CatalogPlace::line},
         {"burn_time_high", "one load at high fire", Kind::duration, CatalogPlace::same_line},
         source_below,
         mark_below,
         note_column},
        {}};
    constexpr double seconds_per_hour = 3600.0;
    for (const auto& row : catalog::appliance_defaults()) {
        table.rows.push_back({row.id,
                              row.air_ratio_high,
                              row.air_ratio_low,
                              row.efficiency_net,
                              row.draft_needed_high_pa,
                              row.draft_needed_low_pa,
                              row.draft_greatest_pa,
                              row.low_fire_share,
                              row.unburned_share_high,
                              row.unburned_share_low,
                              unless_zero(row.load_density_kg_m3),
                              unless_zero(row.burn_hours_high * seconds_per_hour),
                              row.source,
                              row.mark,
                              row.note});
    }
    return table;
}

CatalogTable defaults() {
    CatalogTable table{"defaults",
                       "Single figures that are assumed or held against, in SI",
                       {name_column,
                        {"value", "value"},
                        {"low", "low"},
                        {"high", "high"},
                        {"unit", "unit"},
                        {"meaning", "meaning", Kind::number, CatalogPlace::line},
                        source_below,
                        mark_below},
                       {}};
    for (const auto& row : catalog::defaults()) {
        table.rows.push_back(
            {row.id, row.value, row.low, row.high, row.unit, row.meaning, row.source, row.mark});
    }
    return table;
}

CatalogTable sources() {
    CatalogTable table{"sources",
                       "Documents the tables and the rules rest on",
                       {name_column,
                        {"kind", "kind"},
                        {"document", "document", Kind::number, CatalogPlace::line},
                        {"place", "place", Kind::number, CatalogPlace::same_line}},
                       {}};
    for (const auto& row : catalog::sources()) {
        table.rows.push_back({row.id, row.kind, row.document, row.place});
    }
    return table;
}

CatalogTable findings() {
    CatalogTable table{"findings",
                       "What a check may find; `fluewright explain NAME` tells more",
                       {name_column,
                        {"severity", "severity"},
                        {"title", "title"},
                        {"rule", "rule", Kind::number, CatalogPlace::line},
                        source_below,
                        mark_below},
                       {}};
    const auto all = checks();
    for (const Matter& row : matters()) {
        // The first that speaks of it: physics or trade where they do.
        const auto check = std::find_if(
            all.begin(), all.end(), [&row](const Check& c) { return c.matter == &row; });
        table.rows.push_back(
            {row.id, name(row.severity), row.title, check->rule, check->source, check->mark});
    }
    return table;
}

CatalogTable table_of_checks() {
    CatalogTable table{"checks",
                       "What is held against what; `fluewright explain NAME` tells more",
                       {name_column,
                        {"basis", "basis"},
                        {"body", "body"},
                        {"severity", "severity"},
                        {"finding", "finding", Kind::number, CatalogPlace::line},
                        {"rule", "rule", Kind::number, CatalogPlace::line},
                        source_below,
                        mark_below},
                       {}};
    for (const Check& row : checks()) {
        table.rows.push_back({row.id,
                              name(row.basis),
                              row.body,
                              name(row.severity),
                              row.matter->id,
                              row.rule,
                              row.source,
                              row.mark});
    }
    return table;
}

struct Entry {
    CatalogName name;
    CatalogTable (*make)();
};

constexpr std::array entries{
    Entry{{"fuels", "fuels with their analysis, heating value and usual moisture"}, fuels},
    Entry{{"walls", "pipe and chimney walls with their layers"}, walls},
    Entry{{"fittings", "loss coefficients of elbows, tees, caps and more"}, fittings},
    Entry{{"sizes", "trade sizes of round pipe, inch and metric"}, sizes},
    Entry{{"liners", "clay liners with their clear inside"}, liners},
    Entry{{"materials", "materials for walls of your own"}, materials},
    Entry{{"appliances", "what is assumed of each type of heater"}, appliances},
    Entry{{"defaults", "single figures that are assumed or held against"}, defaults},
    Entry{{"sources", "the documents behind the figures"}, sources},
    Entry{{"findings", "what a check may find"}, findings},
    Entry{{"rules", "rules of installation of every body, with clause and edition"},
          catalog_of_rules},
    Entry{{"checks", "what is held against what, by physics, trade and bodies"}, table_of_checks},
};

} // namespace

std::span<const CatalogName> catalog_names() {
    static constexpr auto names = [] {
        std::array<CatalogName, entries.size()> list{};
        std::transform(entries.begin(), entries.end(), list.begin(), [](const Entry& entry) {
            return entry.name;
        });
        return list;
    }();
    return names;
}

CatalogTable catalog_contents() {
    CatalogTable table{"catalog",
                       "The tables; `fluewright catalog NAME` prints one",
                       {name_column, {"summary", "what it holds"}},
                       {}};
    for (const CatalogName& name : catalog_names()) {
        table.rows.push_back({name.id, name.summary});
    }
    return table;
}

CatalogTable catalog_table(std::string_view id) {
    for (const Entry& entry : entries) {
        if (entry.name.id == id) {
            return entry.make();
        }
    }
    return {};
}

} // namespace fluewright
