#include "trade_rows.hpp"

#include "finding_rows.hpp"

#include <array>

namespace fluewright::results {
namespace {

constexpr std::array<std::string_view, 3> matings{"good", "points up", "never"};
constexpr std::array<std::string_view, 3> risks{"low", "raised", "high"};
constexpr std::string_view part_number_meaning = "number of the part in the file, from 1";

} // namespace

template <>
const Record<EndFacts>& record_of<EndFacts>() {
    static const Record<EndFacts> record{
        "pipe_end",
        "what one side brings to a joint",
        {{"end", "how it is made", &EndFacts::end},
         {"assumed", "the file does not say", &EndFacts::assumed},
         {"diameter",
          Kind::length,
          "inside",
          [](const EndFacts& e) { return if_finite(e.diameter_m); }},
         {"rectangular", "not round", &EndFacts::rectangular}}};
    return record;
}

template <>
const Record<fluewright::Joint>& record_of<fluewright::Joint>() {
    using fluewright::Joint;
    static const Record<Joint> record{
        "joint",
        "where two parts meet: whether their ends go together",
        {{"place", "in words", &Joint::place},
         {"below",
          "number of the part below, from 1; null for the outlet",
          [](const Joint& j) { return part_number(j.below); }},
         {"above", "number of the part above", [](const Joint& j) { return part_number(j.above); }},
         {"lower_end", "chimney end of the part below", &Joint::lower},
         {"upper_end", "heater end of the part above", &Joint::upper},
         {"mating",
          Kind::number,
          "whether they go together with liquid staying inside",
          [](const Joint& j) { return matings[static_cast<std::size_t>(j.fit.mating)]; },
          matings},
         {"same_size", "bore of the two", [](const Joint& j) { return j.fit.bore == Bore::same; }},
         {"turn_round",
          "parts here that lie upside down",
          [](const Joint& j) { return unless_empty(j.turn_round); }},
         {"adapter", "what to put between once they are turned", [](const Joint& j) {
              return unless_empty(j.turned.adapter);
          }}}};
    return record;
}

template <>
const Record<HotSurface>& record_of<HotSurface>() {
    static const Record<HotSurface> record{
        "hot_surface",
        "a part at high fire, in the weather that makes it hottest",
        {{"part", part_number_meaning, [](const HotSurface& h) { return part_number(h.part); }},
         {"place", "in words", &HotSurface::place},
         {"surface", Kind::temperature, "of its outer face", &HotSurface::surface_k},
         {"rating", Kind::temperature, "of paint or zinc", &HotSurface::rating_k},
         {"rating_of", "what is rated so", &HotSurface::rating_of},
         {"rating_assumed", "the file does not say", &HotSurface::rating_assumed},
         {"over_rating", "hotter than that", [](const HotSurface& h) { return h.over_rating(); }},
         {"distance_to_wall", Kind::length, "to combustibles", &HotSurface::distance_m},
         {"wall", Kind::temperature, "estimate of the combustible face", &HotSurface::wall_k},
         {"bare_wall", Kind::temperature, "the same without its shield", &HotSurface::bare_wall_k},
         {"shielded", "there is a shield", &HotSurface::shielded}}};
    return record;
}

template <>
const Record<HotSurfaces>& record_of<HotSurfaces>() {
    static const Record<HotSurfaces> record{"hot_surfaces",
                                            "how hot the pipe is, and what is next to it",
                                            {{"wall_limit",
                                              Kind::temperature,
                                              "combustible surface beside a heater at rated output",
                                              &HotSurfaces::wall_limit_k},
                                             {"parts", "in flow order", &HotSurfaces::parts}}};
    return record;
}

template <>
const Record<HeatLoss>& record_of<HeatLoss>() {
    static const Record<HeatLoss> record{
        "heat_loss",
        "what a part of the building loses",
        {{"name", "of the part", &HeatLoss::name},
         {"area", Kind::area, "of the part", &HeatLoss::area_m2},
         {"u_value", Kind::transmittance, "heat through it", &HeatLoss::u_value_w_m2k},
         {"loss", Kind::power, "on a cold day", &HeatLoss::loss_w},
         {"source", "of a U value out of the catalog", &HeatLoss::source}}};
    return record;
}

template <>
const Record<HeatDemand>& record_of<HeatDemand>() {
    using Demand = HeatDemand;
    static constexpr auto known = [](auto member) {
        return [member](const Demand& d) {
            return d.missing.empty() ? if_finite(d.*member) : std::optional<double>{};
        };
    };
    static const Record<Demand> record{
        "heat_demand",
        "what the building needs on a cold day, and whether heater and flue are enough for it; its "
        "figures are null where a key is missing",
        {{"missing", "keys without which nothing was computed", &Demand::missing},
         {"indoor_temperature", Kind::temperature, "in the building", known(&Demand::indoor_k)},
         {"outdoor_temperature", Kind::temperature, "of the cold day", known(&Demand::outdoor_k)},
         {"parts", "greatest loss first", &Demand::parts},
         {"ventilation", Kind::power, "lost with the air", known(&Demand::ventilation_w)},
         {"total", Kind::power, "of parts and air", known(&Demand::total_w)},
         {"with_reserve",
          Kind::power,
          "and a share for warming up",
          known(&Demand::with_reserve_w)},
         {"heater_output", Kind::power, "at high fire", known(&Demand::heater_output_w)},
         {"burn_rate", Kind::mass_rate, "that gives the total", known(&Demand::burn_rate_kg_s)},
         {"capacity",
          Kind::mass_rate,
          "what the flue carries in the worst weather",
          known(&Demand::capacity_kg_s)},
         {"load", Kind::mass, "of the firebox", known(&Demand::load_kg)},
         {"load_burn_rate",
          Kind::mass_rate,
          "that of the total, held between low and high fire",
          known(&Demand::load_rate_kg_s)},
         {"load_hours", "how long a load lasts at that rate [h]", known(&Demand::load_hours)},
         {"heater_carries", "the heater gives the total", &Demand::heater_carries},
         {"flue_carries", "the flue takes the gas of the total", &Demand::flue_carries},
         {"throttled", "the demand lies under low fire", &Demand::throttled},
         {"assumed", "sentences", &Demand::assumed},
         {"left_out", "sentences", &Demand::left_out}}};
    return record;
}

template <>
const Record<PartDeposit>& record_of<PartDeposit>() {
    static const Record<PartDeposit> record{
        "part_deposit",
        "where deposit will settle",
        {{"part", part_number_meaning, [](const PartDeposit& p) { return part_number(p.part); }},
         {"place", "in words", &PartDeposit::place},
         {"risk", Kind::number, "of deposit", [](const PartDeposit& p) { return p.risk; }, risks},
         {"reason", "for that", &PartDeposit::reason},
         {"inner_wall_low_fire",
          Kind::temperature,
          "coldest, in the worst weather",
          [](const PartDeposit& p) { return if_finite(p.coldest_low_fire_k); }},
         {"inner_wall_high_fire",
          Kind::temperature,
          "coldest, in the worst weather",
          [](const PartDeposit& p) { return if_finite(p.coldest_high_fire_k); }}}};
    return record;
}

template <>
const Record<Maintenance>& record_of<Maintenance>() {
    static const Record<Maintenance> record{
        "upkeep",
        "where deposit will settle, where to look first and how often to sweep",
        {{"deposit_risk",
          Kind::number,
          "the worst of the parts",
          [](const Maintenance& m) { return m.risk; },
          risks},
         {"parts", "in flow order", &Maintenance::parts},
         {"look_first", "places", &Maintenance::look_first},
         {"sweep_months_from",
          "months between sweepings, the nearer end, until a look has shown better",
          [](const Maintenance& m) { return m.sweep.from_months; }},
         {"sweep_months_to",
          "the farther end",
          [](const Maintenance& m) { return m.sweep.to_months; }},
         {"sweep", "the same in words", [](const Maintenance& m) { return m.sweep.words; }},
         {"sweep_source", "id", [](const Maintenance& m) { return m.sweep.source; }},
         {"sweep_at_deposit",
          Kind::length,
          "deposit that calls for sweeping",
          &Maintenance::clean_at_m},
         {"no_fire_at_deposit",
          Kind::length,
          "deposit with which no fire is to be lit",
          &Maintenance::no_fire_at_m},
         {"deposit_source", "id", &Maintenance::thickness_source},
         {"disagreement", "what the studies do not agree on", &Maintenance::disagreement}}};
    return record;
}

} // namespace fluewright::results
