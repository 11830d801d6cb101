#include "advice/remedies/remedy_changes.hpp"
#include "advice/remedies/run_edit.hpp"
#include "fluewright/advice/study/varied.hpp"
#include "fluewright/model/fields/words_at.hpp"

#include <algorithm>
#include <optional>

namespace fluewright {
namespace {

using Changed = Result<Installation, std::string>;

/// Weathers that differ in nothing else any more become one.
void set_outdoor(Installation& in, double temperature_k) {
    auto& weathers = in.site.weather;
    if (weathers.empty()) {
        weathers.emplace_back();
    }
    for (Weather& weather : weathers) {
        weather.outdoor_temperature_k = temperature_k;
    }
    const Weather& first = weathers.front();
    const bool same = std::all_of(weathers.begin(), weathers.end(), [&](const Weather& other) {
        return other.wind_m_s == first.wind_m_s
               && other.relative_humidity == first.relative_humidity;
    });
    if (same) {
        weathers.resize(1);
        weathers.front().name = "any weather";
        return;
    }
    for (std::size_t i = 0; i < weathers.size(); ++i) {
        // "hard frost" would be said of a warm day as well.
        Weather& weather = weathers[i];
        weather.name = "wind of " + weather.name.value_or("weather " + std::to_string(i + 1));
    }
}

/// The topmost upright takes what the chimney top rises or sinks.
Changed set_height(Installation in, double height_m) {
    constexpr double least_upright_m = 0.1;
    if (std::none_of(in.run.begin(), in.run.end(), run_edit::goes_up)) {
        return Failure{std::string{"the run has no upright straight to make longer or shorter"}};
    }
    if (!run_edit::move_top(in, height_m - rise_of(in.run), least_upright_m)) {
        return Failure{std::string{"too little would be left of the topmost straight"}};
    }
    return in;
}

Changed set_diameter(const Installation& in, double diameter_m) {
    Installation spelled = run_edit::spelled_out(in);
    const std::optional<Run> run = run_edit::run_of(spelled);
    if (!run) {
        return Failure{std::string{"the run cannot be built as it is now"}};
    }
    bool any = false;
    for (std::size_t i = 0; i < spelled.run.size(); ++i) {
        if (run->parts[i].has_choice_of_size()) {
            run_edit::set_new_pipe(spelled.run[i], diameter_m);
            any = true;
        }
    }
    if (!any) {
        return Failure{std::string{"the run is all masonry or rectangular"}};
    }
    return run_edit::shortened(std::move(spelled));
}

void set_burn_rate(Installation& in, double high_kg_s) {
    const bool dry = in.appliance.burn_rate_basis == BurnRateBasis::dry;
    HighLow& rate = in.appliance.burn_rate_kg_s;
    const double low_kg_s = rate.low.value_or(0.0);
    in.appliance.heat_input_w = {};
    in.appliance.heat_output_w = {};
    in.appliance.gas_flow_kg_s = {};
    rate.high = dry ? high_kg_s * (1.0 - in.appliance.fuel.moisture.value_or(0.0)) : high_kg_s;
    if (low_kg_s > *rate.high) {
        rate.low = rate.high;
    }
}

void forget_tolerances(Installation& in, const VariedKey& key) {
    auto& tolerances = in.tolerances;
    const auto varied = [&](const Tolerance& tolerance) {
        return (key.what != VariedKey::What::values && key.what != VariedKey::What::words)
               || std::any_of(
                   key.pointers.begin(), key.pointers.end(), [&](const std::string& pointer) {
                       return pointer.starts_with(tolerance.pointer);
                   });
    };
    tolerances.erase(std::remove_if(tolerances.begin(), tolerances.end(), varied),
                     tolerances.end());
}

} // namespace

Changed with_value(const Installation& written, const VariedKey& key, double value) {
    using What = VariedKey::What;
    Installation in = written;
    in.observed = seen_of_changed_run(in.observed);
    forget_tolerances(in, key);
    switch (key.what) {
    case What::outdoor:
        set_outdoor(in, value);
        break;
    case What::height:
        return set_height(std::move(in), value);
    case What::diameter:
        return set_diameter(in, value);
    case What::burn_rate:
        set_burn_rate(in, value);
        break;
    case What::words:
        for (const std::string& pointer : key.pointers) {
            if (!set_word(in, pointer, key.words[static_cast<std::size_t>(value)])) {
                return Failure{'`' + key.name + "` takes no such word"};
            }
        }
        break;
    case What::values:
        for (const std::string& pointer : key.pointers) {
            const Slot slot = find_value(in, pointer);
            if (!slot) {
                return Failure{'`' + key.name + "` is no number of the run any more"};
            }
            *slot.value = value;
        }
        break;
    }
    return in;
}

} // namespace fluewright
