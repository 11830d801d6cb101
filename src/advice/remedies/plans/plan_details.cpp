#include "plan_details.hpp"

#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/trial/difference.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/core/quantity/money.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "plan_judging.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

std::string shown(const Case& c, double value, Kind kind) {
    return format_quantity(value, kind, c.units);
}

void cooler_gas(const Assessment& present,
                const Assessment& then,
                const Difference& made,
                Plan& plan) {
    constexpr double worth_telling_k = 15.0;
    const StateResult* worst = nullptr;
    double most_k = worth_telling_k;
    double before_k = 0.0;
    for (const StateChange& change : made.states) {
        const StateResult& state = then.solution.states[change.after];
        const double now_k = present.solution.states[change.before].flow.top_temperature_k;
        const double drop_k = now_k - state.flow.top_temperature_k;
        if (is_held_fire(state.kind) && drop_k > most_k) {
            most_k = drop_k;
            before_k = now_k;
            worst = &state;
        }
    }
    if (worst != nullptr) {
        const Case& c = present.installation;
        plan.worsens.push_back("cooler gas at the chimney top, "
                               + shown(c, worst->flow.top_temperature_k, Kind::temperature)
                               + " instead of " + shown(c, before_k, Kind::temperature) + " ("
                               + state_name(c, *worst) + ")");
    }
}

void less_to_spare(const Assessment& present,
                   const Assessment& then,
                   const Difference& made,
                   Plan& plan) {
    constexpr double worth_telling = 0.1;
    constexpr double plenty = 0.5;
    const Case& c = present.installation;
    for (const StateChange& change : made.states) {
        const StateVerdict& verdict = then.verdicts[change.after];
        const bool worth = change.spare_before - change.spare_after >= worth_telling
                           && change.spare_after <= plenty;
        if (!verdict.counts || !worth) {
            continue;
        }
        const StateResult& state = then.solution.states[change.after];
        const StateResult& before = present.solution.states[change.before];
        const bool is_draft = verdict.kind == Kind::pressure;
        const double after = is_draft ? state.draft_pa : state.door.opening_share;
        const double now = is_draft ? before.draft_pa : before.door.opening_share;
        const Kind kind = is_draft ? Kind::pressure : Kind::fraction;
        if (is_draft && !(has_figures(state) && has_figures(before))) {
            if (!has_figures(state)) {
                plan.worsens.push_back(std::string{in_place_of_figures(state)} + " ("
                                       + state_name(c, state) + ")");
            }
            continue;
        }
        ShownApart both = format_apart(after, now, kind, c.units);
        if (const std::string opened = opening_share_words(c, after);
            !is_draft && opened != opening_share_words(c, now)) {
            both = {.figure = opened, .limit = opening_share_words(c, now)};
        }
        plan.worsens.push_back((is_draft                      ? "less draft, "
                                : has_open_front(c.appliance) ? "less air through the opening, "
                                                              : "the door opens less far, ")
                               + both.figure + " instead of " + both.limit + " ("
                               + state_name(c, state) + ")");
    }
}

/// A plan may set another heater in its place, with conditions and limits of its own.
void over_draft(Plan& plan) {
    const Case& c = plan.resolved;
    const double greatest_pa = c.appliance.draft_greatest_pa;
    if (plan.too_strong) {
        plan.worsens.push_back(
            "draft up to "
            + shown(c, (1.0 + plan.score.greatest_over) * greatest_pa, Kind::pressure)
            + ", the appliance allows at most " + shown(c, greatest_pa, Kind::pressure)
            + ": fit a damper or a regulator then, if its maker allows one");
    }
}

/// "2.1 Pa to spare", "1.2 Pa short", "the door opens up to 43 %".
std::string spare_words(const Case& c, const Score& scored) {
    const StateVerdict& verdict = scored.verdicts[scored.limiting];
    const StateResult& state = scored.states[scored.limiting];
    if (verdict.kind == Kind::pressure && !has_figures(state)) {
        return std::string{in_place_of_figures(state)};
    }
    if (verdict.kind == Kind::pressure) {
        return shown(c, std::abs(verdict.spare), Kind::pressure)
               + (verdict.spare >= 0.0 ? " to spare" : " short");
    }
    return opening_words(c, state);
}

std::string tightest(const Case& c, const Score& scored) {
    return state_name(c, scored.states[scored.limiting]) + " (" + spare_words(c, scored) + ")";
}

/// The same of a plan, in the units of the present run.
std::string tightest(const Improvement& made, const Plan& plan) {
    Case then = plan.resolved;
    then.units = made.present.installation.units;
    return tightest(then, plan.score);
}

std::string steps_words(const Plan& plan) {
    std::string words;
    for (std::size_t i = 0; i < plan.steps.size(); ++i) {
        std::string what = plan.steps[i].what;
        if (i > 0 && !what.empty()) {
            what.front() = static_cast<char>(what.front() - 'A' + 'a');
        }
        words += (i == 0 ? "" : i + 1 == plan.steps.size() ? ", and " : ", ") + what;
    }
    return words;
}

