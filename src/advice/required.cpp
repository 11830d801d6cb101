#include "fluewright/advice/required.hpp"

#include "fluewright/core/name_list.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <algorithm>
#include <vector>

namespace fluewright {
namespace {

std::string required_words(const Required& required, std::string_view between) {
    std::string text;
    for (const Harm harm : harms) {
        if (required.asks(harm)) {
            text += (text.empty() ? std::string_view{} : between);
            text += name(harm);
        }
    }
    return text;
}

} // namespace

std::vector<std::string_view> harm_names() {
    std::vector<std::string_view> names(harms.size());
    std::transform(harms.begin(), harms.end(), names.begin(), [](Harm harm) { return name(harm); });
    return names;
}

Result<Required, std::string> read_required(std::string_view list) {
    Required required{.asked = {}, .narrow_door = false};
    const std::vector<std::string_view> names = harm_names();
    for (const std::string_view word : names_of_list(list)) {
        const auto found = std::find(names.begin(), names.end(), word);
        if (found == names.end()) {
            const auto nearest = nearest_word(word, names);
            return Failure{"`" + std::string{word} + "` is no kind of harm; "
                           + (nearest ? "did you mean `" + std::string{*nearest} + "`?"
                                      : "there are fire, draft, reloading and upkeep")};
        }
        required.asked[static_cast<std::size_t>(found - names.begin())] = true;
    }
    if (required_words(required, ",").empty()) {
        return Failure{
            std::string{"nothing is listed; there are fire, draft, reloading and upkeep"}};
    }
    return required;
}

Required
required_of_file(const Required& required, const Installation& written, const Case& resolved) {
    const bool smoked =
        std::any_of(written.observed.begin(), written.observed.end(), [](const Observation& seen) {
            return seen.smoke == Choice<SmokePlace>{SmokePlace::door};
        });
    if (!required.narrow_door || !smoked || !resolved.appliance.has_door
        || has_open_front(resolved.appliance)) {
        return required;
    }
    Required asked = required;
    asked.asked[static_cast<std::size_t>(Harm::reloading)] = true;
    asked.narrow_door = false;
    asked.door_smoked = true;
    return asked;
}

std::string list_of(const Required& required) {
    return required == Required{} ? std::string{} : required_words(required, ",");
}

std::string in_words(const Required& required) {
    if (!required.narrow_door) {
        return required_words(required, ", ")
               + (required.door_smoked ? ", as smoke was seen at the door" : "");
    }
    const double least = catalog::default_of(DefaultId::door_opening_least).value;
    return required_words(required, ", ") + "; reloading if the door smokes less than "
           + format_quantity(least, Kind::fraction, UnitSystem::metric, 2) + " open";
}

} // namespace fluewright
