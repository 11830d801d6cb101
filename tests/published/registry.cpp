#include "registry.hpp"

#include <cstdlib>
#include <stdexcept>

namespace published {

Inputs::Inputs(const std::string& text) {
    std::size_t begin = 0;
    while (begin < text.size()) {
        const std::size_t end = std::min(text.find(';', begin), text.size());
        const std::string part = text.substr(begin, end - begin);
        const std::size_t equals = part.find('=');
        if (equals == std::string::npos) {
            throw std::runtime_error("input without a value: " + part);
        }
        if (!values_.emplace(part.substr(0, equals), part.substr(equals + 1)).second) {
            throw std::runtime_error("input given twice: " + part);
        }
        begin = end + 1;
    }
}

const std::string& Inputs::text(const std::string& name) const {
    const auto found = values_.find(name);
    if (found == values_.end()) {
        throw std::runtime_error("no input named " + name);
    }
    used_.insert(name);
    return found->second;
}

double Inputs::number(const std::string& name) const {
    const std::string& value = text(name);
    char* end = nullptr;
    const double number = std::strtod(value.c_str(), &end);
    if (value.empty() || *end != '\0') {
        throw std::runtime_error("not a number: " + name + "=" + value);
    }
    return number;
}

double Inputs::number_or(const std::string& name, double otherwise) const {
    return values_.contains(name) ? number(name) : otherwise;
}

std::set<std::string> Inputs::unused() const {
    std::set<std::string> names;
    for (const auto& [name, value] : values_) {
        if (!used_.contains(name)) {
            names.insert(name);
        }
    }
    return names;
}

Registry every_check() {
    Registry registry;
    add_appliance_checks(registry);
    add_gas_checks(registry);
    add_atmosphere_checks(registry);
    add_combustion_checks(registry);
    add_dew_point_checks(registry);
    add_door_checks(registry);
    add_flow_checks(registry);
    add_house_checks(registry);
    add_heat_checks(registry);
    add_gas_vent_checks(registry);
    add_open_fire_checks(registry);
    add_kind_checks(registry);
    add_gas_listing_checks(registry);
    add_state_checks(registry);
    add_stack_checks(registry);
    add_heater_checks(registry);
    add_european_checks(registry);
    add_handbook_checks(registry);
    add_march_checks(registry);
    add_warmup_checks(registry);
    add_symptom_checks(registry);
    return registry;
}

} // namespace published