std::string strongest(const Improvement& made) {
    const Case& c = made.present.installation;
    return shown(
               c, (1.0 + made.score.greatest_over) * c.appliance.draft_greatest_pa, Kind::pressure)
           + " where the appliance allows "
           + shown(c, c.appliance.draft_greatest_pa, Kind::pressure);
}

/// What no change to the run takes away is done first, by hand.
std::string stuck_words(const Improvement& made) {
    const auto& findings = made.present.findings;
    const auto worst = std::find_if(findings.begin(), findings.end(), [&](const Finding& finding) {
        return finding.matter == made.stuck.front();
    });
    const std::string_view remedy =
        worst == findings.end() ? made.stuck.front()->remedy : worst->what_to_do();
    return "First, these remain with every change that was tried: " + titles_of(made.stuck) + ". "
           + std::string{remedy};
}

/// What the changes can do where something is to be done by hand first.
std::string beside_that(const Improvement& made) {
    const Plan* best = &made.plans.front();
    const std::string titles = titles_of(best->cleared);
    return "Beside that: " + steps_words(*best) + (titles.empty() ? "" : "; that clears: " + titles)
           + ". The smallest relative margin is then in " + tightest(made, *best) + ".";
}

/// After the best plan: what holds the draft where it has become too strong.
std::string held_by(const Improvement& made, const Plan& best) {
    if (!best.too_strong) {
        return {};
    }
    const Case& c = best.resolved;
    const double greatest_pa = c.appliance.draft_greatest_pa;
    const auto holding = std::find_if(made.plans.begin(), made.plans.end(), [](const Plan& plan) {
        return plan.cures && !plan.too_strong
               && std::any_of(plan.steps.begin(), plan.steps.end(), holds_the_draft);
    });
    return " The draft is then up to "
           + shown(c, (1.0 + best.score.greatest_over) * greatest_pa, Kind::pressure)
           + " where the appliance allows " + shown(c, greatest_pa, Kind::pressure)
           + (holding == made.plans.end()
                  ? "."
                  : ": change " + std::to_string(holding->rank) + " holds it, too.");
}

/// Wood that is too wet is the first thing to change, whatever is built.
std::string wet_wood_first(const Improvement& made, const Plan& best) {
    const auto& findings = made.present.findings;
    const auto wet = std::find_if(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.matter->id == "fuel-too-wet";
    });
    const bool cleared =
        wet == findings.end()
        || std::find(best.cleared.begin(), best.cleared.end(), wet->matter) != best.cleared.end();
    return cleared ? std::string{}
                   : " The wood is too wet, whatever is built: " + std::string{wet->what_to_do()};
}

std::string answer_of(const Improvement& made) {
    const Case& c = made.present.installation;
    using Outcome = Improvement::Outcome;
    if (made.outcome == Outcome::leave_alone) {
        const bool all_well =
            made.present.verdict.of(Harm::reloading).outcome != HarmOutcome::falls_short;
        const bool open = made.present.verdict.leaves_fire_open();
        const std::string begin = !made.trouble.empty()
                                      ? "Change nothing before it is found: in the file nothing"
                                  : all_well && !open ? "Leave it alone: nothing"
                                                      : "Nothing";
        return begin + " that counts is short; the smallest relative margin is in "
               + tightest(c, made.score) + "."
               + (all_well ? "" : " No change that was tried opens the door further.")
               + (open ? ' ' + fire_not_decided(made.present.checks, c.units) : std::string{});
    }
    if (made.over_budget) {
        const Plan& least = *made.over_budget;
        return "Nothing within the budget of " + cost_words(made, *made.budget)
               + " makes this run work. The cheapest that does: " + steps_words(least)
               + "; it costs " + cost_words(made, least.cost) + ".";
    }
    if (made.outcome == Outcome::hopeless && made.budget && made.stuck.empty()) {
        return "Nothing makes this run work, neither within the budget of "
               + cost_words(made, *made.budget) + " nor beyond it, up to three changes together.";
    }
    if (made.outcome == Outcome::hopeless && !made.stuck.empty()) {
        return stuck_words(made);
    }
    if (made.outcome == Outcome::hopeless) {
        return made.goal == Goal::less_draft
                   ? "Nothing that was tried lowers the draft enough, " + strongest(made) + "."
                   : "Nothing that was tried, up to three changes together, makes this run work.";
    }
    const Plan& best = made.plans.front();
    const std::string left =
        best.against.empty() ? "" : " Not cured by this: " + titles_of(best.against) + '.';
    const std::string after =
        best.short_of_wanted ? " That is not all of it: the smallest relative margin is then in "
        : made.goal == Goal::less_draft
            ? " The draft is then within what the appliance allows, and nothing that counts is "
              "short; the smallest relative margin is in "
            : " Nothing that counts is then short; the smallest relative margin is in ";
    const std::string before =
        made.goal == Goal::clear_upkeep
            ? "Nothing that counts is short as it is now, but not all is well: "
                  + titles_of(made.against) + ". To mend that: "
        : made.goal == Goal::less_draft
            ? "Nothing that counts is short, but the draft is too strong: " + strongest(made) + ". "
            : "";
    return before + steps_words(best) + '.' + after + tightest(made, best) + "." + left
           + held_by(made, best) + wet_wood_first(made, best)
           + (best.undecided.empty() ? "" : ' ' + best.undecided);
}

} // namespace

