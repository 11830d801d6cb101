#include "small.hpp"

#include "box.hpp"
#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::parts {
namespace {

using checking::Piece;

/// Joints of single-wall pipe, and the screws in them.
struct SlipJoints {
    double count{};
    double screws{};
};

bool slips(const EndFacts& facts) {
    return facts.end == PipeEnd::plain || facts.end == PipeEnd::crimped
           || facts.end == PipeEnd::socket;
}

/// How many joints of a kind there are where two ends meet: an adapter makes one joint into two,
/// and each is held as the pipe on its side; a pipe that ends in a thimble is not held at all.
struct Held {
    double slips{};
    double locks{};
    double flanges{};
};

Held held(const Joint& joint) {
    const bool adapted = !joint.bought_adapter().empty();
    Held all;
    for (const EndFacts& facts : {joint.lower, joint.upper}) {
        const double share = adapted ? 1.0 : 0.5;
        all.slips += slips(facts) ? share : 0.0;
        all.locks += facts.end == PipeEnd::locking ? share : 0.0;
        all.flanges += facts.end == PipeEnd::flange ? share : 0.0;
    }
    const bool thimble = joint.lower.end == PipeEnd::open || joint.upper.end == PipeEnd::open;
    return thimble ? Held{} : all;
}

/// Caps lock or clamp on by themselves, and a flexible liner is clamped by its tee and top plate.
bool clamps_itself(const Piece& piece) {
    return piece.section->kind == PartKind::cap || piece.wall->kind == WallKind::liner;
}

void fasteners(const Job& job) {
    const double usual = catalog::default_of(DefaultId::joint_fasteners).value;
    SlipJoints slip;
    double bands = 0.0;
    double gaskets = 0.0;
    for (const Joint& joint : job.list.joints.joints) {
        const Piece* above = piece_of(job, joint.above);
        if (above == nullptr || clamps_itself(*above)) {
            continue;
        }
        // Two straights the shop joins into one length share no joint.
        const bool one_stretch =
            std::any_of(job.list.stretches.begin(), job.list.stretches.end(), [&](const auto& s) {
                return std::count(s.parts.begin(), s.parts.end(), joint.above) > 0
                       && std::count(s.parts.begin(), s.parts.end(), joint.below) > 0;
            });
        if (one_stretch) {
            continue;
        }
        const Held here = held(joint);
        slip.count += here.slips;
        slip.screws += here.slips * above->part->screws.value_or(usual);
        bands += here.locks;
        gaskets += here.flanges;
    }
    for (const PipeStretch& stretch : job.list.stretches) {
        const double inner = std::max(0.0, static_cast<double>(stretch.pieces.size()) - 1.0);
        if (stretch.kind == WallKind::insulated || stretch.kind == WallKind::double_wall) {
            bands += inner;
        } else if (stretch.kind == WallKind::single) {
            const Part& first =
                job.view.written.run[static_cast<std::size_t>(stretch.parts.front())];
            slip.count += inner;
            slip.screws += inner * first.screws.value_or(usual);
        }
    }
    add(job,
        {.what = "sheet-metal screws, stainless or black",
         .count = slip.screws,
         .where = "joints of single-wall pipe",
         .why = "hold each joint",
         .source = source_of(DefaultId::joint_fasteners)});
    const bool hand_fed = is_fed_by_hand(job.view.heater());
    // What the hood lets in no joint keeps out.
    const bool hooded = kind_of(job.view.heater()) == HeaterKind::gas_hood;
    add(job,
        {.what = hand_fed ? "furnace cement" : "sealant made for this vent",
         .count =
             hooded ? 0.0 : slip.count * catalog::default_of(DefaultId::cement_per_joint_kg).value,
         .unit = "kg",
         .where = "a thin coat in each of those joints",
         .why = "keeps air from leaking in",
         .source = source_of(DefaultId::cement_per_joint_kg)});
    add(job,
        {.what = "locking band",
         .count = bands,
         .where = "joints of double-wall and factory-built pieces",
         .why = "hold each joint",
         .source = std::string{trade_practice}});
    add(job,
        {.what = "flange gasket with bolts",
         .count = gaskets,
         .where = "flanged joints",
         .why = "seal them",
         .source = std::string{trade_practice}});
}

void adapters(const Job& job) {
    for (const Joint& joint : job.list.joints.joints) {
        if (!joint.bought_adapter().empty()) {
            const double wanted_m = joint.lower.diameter_m;
            add(job,
                {.what = std::string{joint.bought_adapter()},
                 .where = joint.place,
                 .at_hand = take_fitting(job,
                                         {.kind = StockKind::adapter,
                                          .wall = {},
                                          .diameter_m = wanted_m,
                                          .to_diameter_m = joint.upper.diameter_m,
                                          .angle_rad = std::nullopt,
                                          .heater_end = joint.turned.adapter_heater_end,
                                          .chimney_end = joint.turned.adapter_chimney_end}),
                 .why = "the two ends do not go together as they are",
                 .source = std::string{trade_practice},
                 .in_run = true});
        }
    }
}

void cleanouts(const Job& job) {
    double plugs = 0.0;
    double assumed = 0.0;
    for (const Piece& piece : job.view.pieces) {
        // The cleanout of brick is a door in it.
        if (piece.section->kind == PartKind::tee && piece.section->cleanout
            && piece.wall->kind != WallKind::masonry) {
            plugs += 1.0;
            assumed += piece.part->cleanout ? 0.0 : 1.0;
        }
    }
    add(job,
        {.what = "cleanout plug or cap",
         .count = plugs,
         .where = plugs < 1.5 ? "the tee" : "the tees",
         .why = assumed > 0.0 ? "closes the open end of the tee; assumed, as the file does not "
                                "say `cleanout`"
                              : "closes the open end of the tee",
         .source = std::string{trade_practice}});
}

/// Where the file has a slip joint there is one to buy; where both ends of a stretch are held,
/// something must take up what it grows. Pipe that is not cut has a telescoping piece for it, or no
/// room for one.
void slip_joints(const Job& job) {
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.kind != WallKind::single || stretch.telescopes()
            || !(stretch.must_slide || stretch.has_slip_joint)) {
            continue;
        }
        const auto growth = std::find_if(job.list.growth.begin(),
                                         job.list.growth.end(),
                                         [&](const Growth& g) { return g.place == stretch.place; });
        add(job,
            {.what = "slip joint, a sleeve that slides in the pipe",
             .size = stretch.size,
             .where = "the upper end of " + stretch.place + ", screwed on one side only",
             .why = "it expands by " + job.view.show(growth->grows_m, Kind::length)
                    + (stretch.must_slide ? " and both its ends are held" : "")
                    + "; cut the piece there shorter by the gap the sleeve bridges (computed)",
             .diameter_m = stretch.diameter_m});
    }
}

