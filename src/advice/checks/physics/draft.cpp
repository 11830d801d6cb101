#include "advice/checks/no_damper.hpp"
#include "advice/checks/subject.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/score.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "greatest_loss.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::checking {
namespace {

/// What takes most of the draft in a state, in words with its figure.
std::string of_greatest_loss(Subject& s, const StateResult& state) {
    const GreatestLoss most = greatest_loss(s, state);
    const MarchResult& flow = state.flow;
    const ApplianceCase& heater = s.resolved.appliance;
    if (state.draft_needed_pa < 0.0) {
        return "Most is lost to " + std::string{most.what} + " (" + s.show(most.pa, Kind::pressure)
               + "), where the fan can push with " + s.show(-state.draft_needed_pa, Kind::pressure)
               + ": a shorter, straighter or wider vent.";
    }
    // Where the column lifts less than is asked, no smaller loss makes up for it.
    if (most.pa < 0.25 * std::abs(state.margin_pa()) || flow.buoyancy_pa < state.draft_needed_pa) {
        return "The warm gas gives too little draft (" + s.show(flow.buoyancy_pa, Kind::pressure)
               + "): keep the gas warmer (insulate the cold part"
               + (is_fed_by_hand(heater) ? ", burn more briskly" : "") + ") or raise the top.";
    }
    return "The greatest loss: " + std::string{most.what} + ", " + s.show(most.pa, Kind::pressure)
           + (most.fitting == nullptr ? ""
                                      : " (" + s.resolved.run.label_at(most.fitting->part) + ": "
                                            + s.show(most.fitting_pa, Kind::pressure) + ")")
           + (most.pa < flow.buoyancy_pa ? " of the " : ", more than the ")
           + s.show(flow.buoyancy_pa, Kind::pressure) + " that the warm gas gives. Begin there.";
}

void short_or_strong(Subject& s, const StateResult& state) {
    const double greatest = s.resolved.appliance.draft_greatest_pa;
    if (has_open_front(s.resolved.appliance)) {
        return; // its smoke is held against its own measure, and nobody holds down a fire in the
                // open
    }
    const Where outlet{.section = nullptr, .place = "the outlet", .state = &state};
    CheckResult* f = s.hold(own("draft-short"),
                            state.margin_pa() >= 0.0,
                            {.kind = Kind::pressure,
                             .figure = state.draft_pa,
                             .limit = state.draft_needed_pa,
                             .weight = -state.margin_pa() / std::max(1.0, state.draft_needed_pa)},
                            outlet);
    if (f != nullptr && s.with_words()) {
        f->message = state.status == Status::cannot_vent
                         ? cannot_vent_words(s.resolved, s.view.states(), state)
                         : "The draft at the outlet is " + s.show(state.draft_pa, Kind::pressure)
                               + "; the appliance requires "
                               + s.show(state.draft_needed_pa, Kind::pressure) + ".";
        f->remedy = of_greatest_loss(s, state);
    }
    if (greatest <= 0.0) {
        return;
    }
    f = s.hold(own("draft-too-strong"),
               state.draft_pa <= greatest,
               {.kind = Kind::pressure,
                .figure = state.draft_pa,
                .limit = greatest,
                .weight = state.draft_pa / greatest - 1.0},
               outlet);
    if (f != nullptr && s.with_words()) {
        f->message = "The draft at the outlet is " + s.show(state.draft_pa, Kind::pressure)
                     + "; the appliance allows at most " + s.show(greatest, Kind::pressure) + ".";
        if (s.view.written.appliance.damper_allowed == Flag{false}) {
            f->remedy = where_no_damper_may_be;
        }
    }
}

/// Draft in which a burner starts: mostly that of the idle flue, as where a fire is lit.
double starting_draft_pa(Subject& s, const StateResult& cold_start) {
    const double idle_share = catalog::default_of(DefaultId::lighting_idle_share).value;
    const auto states = s.view.states();
    const auto idle = std::find_if(states.begin(), states.end(), [&](const StateResult& other) {
        return other.kind == StateKind::idle && other.weather == cold_start.weather;
    });
    const double idle_pa = idle == states.end() ? cold_start.draft_pa : idle->draft_pa;
    return idle_share * idle_pa + (1.0 - idle_share) * cold_start.draft_pa;
}

/// The hood of an appliance that carries its own: what the flue does not take comes out there,
/// while the burner runs and when it starts into a cold flue.
void hood_of_its_own(Subject& s, const StateResult& state) {
    if (s.resolved.appliance.type != ApplianceType::draft_hood
        || has_part(s.view.written.run, PartKind::draft_hood)) {
        return;
    }
    const bool at_start = state.kind == StateKind::cold_start;
    const double draft_pa = at_start ? starting_draft_pa(s, state) : state.draft_pa;
    const double needed_pa = at_start ? 0.0 : state.draft_needed_pa;
    CheckResult* f = s.hold(own("hood-spills"),
                            draft_pa >= needed_pa,
                            {.kind = Kind::pressure,
                             .figure = draft_pa,
                             .limit = needed_pa,
                             .weight = needed_pa - draft_pa},
                            {.section = nullptr, .place = "the draft hood", .state = &state});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message =
        at_start
            ? "While the flue is cold, air comes down it with " + s.show(-draft_pa, Kind::pressure)
                  + " at the hood. At every start gas comes out there until the flue is warm."
            : "The flue draws " + s.show(draft_pa, Kind::pressure) + " at the hood; "
                  + s.show(needed_pa, Kind::pressure)
                  + " is required to vent the gas. The rest spills from the hood into the room.";
}

/// "1:9.6"
std::string ratio_words(const Case& c) {
    return "1:" + format_number(1.0 / flue_over_opening(c), 2);
}

/// The mean velocity of the air through an open front, against what keeps the smoke in.
void smoke_at_front(Subject& s, const StateResult& state) {
    const double share = state.door.opening_share;
    CheckResult* f =
        s.hold(own("smoke-at-front"),
               share >= 1.0,
               {.kind = Kind::fraction, .figure = share, .limit = 1.0, .weight = 1.0 - share},
               {.section = nullptr, .place = std::string_view{"the open front"}, .state = &state});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    const Case& c = s.resolved;
    const double wanted_m_s = front_velocity(c, state).wanted_m_s;
    f->message = share <= 0.0
                     ? std::string{"No air enters the opening while the smoke stays in it."}
                     : "Air enters the opening at " + s.show(share * wanted_m_s, Kind::speed) + "; "
                           + s.show(wanted_m_s, Kind::speed) + " keeps the smoke of this fire in.";
    if (flue_over_opening(c) > 0.0) {
        f->message += " The flue has " + ratio_words(c) + " of the opening.";
    }
    const double throat_m2 = c.appliance.door.throat_m2;
    const double flue_m2 = least_flue_area_m2(c);
    if (throat_m2 > 0.0 && std::isfinite(flue_m2) && throat_m2 < flue_m2) {
        f->remedy = "Open the throat and its damper first: " + s.show(throat_m2, Kind::area)
                    + ", where the flue has " + s.show(flue_m2, Kind::area) + ".";
    }
}

void smoke_at_loading_door(Subject& s, const StateResult& state) {
    const double wanted = door_wanted(s.resolved);
    CheckResult* f = s.hold(
        own("smoke-at-door"),
        state.door.opening_share >= wanted,
        {.kind = Kind::fraction,
         .figure = state.door.opening_share,
         .limit = wanted,
         .weight = 1.0 - state.door.opening_share / wanted},
        {.section = nullptr, .place = std::string_view{"the loading door"}, .state = &state});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    f->message = state.door.opening_share <= 0.0
                     ? std::string{"Smoke comes out as soon as the door is opened."}
                     : "Smoke comes out where the door is opened further than "
                           + opening_share_words(s.resolved, state.door.opening_share)
                           + " of its width.";
}

/// What turns an idle flue that pushes down.
std::string turning_words(Subject& s, const StateResult& state) {
    const ColdStart& cold = state.cold;
    if (cold.turning_k <= 0.0 || cold.duration_s < 1.0 || !is_fed_by_hand(s.resolved.appliance)) {
        return "";
    }
    if (cold.takes_too_long()) {
        return " No warming of the flue turns it.";
    }
    return " It draws again once the air in it averages "
           + s.show(cold.turning_k, Kind::temperature) + ": at least "
           + s.show(cold.duration_s, Kind::duration) + " with "
           + s.show(s.resolved.kindling.preheat_w, Kind::power) + " of heat below it.";
}

/// By what the file says of the house: fans, no fan, or a pressure that anything may cause.
std::string_view air_words(const HouseCase& house) {
    return house.exhaust_m3_s > 0.0 ? "stop fans and let air in"
           : house.fans_may_run()   ? "let air in and stop any fan that takes it out"
                                    : "let air in";
}

/// Where the flue itself does not push down, no insulation of it helps.
std::string only_the_room(Subject& s, const StateResult& state) {
    if (state.flow.buoyancy_pa < 0.0 || state.room.pressure_pa >= 0.0) {
        return {};
    }
    const double wind_pa = s.wind_on_top_pa(state);
    if (wind_pa > 0.0) {
        return "The wind pushes down on the chimney top with " + s.show(wind_pa, Kind::pressure)
               + ", and the room is " + s.show(-state.room.pressure_pa, Kind::pressure)
               + " below outdoors. Raise the chimney top into clear wind or fit an "
                 "anti-downdraft cap, and "
               + std::string{air_words(s.resolved.house)} + ".";
    }
    return std::string{"The room, "} + s.show(-state.room.pressure_pa, Kind::pressure)
           + " below outdoors, is the only cause: " + std::string{air_words(s.resolved.house)}
           + (is_fed_by_hand(s.resolved.appliance)
                  ? ", with a window near the heater open before lighting."
                  : ".");
}

} // namespace

