#include "fluewright/advice/upkeep/maintenance.hpp"

#include "advice/checks/view.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/march/dew_points.hpp"
#include "fluewright/model/run/tar.hpp"

#include <algorithm>
#include <array>
#include <limits>

namespace fluewright {

std::string_view name(DepositRisk risk) {
    constexpr std::array<std::string_view, 3> names{"low", "raised", "high"};
    return names[static_cast<std::size_t>(risk)];
}

namespace {

using checking::Piece;
using checking::View;

/// Coldest inner wall of a section over the weathers in one way of firing; infinite where none was
/// solved.
double coldest_k(const View& view, const Piece& piece, StateKind kind) {
    double least = std::numeric_limits<double>::infinity();
    for (const StateResult& state : view.states()) {
        for (const Station& station : state.stations) {
            if (state.kind == kind && &view.resolved.sections[station.section] == piece.section) {
                least = std::min(least, station.inner_wall_k);
            }
        }
    }
    return least;
}

void grade(PartDeposit& part, const View& view) {
    const Case& c = view.resolved;
    const double tar_k = catalog::default_of(DefaultId::creosote_threshold_k).value;
    const bool wood = makes_tar(view.heater());
    const double dew_k = dew_points_of(c, c.gas_low(), 0.0, c.air_pressure_pa).water_k;
    if (part.coldest_low_fire_k < dew_k) {
        part.risk = DepositRisk::high;
        part.reason = view.heater().has_low_fire ? "at low fire the gas wets its wall"
                                                 : "the gas wets its wall";
    } else if (wood && part.coldest_high_fire_k < tar_k) {
        part.risk = DepositRisk::high;
        part.reason = "its wall is cold enough for creosote even at high fire";
    } else if (wood && part.coldest_low_fire_k < tar_k) {
        part.risk = DepositRisk::raised;
        part.reason = "its wall is cold enough for creosote at low fire";
    } else {
        part.reason = "its wall stays warm";
    }
    const double wet = catalog::default_of(DefaultId::moisture_limit_wet).value;
    if (wood && view.heater().moisture > wet && part.risk == DepositRisk::raised) {
        part.risk = DepositRisk::high;
        part.reason += ", and the wood is wet";
    }
}

SweepInterval interval_of(DepositRisk risk, FuelGroup fuel) {
    switch (risk) {
    case DepositRisk::low:
        return {12.0, 12.0, "look and sweep at least once a year", "sweeps-institute"};
    case DepositRisk::raised:
        if (fuel != FuelGroup::wood) {
            return {2.0,
                    6.0,
                    "look every month in the season; sweep at least twice in it",
                    "permit-twice-monthly"};
        }
        return {2.0,
                6.0,
                "look every month in the season; sweep at least twice in it, and after "
                "every 3 cords (11 m3) of wood",
                "wood-question-2006"};
    case DepositRisk::high:
        break;
    }
    return {0.5,
            2.0,
            "look twice a month in the season and sweep whenever the deposit calls for "
            "it, until the cause is cured",
            "permit-twice-monthly"};
}

void look_first(Maintenance& m, const View& view) {
    const PartDeposit* worst = nullptr;
    for (const PartDeposit& part : m.parts) {
        if (worst == nullptr || part.coldest_low_fire_k < worst->coldest_low_fire_k) {
            worst = &part;
        }
    }
    for (const Piece& piece : view.pieces) {
        if ((piece.section->kind == PartKind::cap || piece.section->kind == PartKind::screen)
            && piece.part->mesh_m) {
            m.look_first.push_back("the screen at " + view.place_of(piece));
        }
    }
    const auto is_worst = [&](const Piece& piece) {
        return worst != nullptr && worst->part == piece.index;
    };
    if (worst != nullptr) {
        const bool level = std::any_of(view.pieces.begin(), view.pieces.end(), [&](const Piece& p) {
            return is_worst(p) && p.level();
        });
        m.look_first.push_back(
            worst->place
            + (level ? ", the coldest, which lies level and fills with ash" : ", the coldest"));
    }
    for (const Piece& piece : view.pieces) {
        if (piece.level() && !is_worst(piece)) {
            m.look_first.push_back(view.place_of(piece) + ", which lies level and fills with ash");
        } else if (piece.section->kind == PartKind::tee && piece.section->cleanout) {
            m.look_first.push_back(view.place_of(piece) + ", where what falls collects");
        }
    }
}

} // namespace

Maintenance
maintenance(const Installation& written, const Case& resolved, const Solution& solution) {
    Maintenance m;
    const View view{written, resolved, &solution};
    m.applies = view.solid_fuel();
    if (!m.applies) {
        return m;
    }
    for (const Piece& piece : view.pieces) {
        if (!piece.has_length()) {
            continue;
        }
        PartDeposit part;
        part.part = piece.index;
        part.place = view.place_of(piece);
        part.coldest_low_fire_k = coldest_k(view, piece, StateKind::low_fire);
        part.coldest_high_fire_k = coldest_k(view, piece, StateKind::high_fire);
        if (part.coldest_low_fire_k > 1e6) {
            part.coldest_low_fire_k = part.coldest_high_fire_k;
        }
        grade(part, view);
        m.risk = std::max(m.risk, part.risk);
        m.parts.push_back(std::move(part));
    }
    look_first(m, view);
    m.sweep = interval_of(m.risk, resolved.appliance.fuel_group);
    const catalog::Rule& thickness = catalog::rule_of(RuleId::trade_creosote_thickness);
    m.clean_at_m = thickness.figure;
    m.no_fire_at_m = thickness.second;
    m.thickness_source = thickness.source;
    if (makes_tar(resolved.appliance)) {
        m.disagreement =
            "How the fire is run counts most: a smoldering fire left up to 48 times the "
            "deposit of a bright one [seri-192]. On moisture two studies disagree "
            "[seri-192, creosote-nbs-1981].";
    }
    return m;
}

} // namespace fluewright
