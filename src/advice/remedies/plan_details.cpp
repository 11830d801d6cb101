#include "plan_details.hpp"

#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>

namespace fluewright {
namespace {

bool holds(const Findings& findings, const Matter* matter) {
    return std::any_of(findings.begin(), findings.end(), [matter](const Finding& finding) {
        return finding.matter == matter;
    });
}

void add_once(std::vector<const Matter*>& list, const Matter* matter) {
    if (std::find(list.begin(), list.end(), matter) == list.end()) {
        list.push_back(matter);
    }
}

/// The state of the present installation that answers to one of the plan's.
const StateResult* same_state(const Assessment& present, const StateResult& state) {
    const auto& states = present.solution.states;
    const auto found = std::find_if(states.begin(), states.end(), [&](const StateResult& other) {
        return other.kind == state.kind && other.weather == state.weather;
    });
    return found == states.end() ? nullptr : &*found;
}

std::string shown(const Case& c, double value, Kind kind) {
    return format_quantity(value, kind, c.units);
}

void cooler_gas(const Assessment& present, Plan& plan) {
    constexpr double worth_telling_k = 15.0;
    const StateResult* worst = nullptr;
    double most_k = worth_telling_k;
    double before_k = 0.0;
    for (const StateResult& state : plan.score.states) {
        const StateResult* before = same_state(present, state);
        const bool fire = state.kind == StateKind::high_fire || state.kind == StateKind::low_fire;
        if (before == nullptr || !fire) {
            continue;
        }
        const double drop_k = before->flow.mouth_temperature_k - state.flow.mouth_temperature_k;
        if (drop_k > most_k) {
            most_k = drop_k;
            before_k = before->flow.mouth_temperature_k;
            worst = &state;
        }
    }
    if (worst != nullptr) {
        const Case& c = present.installation;
        plan.worsens.push_back("cooler gas at the mouth, "
                               + shown(c, worst->flow.mouth_temperature_k, Kind::temperature)
                               + " instead of " + shown(c, before_k, Kind::temperature) + " ("
                               + state_name(c, *worst) + ")");
    }
}

void less_to_spare(const Assessment& present, Plan& plan) {
    constexpr double worth_telling = 0.1;
    constexpr double plenty = 0.5;
    const Case& c = present.installation;
    for (std::size_t i = 0; i < plan.score.states.size(); ++i) {
        const StateResult& state = plan.score.states[i];
        const StateResult* before = same_state(present, state);
        if (before == nullptr) {
            continue;
        }
        const StateVerdict& verdict = plan.score.verdicts[i];
        const double after = relative_spare(verdict, state);
        if (relative_spare(judge(c, *before), *before) - after < worth_telling || after > plenty) {
            continue;
        }
        const bool is_draft = verdict.kind == Kind::pressure;
        const double now = is_draft ? state.draft_pa : state.door.opening_share;
        const double then = is_draft ? before->draft_pa : before->door.opening_share;
        const Kind kind = is_draft ? Kind::pressure : Kind::fraction;
        plan.worsens.push_back((is_draft ? "less draft, " : "the door opens less far, ")
                               + shown(c, now, kind) + " instead of " + shown(c, then, kind) + " ("
                               + state_name(c, state) + ")");
    }
}

void over_draft(const Assessment& present, Plan& plan) {
    const Case& c = present.installation;
    const double greatest_pa = c.appliance.draft_greatest_pa;
    if (plan.too_strong) {
        plan.worsens.push_back(
            "draft up to "
            + shown(c, (1.0 + plan.score.greatest_over) * greatest_pa, Kind::pressure)
            + ", the appliance holds " + shown(c, greatest_pa, Kind::pressure)
            + "; a damper or a regulator then has to tame it, if its maker allows one");
    }
}

/// "2.1 Pa to spare", "1.2 Pa short", "the door opens up to 43 %".
std::string spare_words(const Case& c, const Score& scored) {
    const StateVerdict& verdict = scored.verdicts[scored.limiting];
    const StateResult& state = scored.states[scored.limiting];
    if (verdict.kind == Kind::pressure) {
        return shown(c, std::abs(verdict.spare), Kind::pressure)
               + (verdict.spare >= 0.0 ? " to spare" : " short");
    }
    return "the door may be opened "
           + format_quantity(
               std::clamp(state.door.opening_share, 0.0, 1.0), Kind::fraction, c.units, 2)
           + " of the way";
}

std::string tightest(const Case& c, const Score& scored) {
    return state_name(c, scored.states[scored.limiting]) + " (" + spare_words(c, scored) + ")";
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
           + " where the appliance holds "
           + shown(c, c.appliance.draft_greatest_pa, Kind::pressure);
}

} // namespace

void add_details(const Improvement& made, Plan& plan) {
    const Assessment& present = made.present;
    plan.resolved.units = present.installation.units;
    const Solution solution = solve(plan.resolved, Detail::stations);
    const Findings after =
        check_all(plan.changed, plan.resolved, solution, {.body = present.body->id}).findings;
    for (const Finding& finding : after) {
        if (!holds(present.findings, finding.matter)) {
            add_once(plan.raised, finding.matter);
        }
    }
    for (const Finding& finding : present.findings) {
        if (!holds(after, finding.matter)) {
            add_once(plan.cleared, finding.matter);
        }
    }
    over_draft(present, plan);
    less_to_spare(present, plan);
    cooler_gas(present, plan);
}

std::string improvement_sentence(const Improvement& made) {
    const Case& c = made.present.installation;
    using Outcome = Improvement::Outcome;
    if (made.outcome == Outcome::leave_alone) {
        return "Leave it alone: every state passes as it stands; the tightest is "
               + tightest(c, made.score) + ".";
    }
    if (made.outcome == Outcome::hopeless) {
        return made.goal == Goal::less_draft
                   ? "Nothing that was tried tames the draft, " + strongest(made) + "."
                   : "Nothing that was tried, up to three changes together, makes this run work.";
    }
    const Plan& best = made.plans.front();
    const std::string after =
        made.goal == Goal::less_draft
            ? " Then the appliance holds the draft and every state still passes; the tightest is "
            : " Then every state passes; the tightest is ";
    const std::string before =
        made.goal == Goal::less_draft
            ? "Every state passes as it stands, but the draft is too strong: " + strongest(made)
                  + ". "
            : "";
    return before + steps_words(best) + '.' + after + tightest(c, best.score) + ".";
}

std::string nothing_tames_it(const Improvement& made) {
    const Case& c = made.present.installation;
    const auto weakest =
        std::min_element(made.plans.begin(), made.plans.end(), [](const Plan& a, const Plan& b) {
            return a.score.greatest_over < b.score.greatest_over;
        });
    if (weakest == made.plans.end()) {
        return "No change that was tried lowers the draft without costing another state.";
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
    const Case& c = made.present.installation;
    std::string reason;
    const auto nearest =
        std::max_element(made.plans.begin(), made.plans.end(), [](const Plan& a, const Plan& b) {
            return a.score.least_spare < b.score.least_spare;
        });
    if (nearest == made.plans.end()) {
        reason = "No change gains anything in its limiting state, " + tightest(c, made.score) + ".";
    } else {
        reason = "The nearest is: " + steps_words(*nearest) + "; it leaves "
                 + tightest(c, nearest->score) + ".";
    }
    const double over_floor_m = c.total_rise_m() + c.appliance.outlet_height_m;
    const double usual_m = catalog::default_of("usual_chimney_height_m").value;
    if (over_floor_m < usual_m) {
        reason += " The mouth is only " + shown(c, c.total_rise_m(), Kind::length)
                  + " over the outlet and " + shown(c, over_floor_m, Kind::length)
                  + " over the floor, where " + shown(c, usual_m, Kind::length)
                  + " is the usual least: this heater needs another chimney, up past the roof.";
    }
    return reason;
}

} // namespace fluewright