std::string cost_words(const Improvement& made, double cost) {
    return made.currency.empty() ? "effort " + format_number(cost)
                                 : format_money(cost, made.currency);
}

void add_details(const Improvement& made, Plan& plan) {
    const Assessment& present = made.present;
    plan.resolved.units = present.installation.units;
    plan.resolved.top_tolerance_pa = present.installation.top_tolerance_pa;
    const Assessment then = assess(plan,
                                   {.size_search = false,
                                    .words = false,
                                    .spread = false,
                                    .required = present.required,
                                    .rules = std::string{present.body->id}});
    plan.score = score_of(then);
    // What hid behind a danger of the present run comes to light where the plan takes it away.
    const CheckResults& open = present.verdict.leaves_fire_open() ? present.checks : then.checks;
    if (then.verdict.leaves_fire_open()) {
        plan.undecided = fire_not_decided(open, present.installation.units);
    }
    note_matters_against(made, then, plan);
    plan.cures = then.works() && (!clears(made.goal) || does_it(made, plan))
                 && (made.goal != Goal::less_draft || plan.score.greatest_over <= 0.0);
    plan.raised = raised_by(present, then);
    plan.cleared = gone(present.findings, then.findings);
    for (const Finding& finding : present.findings) {
        constexpr double worth_telling = 0.1;
        const double before = finding.weight;
        const std::optional<double> now = weight_of(then.findings, finding.matter);
        if (!now || std::abs(*now - before) < worth_telling * std::max(before, worth_telling)
            || weight_of(present.findings, finding.matter) != before) {
            continue;
        }
        std::vector<const Matter*>& list = *now > before ? plan.worse : plan.better;
        if (finding.severity <= Severity::warning && !is_in_the_states(*finding.matter)
            && std::find(list.begin(), list.end(), finding.matter) == list.end()) {
            list.push_back(finding.matter);
        }
    }
    const Difference change = difference(present, then);
    over_draft(plan);
    less_to_spare(present, then, change, plan);
    cooler_gas(present, then, change, plan);
}

std::string improvement_sentence(const Improvement& made) {
    return std::string{made.trouble} + answer_of(made);
}

std::string nothing_tames_it(const Improvement& made) {
    const Case& c = made.present.installation;
    const auto weakest =
        std::min_element(made.plans.begin(), made.plans.end(), [](const Plan& a, const Plan& b) {
            return a.score.greatest_over < b.score.greatest_over;
        });
    if (weakest == made.plans.end()) {
        return "No change that was tried lowers the draft without making another condition fall "
               "short.";
    }
    return "The nearest is: " + steps_words(*weakest) + "; it still leaves up to "
           + shown(c,
                   (1.0 + weakest->score.greatest_over) * c.appliance.draft_greatest_pa,
                   Kind::pressure)
           + ".";
}

std::string hopeless_reason(const Improvement& made) {
    if (made.goal == Goal::less_draft) {
        return nothing_tames_it(made);
    }
    if (made.over_budget) {
        return {};
    }
    if (!made.stuck.empty()) {
        return made.plans.empty() ? std::string{} : beside_that(made);
    }
    const Case& c = made.present.installation;
    std::string reason;
    const auto nearest =
        std::max_element(made.plans.begin(), made.plans.end(), [](const Plan& a, const Plan& b) {
            return a.trouble != b.trouble ? a.trouble > b.trouble
                                          : a.score.least_spare < b.score.least_spare;
        });
    if (nearest == made.plans.end()) {
        reason =
            "No change gains anything in the limiting condition, " + tightest(c, made.score) + ".";
    } else {
        reason = "The nearest is: " + steps_words(*nearest) + "; it leaves "
                 + tightest(made, *nearest) + ".";
    }
    const double over_floor_m = c.total_rise_m() + c.appliance.outlet_height_m;
    const double usual_m = catalog::default_of(DefaultId::usual_chimney_height_m).value;
    // Where changes were left out, another chimney may not be needed.
    if (made.proven && !made.limited && over_floor_m < usual_m && is_fed_by_hand(c.appliance)) {
        reason += " The chimney top is only " + shown(c, c.total_rise_m(), Kind::length)
                  + " above the outlet and " + shown(c, over_floor_m, Kind::length)
                  + " above the floor, where " + shown(c, usual_m, Kind::length)
                  + " is the usual least: this heater needs another chimney, up past the roof.";
    }
    return reason;
}

} // namespace fluewright
