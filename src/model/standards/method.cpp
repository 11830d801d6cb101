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

} // namespace fluewright
