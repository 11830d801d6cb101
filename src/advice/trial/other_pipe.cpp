#include "other_pipe.hpp"

#include "advice/remedies/run_edit.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fluewright {
namespace {

constexpr double same_height_m = 1e-6;
constexpr double least_left_m = 0.1;

/// Makes the topmost upright longer or shorter; false where too little of it would be left.
bool reach_height(Installation& in, double height_m) {
    const double more_m = height_m - rise_of(in.run);
    if (std::abs(more_m) < same_height_m) {
        return true;
    }
    return run_edit::move_top(in, more_m, least_left_m);
}

} // namespace

Result<Installation, std::string> with_other_pipe(const Installation& written,
                                                  const OtherPipe& pipe) {
    Installation spelled = run_edit::spelled_out(written);
    if (pipe.height_m && !reach_height(spelled, *pipe.height_m)) {
        return Failure{std::string{"too little would be left of the topmost straight"}};
    }
    const std::optional<Run> run = run_edit::run_of(spelled);
    if (!run) {
        return Failure{std::string{"the run cannot be built so"}};
    }
    const std::size_t chimney = run->chimney_start();
    for (std::size_t i = 0; i < spelled.run.size(); ++i) {
        if (run->parts[i].has_choice_of_size()) {
            run_edit::set_new_pipe(spelled.run[i], i < chimney ? pipe.connector_m : pipe.chimney_m);
        }
    }
    return run_edit::shortened(std::move(spelled));
}

Result<Installation, std::string> with_other_clay_liner(const Installation& written,
                                                        const OtherClayLiner& other) {
    Installation spelled = run_edit::spelled_out(written);
    const std::optional<Run> run = run_edit::run_of(spelled);
    const catalog::ClayLiner* row = catalog::find_clay_liner(other.liner);
    if (!run || row == nullptr) {
        return Failure{std::string{"the run cannot be built so"}};
    }
    bool changed = false;
    for (std::size_t i = 0; i < spelled.run.size(); ++i) {
        if (run->parts[i].wall_kind == WallKind::masonry) {
            run_edit::set_clay_liner(spelled.run[i], other.liner);
            changed = true;
        }
    }
    if (!changed) {
        return Failure{std::string{"no part of the run is masonry"}};
    }
    if (burning_type(spelled.appliance) == ApplianceType::fireplace) {
        Outlet& outlet = spelled.appliance.outlet;
        const bool round = row->shape == "round";
        outlet.diameter_m = round ? Given{row->inside_width_m} : std::nullopt;
        outlet.width_m = round ? std::nullopt : Given{row->inside_width_m};
        outlet.depth_m = round ? std::nullopt : Given{row->inside_depth_m};
        outlet.shape.reset();
    }
    return run_edit::shortened(std::move(spelled));
}

} // namespace fluewright
