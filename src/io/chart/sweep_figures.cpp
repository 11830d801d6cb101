#include "sweep_figures.hpp"

#include "io/text/words.hpp"

#include <algorithm>
#include <limits>

namespace fluewright {

double least_margin_pa(const Score& score) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        if (score.verdicts[i].kind != Kind::pressure) {
            continue;
        }
        if (!report::has_working_point(score.states[i])) {
            return std::numeric_limits<double>::quiet_NaN();
        }
        least = std::min(least, score.verdicts[i].spare);
    }
    return least;
}

} // namespace fluewright
