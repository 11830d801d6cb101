#include "other_pipe.hpp"

#include "advice/remedies/run_edit.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

constexpr double same_height_m = 1e-6;
constexpr double least_left_m = 0.1;

/// Makes the topmost upright longer or shorter; false where too little of it would be left.
bool reach_height(Installation& in, double height_m) {
    const double more_m = height_m - run_edit::total_rise_m(in);
    if (std::abs(more_m) < same_height_m) {
        return true;
    }
    const auto last = std::find_if(in.run.rbegin(), in.run.rend(), run_edit::is_upright);
    if (last == in.run.rend() || *last->up_m + more_m < least_left_m) {
        return false;
    }
    last->up_m = *last->up_m + more_m;
    return true;
}

} // namespace

Result<Installation, std::string> with_other_pipe(const Installation& written,
                                                  const OtherPipe& pipe) {
    Installation spelled = run_edit::spelled_out(written);
    if (pipe.height_m && !reach_height(spelled, *pipe.height_m)) {
        return Failure{std::string{"too little would be left of the topmost straight"}};
    }
    const std::size_t chimney = run_edit::chimney_start(spelled);
    for (std::size_t i = 0; i < spelled.run.size(); ++i) {
        if (run_edit::is_resizable(spelled, spelled.run[i])) {
            run_edit::set_diameter(spelled.run[i], i < chimney ? pipe.connector_m : pipe.chimney_m);
        }
    }
    return run_edit::shortened(std::move(spelled));
}

} // namespace fluewright
