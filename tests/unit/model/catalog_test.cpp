#include "catch.hpp"
#include "fluewright/advice/diagnosis/tables.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

using namespace fluewright::catalog;

namespace {

/// The parts of a '|'-separated cell.
std::vector<std::string_view> split(std::string_view cell) {
    std::vector<std::string_view> parts;
    while (!cell.empty()) {
        parts.push_back(cell.substr(0, cell.find('|')));
        cell.remove_prefix(std::min(parts.back().size() + 1, cell.size()));
    }
    return parts;
}

/// Calls `visit` with each table that carries a source and a mark.
template <class Visitor>
void for_each_table(Visitor visit) {
    visit(fuels());
    visit(materials());
    visit(walls());
    visit(fittings());
    visit(trade_sizes());
    visit(clay_liners());
    visit(appliance_defaults());
    visit(defaults());
    visit(rules());
    visit(rule_bodies());
    visit(shield_clearances());
    visit(shield_shares());
    visit(unlisted_clearances());
    visit(connector_thicknesses());
    visit(fireplace_flues());
    visit(flue_sizes_uk());
    visit(building_elements());
    visit(stock_lengths());
    visit(fluewright::diagnosis::causes());
    visit(fluewright::diagnosis::checks());
    visit(fluewright::diagnosis::readings());
    visit(fluewright::diagnosis::symptoms());
}

/// An id or alias is lower-case, trimmed, used once, and found by its row's look-up.
template <class Rows, class Find>
void require_names_resolve(const Rows& rows, Find find) {
    std::set<std::string_view> names;
    for (const auto& row : rows) {
        std::vector<std::string_view> own{row.id};
        if constexpr (requires { row.aliases; }) {
            for (const auto alias : split(row.aliases)) {
                own.push_back(alias);
            }
        }
        for (const auto name : own) {
            INFO(name);
            REQUIRE_FALSE(name.empty());
            REQUIRE(name.find_first_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string_view::npos);
            REQUIRE(name.front() != ' ');
            REQUIRE(name.back() != ' ');
            REQUIRE(names.insert(name).second);
            REQUIRE(find(name) == &row);
        }
    }
}

} // namespace

TEST_CASE("no table is empty") {
    REQUIRE_FALSE(sources().empty());
    for_each_table([](auto rows) { REQUIRE_FALSE(rows.empty()); });
}

TEST_CASE("every id and alias finds its own row and no other") {
    require_names_resolve(sources(), find_source);
    require_names_resolve(fuels(), find_fuel);
    require_names_resolve(materials(), find_material);
    require_names_resolve(walls(), find_wall);
    require_names_resolve(fittings(), find_fitting);
    require_names_resolve(trade_sizes(), find_trade_size);
    require_names_resolve(clay_liners(), find_clay_liner);
    require_names_resolve(defaults(), find_default);
}

TEST_CASE("look-ups lower the case and trim") {
    REQUIRE(find_fuel("  Beech\t") == find_fuel("beech"));
    REQUIRE(find_fuel("Heating Oil")->id == "fuel oil no. 2");
    REQUIRE(find_wall("Stovepipe")->id == "single-wall steel");
    REQUIRE(find_trade_size("6 IN")->inside_diameter_m == Approx(0.1524));
    REQUIRE(find_fuel("") == nullptr);
    REQUIRE(find_fuel("   ") == nullptr);
    REQUIRE(find_fuel("beec") == nullptr);
    REQUIRE(find_fuel("firewood|cordwood") == nullptr);
    REQUIRE(
        find_appliance_default(fluewright::ApplianceType::draft_hood, fluewright::FuelGroup::coal)
        == nullptr);
}

TEST_CASE("customary columns arrive in SI") {
    REQUIRE(find_fuel("hardwood")->carbon == Approx(0.4996));
    REQUIRE(find_fuel("hardwood")->gross_heating_value_dry_j_kg == Approx(19.88e6));
    REQUIRE(find_material("carbon steel")->expansion_per_k == Approx(13.2e-6));
    REQUIRE(find_wall("flexible liner")->roughness_m == Approx(0.005));
    REQUIRE(find_clay_liner("8.5x8.5")->inside_width_m == Approx(0.17145));
    // Named by the outside: 8 x 8 in is the smaller of two.
    REQUIRE(find_clay_liner("8x8")->inside_width_m == Approx(6.48 * 0.0254));
    REQUIRE(find_clay_liner("8x8")->net_area_m2 < find_clay_liner("8.5x8.5")->net_area_m2);
    REQUIRE(find_clay_liner("8 in round")->net_area_m2 == Approx(0.0322580));
    REQUIRE(find_appliance_default(fluewright::ApplianceType::stove, fluewright::FuelGroup::wood)
                ->efficiency_net
            == Approx(0.70));
}

