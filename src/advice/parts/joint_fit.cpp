#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace fluewright {
namespace {

/// The sizes of the two systems that look alike, such as 6 in and 150 mm, differ by up to this.
constexpr double look_alike_m = 0.004;

const catalog::TradeSize* trade_size(double diameter_m) {
    constexpr double name_tolerance_m = 0.0006;
    const catalog::TradeSize* best = nullptr;
    for (const catalog::TradeSize& row : catalog::trade_sizes()) {
        const double gap = std::abs(row.inside_diameter_m - diameter_m);
        if (gap < name_tolerance_m
            && (best == nullptr || gap < std::abs(best->inside_diameter_m - diameter_m))) {
            best = &row;
        }
    }
    return best;
}

/// Whether two that are not round have the same sides, whichever way round they are named.
bool same_sides(const EndFacts& a, const EndFacts& b) {
    const auto near = [](double one_m, double other_m) {
        return std::abs(one_m - other_m) <= same_bore_m;
    };
    return near(std::max(a.width_m, a.depth_m), std::max(b.width_m, b.depth_m))
           && near(std::min(a.width_m, a.depth_m), std::min(b.width_m, b.depth_m));
}

Bore bore_of(const EndFacts& below, const EndFacts& above) {
    if (below.end == PipeEnd::open || above.end == PipeEnd::open) {
        return Bore::same; // a thimble makes the fit
    }
    if (below.rectangular != above.rectangular || below.oval != above.oval) {
        return Bore::other_shape;
    }
    if (below.rectangular && !same_sides(below, above)
        && std::abs(above.diameter_m - below.diameter_m) <= same_bore_m) {
        return Bore::other_shape;
    }
    const double wider_m = above.diameter_m - below.diameter_m;
    const catalog::TradeSize* lower = trade_size(below.diameter_m);
    const catalog::TradeSize* upper = trade_size(above.diameter_m);
    // 224 mm and 225 mm differ by a hair more than 1 mm in binary; two that bear one name are one.
    if (std::abs(wider_m) <= same_bore_m + 1e-6 || (lower != nullptr && lower == upper)) {
        return Bore::same;
    }
    const bool two_systems = lower != nullptr && upper != nullptr && lower->system != upper->system;
    if (std::abs(wider_m) <= look_alike_m && two_systems) {
        return Bore::inch_and_metric;
    }
    return wider_m > 0.0 ? Bore::wider_above : Bore::narrower_above;
}

bool takes(PipeEnd outer, PipeEnd inner) {
    return (outer == PipeEnd::plain && inner == PipeEnd::crimped)
           || (outer == PipeEnd::socket && (inner == PipeEnd::crimped || inner == PipeEnd::plain));
}

/// Whether a part between can meet both ends with its inserted ends to the heater: a crimped end
/// that points up, and a socket that points down, take nothing that way.
bool an_adapter_helps(const EndFacts& below, const EndFacts& above) {
    return below.end != PipeEnd::crimped && above.end != PipeEnd::socket;
}

std::string end_adapter(const EndFacts& below, const EndFacts& above) {
    const auto is = [&](PipeEnd end) { return below.end == end || above.end == end; };
    if (is(PipeEnd::locking)) {
        // A collar is of no wall that the file names.
        if (below.end == PipeEnd::locking && below.wall.empty()) {
            return "adapter from the heater's lock to "
                   + (above.end == PipeEnd::locking ? above.wall : "pipe");
        }
        const bool both = below.end == above.end;
        return both ? "adapter from " + below.wall + " to " + above.wall
                    : "adapter from pipe to "
                          + (below.end == PipeEnd::locking ? below.wall : above.wall);
    }
    return is(PipeEnd::flange) ? "flange adapter" : "crimp-to-socket adapter"; // both are plain
}

std::string_view shape_word(const EndFacts& end) {
    return shape_name(!end.rectangular, end.oval);
}

std::string_view bore_adapter(Bore bore) {
    switch (bore) {
    case Bore::inch_and_metric:
        return "inch-to-metric adapter";
    case Bore::wider_above:
        return "increaser";
    case Bore::narrower_above:
        return "reducer";
    case Bore::other_shape:
    case Bore::same:
        break;
    }
    return {};
}

std::string bore_adapter(Bore bore, const EndFacts& below, const EndFacts& above) {
    return bore == Bore::other_shape ? std::string{shape_word(below)} + "-to-"
                                           + std::string{shape_word(above)} + " adapter"
                                     : std::string{bore_adapter(bore)};
}

/// The end of an adapter that goes into, or onto, the end below it.
PipeEnd end_for_below(PipeEnd below) {
    return below == PipeEnd::plain || below == PipeEnd::socket ? PipeEnd::crimped : below;
}

/// The end of an adapter that takes the end above it.
PipeEnd end_for_above(PipeEnd above) {
    return above == PipeEnd::crimped ? PipeEnd::plain
           : above == PipeEnd::plain ? PipeEnd::socket
                                     : above;
}

std::string side_words(const EndFacts& facts, UnitSystem units) {
    return facts.rectangular ? format_quantity(facts.width_m, Kind::length, units) + " x "
                                   + format_quantity(facts.depth_m, Kind::length, units)
                             : size_name(facts.diameter_m, units);
}

/// "oval-to-round adapter, 8 in x 5 in crimped below, 6 in plain above"
std::string named_with_ends(std::string name,
                            const Fit& fit,
                            const EndFacts& below,
                            const EndFacts& above,
                            UnitSystem units) {
    const auto end = [&](PipeEnd of) {
        return fit.other_part ? std::string{} : ' ' + std::string{fluewright::name(of)};
    };
    return std::move(name) + ", " + side_words(below, units) + end(fit.adapter_heater_end)
           + " below, " + side_words(above, units) + end(fit.adapter_chimney_end) + " above";
}

} // namespace

