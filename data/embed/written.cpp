#include "written.hpp"

#include <algorithm>
#include <array>

namespace fluewright::embed {
namespace {

constexpr auto all_entries = std::to_array<Entry>({
    {"sources", "Source", "source"},
    {"fuels", "Fuel", "fuel"},
    {"materials", "Material", "material"},
    {"walls", "Wall", "wall"},
    {"fittings", "Fitting", "fitting"},
    {"trade_sizes", "TradeSize", "trade_size"},
    {"trade_equivalents", "TradeEquivalent", "trade_equivalent"},
    {"clay_liners", "ClayLiner", "clay_liner"},
    {"appliance_defaults", "ApplianceDefault", "appliance_default"},
    {"defaults",
     "Default",
     "default",
     "DefaultId",
     "fluewright",
     "fluewright/model/catalog/default_id.hpp"},
    {"remedy_effort",
     "RemedyEffort",
     "remedy_effort",
     "RemedyKind",
     "fluewright",
     "fluewright/advice/remedies/remedy_kind.hpp"},
    {"rules", "Rule", "rule", "RuleId", "fluewright", "fluewright/model/catalog/rule_id.hpp"},
    {"rule_bodies", "RuleBody", "rule_body"},
    {"clearances_shields", "ShieldClearance", "shield_clearance"},
    {"clearances_shield_shares", "ShieldShare", "shield_share"},
    {"clearances_unlisted", "UnlistedClearance", "unlisted_clearance"},
    {"connector_thickness", "ConnectorThickness", "connector_thickness"},
    {"wall_passes", "WallPass", "wall_pass"},
    {"fireplace_flues_bc", "FireplaceFlue", "fireplace_flue"},
    {"flue_sizes_uk", "FlueSizeUk", "flue_size_uk"},
    {"building_elements", "BuildingElement", "building_element"},
    {"stock_lengths", "StockLength", "stock_length"},
    {"glossary", "Word", "word"},
    {"causes",
     "Cause",
     "cause",
     "CauseId",
     "fluewright::diagnosis",
     "fluewright/advice/diagnosis/cause_id.hpp"},
    {"checks", "Check", "check"},
    {"readings",
     "Reading",
     "reading",
     "ReadingId",
     "fluewright::diagnosis",
     "fluewright/advice/diagnosis/reading_id.hpp"},
    {"symptoms",
     "Symptom",
     "symptom",
     "SymptomId",
     "fluewright::diagnosis",
     "fluewright/advice/diagnosis/symptom_id.hpp"},
});

std::string first_line(const Table& table) {
    return "// Made from " + table.file + "; change that file instead.\n";
}

std::string literal(std::string_view text) {
    std::string made = "\"";
    for (const char letter : text) {
        if (letter == '"' || letter == '\\') {
            made += '\\';
        }
        made += letter;
    }
    return made + '"';
}

/// "smoke-joints" as smoke_joints.
std::string enumerator(std::string_view id) {
    std::string made{id};
    std::replace_if(
        made.begin(), made.end(), [](char c) { return c == '-' || c == ' ' || c == '/'; }, '_');
    return made;
}

bool can_be_enumerator(std::string_view name) {
    return name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string_view::npos
           && name.front() >= 'a';
}

} // namespace

std::span<const Entry> entries() {
    return all_entries;
}

std::string rows(const Entry& entry, const Table& table) {
    std::string made = first_line(table);
    made += "inline constexpr auto " + std::string{entry.array} + "_rows = std::to_array<"
            + std::string{entry.row_struct} + ">({\n";
    for (const Row& row : table.rows) {
        made += "    {";
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            const Column& column = table.columns[i];
            made += (i == 0 ? "." : ", .") + column.member + " = ";
            made +=
                column.is_number ? row.cells[i].text + column.scale : literal(row.cells[i].text);
        }
        made += "},\n";
    }
    return made + "});\n";
}

std::string enumeration(const Entry& entry, const Table& table, std::vector<Fault>& faults) {
    if (entry.enumeration.empty()) {
        return {};
    }
    const std::string space{entry.space};
    std::string made = "#pragma once\n\n" + first_line(table) + "\n#include <cstdint>\n\nnamespace "
                       + space + " {\n\n/// The rows of " + table.file
                       + ", in their order.\nenum class " + std::string{entry.enumeration}
                       + " : std::uint16_t {\n";
    for (const Row& row : table.rows) {
        const Cell& id = row.cells.front();
        const std::string name = enumerator(id.text);
        if (name.empty() || !can_be_enumerator(name)) {
            faults.push_back({table.file,
                              row.line,
                              id.column,
                              '"' + id.text + "\" cannot be a name in the code"});
        }
        made += "    " + name + ",\n";
    }
    return made + "};\n\n} // namespace " + space + '\n';
}

} // namespace fluewright::embed