TEST_CASE("marks come from the fixed list and remembered figures stay marked") {
    const std::set<std::string_view> allowed{
        "looked up", "quoted", "computed", "judgement", "common practice", "from memory"};
    for_each_table([&](auto rows) {
        for (const auto& row : rows) {
            INFO(row.id);
            REQUIRE(allowed.contains(row.mark));
            if (row.source == "memory") {
                REQUIRE(row.mark == "from memory");
            }
            if (row.source == "practice") {
                REQUIRE(row.mark == "common practice");
            }
            if (row.mark == "looked up") {
                REQUIRE(row.source != "judgement");
            }
        }
    });
}

TEST_CASE("every source is used by a row or said to be used by the code") {
    std::set<std::string_view> used;
    std::string notes;
    for_each_table([&](auto rows) {
        for (const auto& row : rows) {
            used.insert(row.source);
            if constexpr (requires { row.note; }) {
                notes += row.note;
                notes += '\n';
            }
        }
    });
    const std::set<std::string_view> kinds{
        "standard", "law", "handbook", "paper", "report", "library", "practice", "memory"};
    for (const auto& source : sources()) {
        INFO(source.id);
        REQUIRE(kinds.contains(source.kind));
        REQUIRE((source.used_by == "data" || source.used_by == "code"));
        if (source.used_by == "data") {
            REQUIRE((used.contains(source.id) || notes.find(source.id) != std::string::npos));
        }
    }
}

TEST_CASE("the heating-value formula of Channiwala and Parikh agrees with the table") {
    // Source: Fuel 81 (2002) 1051-1063; mean absolute error 1.45 %, so 3 % holds for any one fuel.
    for (const auto& fuel : fuels()) {
        INFO(fuel.id);
        const double formula_j_kg =
            1e8
            * (0.3491 * fuel.carbon + 1.1783 * fuel.hydrogen + 0.1005 * fuel.sulphur
               - 0.1034 * fuel.oxygen - 0.0151 * fuel.nitrogen - 0.0211 * fuel.ash);
        REQUIRE(fuel.gross_heating_value_dry_j_kg == Approx(formula_j_kg).epsilon(0.03));
    }
}

TEST_CASE("hot insulation meets the remembered figures at heat") {
    const auto at = [](const Material* material, double celsius) {
        return material->conductivity_w_mk + material->conductivity_slope_w_mk2 * (celsius - 20.0);
    };
    const Material* wool = find_material("mineral wool hot");
    REQUIRE(at(wool, 200) == Approx(0.065).epsilon(0.05));
    REQUIRE(at(wool, 300) == Approx(0.085).epsilon(0.05));
    REQUIRE(at(wool, 400) == Approx(0.11).epsilon(0.05));
    const Material* blanket = find_material("ceramic fiber blanket");
    REQUIRE(at(blanket, 200) == Approx(0.06).epsilon(0.05));
    REQUIRE(at(blanket, 400) == Approx(0.10).epsilon(0.05));
    const Material* steel = find_material("carbon steel");
    REQUIRE(at(steel, 300) == Approx(44.01).epsilon(1e-3));
    REQUIRE(at(find_material("stainless steel"), 300) == Approx(18.41).epsilon(1e-3));
}

TEST_CASE("elbows lose more the sharper they turn") {
    for (const std::string build : {"smooth", "gored", "mitered"}) {
        double before = 0.0;
        for (const std::string angle : {"15", "30", "45", "60", "75", "90"}) {
            const std::string id = "elbow " + build + " " + angle;
            INFO(id);
            const Fitting* elbow = find_fitting(id);
            REQUIRE(elbow != nullptr);
            REQUIRE(elbow->angle_deg == std::stod(angle));
            REQUIRE(elbow->build == build);
            REQUIRE(elbow->loss > before);
            before = elbow->loss;
        }
    }
}

TEST_CASE("net area of a liner lies near its sides") {
    for (const auto& liner : clay_liners()) {
        INFO(liner.id);
        const double sides_m2 = liner.inside_width_m * liner.inside_depth_m;
        const double section_m2 =
            liner.shape == "round" ? 0.25 * std::acos(-1.0) * sides_m2 : sides_m2;
        REQUIRE(liner.net_area_m2 == Approx(section_m2).epsilon(0.20));
    }
}

TEST_CASE("appliance rows are named by type and fuel group") {
    for (const auto& row : appliance_defaults()) {
        INFO(row.id);
        REQUIRE(row.id
                == std::string(name(row.type.value())) + "/"
                       + std::string(name(row.fuel_group.value())));
        REQUIRE(find_appliance_default(row.type, row.fuel_group) == &row);
    }
}