Mating mating_of(const EndFacts& below, const EndFacts& above) {
    if (below.end == PipeEnd::open || above.end == PipeEnd::open) {
        return Mating::good;
    }
    if (below.end == PipeEnd::flange && above.end == PipeEnd::flange) {
        return Mating::good;
    }
    if (below.end == PipeEnd::locking && above.end == PipeEnd::locking) {
        return below.wall == above.wall ? Mating::good : Mating::never;
    }
    if (takes(below.end, above.end)) {
        return Mating::good;
    }
    return takes(above.end, below.end) ? Mating::points_up : Mating::never;
}

Fit fit_of(const EndFacts& below, const EndFacts& above, UnitSystem units) {
    Fit fit;
    fit.mating = mating_of(below, above);
    fit.bore = bore_of(below, above);
    fit.other_part = fit.mating != Mating::good && !an_adapter_helps(below, above);
    fit.adapter_heater_end = end_for_below(below.end);
    fit.adapter_chimney_end = end_for_above(above.end);
    const bool adapted = fit.mating == Mating::never && !fit.other_part;
    const std::string ends = adapted ? end_adapter(below, above) : "";
    const std::string bores = bore_adapter(fit.bore, below, above);
    const std::string both = ends + (ends.empty() || bores.empty() ? "" : ", as ") + bores;
    fit.adapter = both.empty() ? "" : named_with_ends(both, fit, below, above, units);
    fit.crimps = adapted && bores.empty() && below.end == PipeEnd::plain
                 && above.end == PipeEnd::plain && above.can_crimp;
    return fit;
}

std::string size_name(double diameter_m, UnitSystem units) {
    const catalog::TradeSize* row = trade_size(diameter_m);
    return row != nullptr ? std::string{row->id} : format_quantity(diameter_m, Kind::length, units);
}

std::string bore_name(const FlueBore& bore, UnitSystem units) {
    return bore.round()
               ? size_name(bore.diameter_m, units)
               : (bore.oval ? "oval " : "") + format_quantity(bore.width_m, Kind::length, units)
                     + " x " + format_quantity(bore.depth_m, Kind::length, units);
}

} // namespace fluewright