void draft(Subject& s) {
    for (const StateResult& state : s.view.states()) {
        if (is_held_fire(state.kind)) {
            short_or_strong(s, state);
        }
        if (is_held_fire(state.kind) || state.kind == StateKind::cold_start) {
            hood_of_its_own(s, state);
        }
        if (state.kind == StateKind::door_open_high || state.kind == StateKind::door_open_embers) {
            has_open_front(s.resolved.appliance) ? smoke_at_front(s, state)
                                                 : smoke_at_loading_door(s, state);
        }
        if (state.kind == StateKind::idle) {
            constexpr double nothing_pa = 0.05; // would be told as 0 Pa
            CheckResult* f = s.hold(own("reversed-when-idle"),
                                    state.draft_pa >= -nothing_pa,
                                    {.kind = Kind::pressure,
                                     .figure = state.draft_pa,
                                     .limit = 0.0,
                                     .weight = -state.draft_pa},
                                    {.section = nullptr, .place = "the outlet", .state = &state});
            if (f == nullptr || !s.with_words()) {
                continue;
            }
            f->remedy = only_the_room(s, state);
            f->message = "With no fire, air comes down the flue with "
                         + s.show(-state.draft_pa, Kind::pressure) + "." + turning_words(s, state);
        }
    }
}

} // namespace fluewright::checking
