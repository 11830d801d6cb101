#include "fluewright/model/standards/method.hpp"

#include <algorithm>

namespace fluewright {

bool MethodResult::met() const {
    return std::all_of(firings.begin(), firings.end(), [](const MethodFiring& firing) {
        return std::all_of(
            firing.criteria.begin(), firing.criteria.end(), [](const MethodCriterion& criterion) {
                return !criterion.counts || criterion.met();
            });
    });
}

std::string MethodResult::not_met_words() const {
    std::string words;
    for (const MethodFiring& firing : firings) {
        for (const MethodCriterion& criterion : firing.criteria) {
            if (criterion.counts && !criterion.met()) {
                words += words.empty() ? "" : "; ";
                words += criterion.symbols;
                words += " at ";
                words += firing.name;
            }
        }
    }
    return words;
}

} // namespace fluewright
