#include "advice/sizing/size_rows.hpp"
#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/trade_equivalents.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "offer.hpp"
#include "run_edit.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// How many sizes beyond the present one are worth a try.
constexpr std::size_t most_sizes = 3;

/// Whether any straight is of another wall than before.
bool walls_differ(const std::vector<Part>& now, const std::vector<Part>& then) {
    return !std::equal(
        now.begin(), now.end(), then.begin(), then.end(), [](const Part& a, const Part& b) {
            return !run_edit::is_straight(a) || a.wall == b.wall;
        });
}

} // namespace

void Offer::sizes(RemedyKind kind, std::size_t begin, std::size_t end, std::string_view what) {
    const double outlet_m2 = run_->collar.bore.area_m2;
    double least_m2 = 1e9;
    double most_m2 = 0.0;
    for (std::size_t i = begin; i < end; ++i) {
        const RunPart& part = run_->parts[i];
        if (part.has_choice_of_size()) {
            least_m2 = std::min(least_m2, part.bore.area_m2);
            most_m2 = std::max(most_m2, part.bore.area_m2);
        }
    }
    if (most_m2 <= 0.0) {
        return;
    }
    std::size_t wider = 0;
    for (const catalog::TradeSize* size : sizing::trade_sizes(sizing::usual_sizes(case_))) {
        const double d = size->inside_diameter_m;
        const double size_m2 = circle_area_m2(d);
        if (!sizing::rule_against(case_, d).empty()) {
            continue;
        }
        if (catalog::are_trade_equivalents(d, circle_diameter_m(least_m2))) {
            continue; // the same size by another name
        }
        const bool helps_narrow = is_smaller_size(least_m2, size_m2);
        const bool helps_wide =
            is_smaller_size(size_m2, most_m2) && is_smaller_size(outlet_m2, most_m2);
        if ((!helps_narrow && !helps_wide) || (!helps_wide && wider >= most_sizes)) {
            continue;
        }
        wider += helps_wide ? 0U : 1U;
        add({.kind = kind,
             .amount = d,
             .what = "Use " + std::string{size->id} + " pipe for " + std::string{what}});
    }
}

void Offer::liners() {
    const double outlet_m2 = run_->collar.bore.area_m2;
    std::size_t offered = 0;
    for (const catalog::TradeSize* size : sizing::trade_sizes(sizing::usual_sizes(case_))) {
        const double d = size->inside_diameter_m;
        if (is_smaller_size(circle_area_m2(d), outlet_m2) || offered >= most_sizes
            || !liner_goes_in(*run_, d, LinerCover::bare)) {
            continue;
        }
        ++offered;
        const std::string of_size = " of " + std::string{size->id};
        add({.kind = RemedyKind::line_flue,
             .amount = d,
             .word = "flexible liner",
             .what = "Line the masonry flue with a flexible liner" + of_size});
        if (!liner_goes_in(*run_, d, LinerCover::insulated)) {
            continue;
        }
        add({.kind = RemedyKind::line_flue,
             .amount = d,
             .word = "rigid liner insulated",
             .what = "Line the masonry flue with an insulated rigid liner" + of_size});
    }
}

void Offer::insulated(std::string_view wall) {
    constexpr std::string_view kind = "insulated ";
    const auto tees = [](const Installation& in) {
        return std::count_if(in.run.begin(), in.run.end(), [](const Part& part) {
            return part.part == PartKind::tee;
        });
    };
    const std::string word{wall};
    const auto built = apply(Remedy{.kind = RemedyKind::insulate_outside, .word = word}, before_);
    const bool on_a_tee = built && tees(*built) > tees(before_);
    const bool tee_alone =
        on_a_tee && !walls_differ(before_.run, run_edit::spelled_out(*built).run);
    add({.kind = RemedyKind::insulate_outside,
         .word = word,
         .what = tee_alone ? "Set the chimney on a tee with a cleanout in place of the elbow"
                           : "Use insulated pipe (" + std::string{wall.substr(kind.size())}
                                 + ") where the flue leaves the warm room"
                                 + (on_a_tee ? ": on a tee with a cleanout" : "")});
}

void Offer::pipe() {
    add({.kind = RemedyKind::fit_shield,
         .what = "Fit a shield of sheet steel, 1 in (25 mm) off the wall, beside the pipe"});
    if (case_.appliance.fuel_group != FuelGroup::gas) {
        add({.kind = RemedyKind::double_wall_connector,
             .word = "double-wall connector",
             .what = "Use double-wall pipe for the connector"});
        for (const std::string_view wall : {"insulated 25 mm", "insulated 50 mm"}) {
            insulated(wall);
        }
    }
    add({.kind = RemedyKind::black_pipe,
         .what = "Use black steel pipe in place of the galvanized"});
    add({.kind = RemedyKind::enclose_outside,
         .what = "Enclose the part outdoors in a chase, up to below the chimney top"});
    add({.kind = RemedyKind::remove_reducer,
         .what = "Take the reducer out: full size from there on"});
    if (!run_) {
        return;
    }
    const std::size_t chimney = run_->chimney_start();
    const std::size_t end = run_->parts.size();
    if (chimney > 0 && chimney < end) {
        sizes(RemedyKind::connector_size, 0, chimney, "the connector");
        sizes(RemedyKind::chimney_size,
              chimney,
              end,
              "the " + std::string{way_out(kind_of(case_.appliance))});
    }
    sizes(RemedyKind::pipe_size, 0, end, "the whole run");
    liners();
}

} // namespace fluewright