/// Paint of bare single-wall steel, by the hottest surface of the run. The vent of a burner is
/// galvanized or stainless and gets none.
void paint(const Job& job) {
    if (!is_fed_by_hand(job.view.heater())) {
        return;
    }
    double hottest_k = 0.0;
    std::string where;
    const HotSurfaces surfaces = hot_surfaces(job.view.written, job.view.resolved, job.solution);
    for (const HotSurface& surface : surfaces.parts) {
        const Piece* piece = piece_of(job, surface.part);
        if (piece == nullptr || !piece->is_single() || !piece->has_length()
            || piece->wall->inner_material.find("stainless") != std::string::npos
            || piece->wall->inner_material.find("galvan") != std::string::npos) {
            continue;
        }
        if (surface.surface_k > hottest_k) {
            hottest_k = surface.surface_k;
            where = job.view.place_of(*piece);
        }
    }
    if (hottest_k > 0.0) {
        // A margin of 25 K, then up to the next step: no estimate is better. Judgement.
        constexpr double margin_k = 25.0;
        constexpr double us_zero_k = 459.67 / 1.8; // 0 degF
        const bool us = job.view.resolved.units == UnitSystem::us;
        const double step_k = us ? 50.0 / 1.8 : 25.0; // 50 degF
        const double zero_k = us ? us_zero_k : constants::celsius_zero_k;
        const double rated_k =
            zero_k + step_k * std::ceil((hottest_k + margin_k - zero_k) / step_k);
        add(job,
            {.what = "stove paint rated at least " + job.view.show(rated_k, Kind::temperature),
             .where = "single-wall pipe",
             .why = "its surface reaches " + job.view.show(hottest_k, Kind::temperature) + " at "
                    + where + " in high fire (computed)"});
    }
}

/// A magnet holds on bare steel only, and what lies outside a second wall tells nothing of the gas.
/// It stands where pipe of the room is 18 in along, or as far along as that pipe goes.
void thermometer(const Job& job) {
    constexpr double along_m = 18.0 * constants::inch_m;
    if (!job.thermometer) {
        return;
    }
    const Piece* at = nullptr;
    double before_m = 0.0;
    double from_m = 0.0; // where that straight begins
    for (const Piece& piece : job.view.pieces) {
        if (!piece.has_length()) {
            continue;
        }
        const WallKind kind = piece.wall->kind;
        if (kind == WallKind::masonry || kind == WallKind::liner
            || (at != nullptr && (piece.section->zone != Zone::room || before_m >= along_m))) {
            break;
        }
        at = &piece;
        from_m = before_m;
        before_m += piece.section->length_m;
    }
    if (at == nullptr) {
        return;
    }
    const bool stainless = at->wall->inner_material.find("stainless") != std::string::npos;
    const bool magnet = at->is_single() && !stainless;
    const double length_m = at->section->length_m;
    const double reach_m =
        along_m - from_m < length_m ? along_m : from_m + 0.5 * length_m; // not on its end
    add(job,
        {.what = magnet ? "magnet thermometer" : "probe thermometer",
         .where = job.view.place_of(*at) + ", "
                  + format_quantity(reach_m, Kind::length, job.view.resolved.units, 2)
                  + " along the pipe from the heater",
         .why = magnet ? "asked for; it reads the surface of the pipe"
                       : "asked for; through a hole into the gas, since a magnet reads nothing "
                         "here",
         .source = std::string{trade_practice}});
}

} // namespace

void small_lines(const Job& job) {
    adapters(job);
    fasteners(job);
    level_supports(job);
    chimney_supports(job);
    liner_extras(job);
    passages(job);
    cleanouts(job);
    slip_joints(job);
    paint(job);
    thermometer(job);
}

} // namespace fluewright::parts
