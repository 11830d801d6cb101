#include "fluewright/advice/study/varied.hpp"
#include "fluewright/model/fields/words_at.hpp"

#include <algorithm>
#include <limits>

namespace fluewright {
namespace {

constexpr double not_given = std::numeric_limits<double>::quiet_NaN();

double pipe_diameter_m(const Case& resolved) {
    const auto pipe =
        std::find_if(resolved.run.parts.begin(), resolved.run.parts.end(), [](const RunPart& part) {
            return part.has_length() && part.has_choice_of_size();
        });
    return pipe == resolved.run.parts.end() ? not_given : pipe->bore.diameter_m;
}

double given_now(const Installation& written, const VariedKey& key) {
    return number_at(written, key.pointers.front()).value_or(not_given);
}

} // namespace

double value_now(const Installation& written, const Case& resolved, const VariedKey& key) {
    switch (key.what) {
    case VariedKey::What::outdoor:
        return resolved.weathers.front().outdoor_temperature_k;
    case VariedKey::What::height:
        return resolved.total_rise_m();
    case VariedKey::What::diameter:
        return pipe_diameter_m(resolved);
    case VariedKey::What::burn_rate:
        return resolved.appliance.high.burn_rate_kg_s;
    case VariedKey::What::words:
        return not_given;
    case VariedKey::What::values:
        break;
    }
    return given_now(written, key);
}

} // namespace fluewright
