#pragma once

#include <functional>
#include <map>
#include <set>
#include <string>

/// The functions under test by the names the tables use for them.
namespace published {

/// The inputs of one row: "re=1e5;rel_roughness=1e-4". Asking for an input the row does not have is
/// an error, and so is an input that nobody asked for.
class Inputs {
public:
    explicit Inputs(const std::string& text);

    [[nodiscard]] double number(const std::string& name) const;
    [[nodiscard]] double number_or(const std::string& name, double otherwise) const;
    [[nodiscard]] const std::string& text(const std::string& name) const;

    [[nodiscard]] std::set<std::string> unused() const;

private:
    std::map<std::string, std::string> values_;
    mutable std::set<std::string> used_;
};

struct Check {
    std::string quantity; ///< what is computed, in words
    std::string unit;     ///< as in the tables; empty for numbers without one
    std::function<double(const Inputs&)> compute;
};

using Registry = std::map<std::string, Check>;

void add_appliance_checks(Registry& registry);
void add_gas_checks(Registry& registry);
void add_atmosphere_checks(Registry& registry);
void add_combustion_checks(Registry& registry);
void add_dew_point_checks(Registry& registry);
void add_door_checks(Registry& registry);
void add_flow_checks(Registry& registry);
void add_house_checks(Registry& registry);
void add_heat_checks(Registry& registry);
void add_gas_vent_checks(Registry& registry);
void add_open_fire_checks(Registry& registry);
void add_kind_checks(Registry& registry);
void add_gas_listing_checks(Registry& registry);
void add_state_checks(Registry& registry);
void add_stack_checks(Registry& registry);
void add_heater_checks(Registry& registry);
void add_european_checks(Registry& registry);
void add_handbook_checks(Registry& registry);
void add_march_checks(Registry& registry);
void add_warmup_checks(Registry& registry);
void add_symptom_checks(Registry& registry);

/// All of the above.
[[nodiscard]] Registry every_check();

} // namespace published
