#include "verdict_words.hpp"

#include "fluewright/advice/checks/keys_in_words.hpp"
#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/advice/verdict_reason.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

std::string count_words(std::size_t count, std::string_view one, std::string_view many) {
    return std::to_string(count) + ' ' + std::string{count == 1 ? one : many};
}

class HarmWords {
public:
    HarmWords(const Assessment& a, const HarmVerdict& v) : a_(a), v_(v) {}

    [[nodiscard]] std::string fire() const {
        if (v_.outcome == HarmOutcome::falls_short) {
            return count_words(v_.short_of, "danger", "dangers")
                   + (v_.short_of == 1 ? ": " : ", worst: ") + finding();
        }
        std::string words = "No danger found";
        if (v_.mentioned > 0) {
            words += "; " + lesser();
        }
        words += '.';
        if (a_.body != nullptr && a_.body->id == "none") {
            words += " Held against trade practice alone: no rules are chosen.";
        }
        return v_.open > 0 ? words + ' ' + open_dangers_words(a_.checks, a_.installation.units)
                           : words;
    }

    [[nodiscard]] std::string draft() const {
        if (v_.outcome == HarmOutcome::falls_short && !v_.state) {
            return "The draft is enough in every condition, but: " + finding();
        }
        std::size_t counting = 0;
        std::size_t failing = 0;
        for (const StateVerdict& verdict : a_.verdicts) {
            if (verdict.counts && verdict.harm == Harm::draft) {
                ++counting;
                failing += verdict.passes ? 0U : 1U;
            }
        }
        if (v_.outcome == HarmOutcome::cannot_tell) {
            return "The solver found no answer for a condition.";
        }
        if (failing == 0) {
            return std::string{only_just()
                                   ? "Draft is only just enough in every condition checked, "
                                     "with less to spare than a computation can promise; "
                                     "smallest relative margin "
                                   : "Draft is adequate in every condition checked; "
                                     "smallest relative margin "}
                   + margin() + (v_.mentioned > 0 ? "; " + lesser() : "") + '.';
        }
        return "Draft falls short in "
               + (failing == counting
                      ? "every condition checked"
                      : std::to_string(failing) + " of " + std::to_string(counting) + " conditions")
               + (worst_has_figures() ? "; worst " + margin() + '.' : ". " + cannot_vent());
    }

    [[nodiscard]] std::string reloading() const {
        if (v_.outcome == HarmOutcome::does_not_apply) {
            return has_open_front(a_.installation.appliance)
                       ? "An open front has no door to open."
                       : "This appliance is not loaded by hand.";
        }
        const StateResult& state = a_.solution.states[*v_.state];
        const double share = state.door.opening_share;
        const std::string wanted = shown(*v_.limit, Kind::fraction);
        const std::string where = " on embers (" + weather(state) + ')';
        if (share >= 1.0) {
            return "The door may be fully opened" + where + over_time(state.door)
                   + mixed(state.door) + '.';
        }
        if (share <= 0.0) {
            return "Smoke comes out of the door at once" + where + "; open " + wanted
                   + " is required.";
        }
        return (v_.outcome == HarmOutcome::falls_short ? "The door may be opened only "
                                                       : "The door may be opened ")
               + opened(share) + " of its width" + where + over_time(state.door) + mixed(state.door)
               + "; " + wanted + " is required.";
    }

    [[nodiscard]] std::string upkeep() const {
        if (v_.outcome == HarmOutcome::falls_short) {
            return (v_.short_of == 1 ? std::string{}
                                     : count_words(v_.short_of, "matter", "matters") + ", worst: ")
                   + finding();
        }
        return v_.mentioned > 0
                   ? "Nothing falls short; " + count_words(v_.mentioned, "note", "notes") + "."
                   : "Nothing found.";
    }

    [[nodiscard]] std::string reason() const {
        if (v_.outcome == HarmOutcome::cannot_tell) {
            const auto first = v_.check ? keys_in_words(a_.checks[*v_.check].missing) : "";
            return first.empty() ? "open, the solver found no answer"
                                 : "open, the file does not say " + first + more(v_.open);
        }
        if (v_.outcome != HarmOutcome::falls_short) {
            return {};
        }
        if (!v_.state) {
            return title_and_place() + more(v_.short_of);
        }
        const StateResult& state = a_.solution.states[*v_.state];
        const std::string where = state_name(a_.installation, state) + ", ";
        if (v_.kind == Kind::fraction) {
            return where + opening_words(a_.installation, state) + more(v_.short_of);
        }
        if (!worst_has_figures()) {
            return where + std::string{in_place_of_figures(state)} + more(v_.short_of);
        }
        const ShownApart both = apart(*v_.figure, *v_.limit, Kind::pressure);
        return where + both.figure + " where " + both.limit + " is required" + more(v_.short_of);
    }

    /// Title, place, state and figures of the worst finding.
    [[nodiscard]] std::string finding() const {
        const std::string& message = a_.findings[*v_.finding].message;
        return title_and_place() + (message.empty() ? "." : ". " + message);
    }

private:
    [[nodiscard]] std::string shown(double value, Kind kind) const {
        return format_quantity(value, kind, a_.installation.units, kind == Kind::fraction ? 2 : 3);
    }

    [[nodiscard]] std::string opened(double share) const {
        return opening_share_words(a_.installation, share);
    }

    [[nodiscard]] ShownApart apart(double figure, double limit, Kind kind) const {
        return format_apart(figure, limit, kind, a_.installation.units);
    }

    /// How long the door may stand wide open, where that was looked at.
    [[nodiscard]] std::string over_time(const DoorResult& door) const {
        if (door.moments.empty()) {
            return {};
        }
        const double wide_s = wide_open_s(door.moments);
        if (std::isinf(wide_s)) {
            return " and stay open a minute or longer";
        }
        const double at_once = door.moments.front().share_by_velocity;
        constexpr double worth_telling = 0.02;
        if (wide_s <= 0.0) {
            return at_once - door.opening_share < worth_telling
                       ? std::string{}
                       : ", " + opened(at_once) + " at once";
        }
        return ", and stay fully open for " + shown(wide_s, Kind::duration);
    }

    /// The cautious end, where it says less.
    [[nodiscard]] std::string mixed(const DoorResult& door) const {
        constexpr double wide = 0.995;
        return door.opening_share_mixed < std::min(wide, door.opening_share)
                   ? " (" + opened(door.opening_share_mixed)
                         + " if smoke and air mix in the firebox)"
                   : std::string{};
    }

    [[nodiscard]] const std::string& weather(const StateResult& state) const {
        return a_.installation.weathers[state.weather].name;
    }

    [[nodiscard]] std::string title_and_place() const {
        const Finding& f = a_.findings[*v_.finding];
        std::string words{f.matter->title};
        words += f.place.empty() ? "" : ", " + f.place;
        // Of several states the worst comes first.
        const std::string state = f.state.substr(0, f.state.find("; also "));
        return words + (state.empty() ? "" : " (" + state + ')');
    }

    /// " (and 2 more)" of a count that holds the one that was told.
    [[nodiscard]] static std::string more(std::size_t count) {
        return count > 1 ? " (and " + std::to_string(count - 1) + " more)" : std::string{};
    }

    /// What is mentioned only: "2 further findings"
    [[nodiscard]] std::string lesser() const {
        return count_words(v_.mentioned, "further finding", "further findings");
    }

    [[nodiscard]] bool worst_has_figures() const { return v_.figure.has_value(); }

    /// "Worst, high fire, mild: the run cannot vent 20 kg/h ..."
    [[nodiscard]] std::string cannot_vent() const {
        const StateResult& state = a_.solution.states[*v_.state];
        return "Worst is " + state_name(a_.installation, state) + ". "
               + cannot_vent_words(a_.installation, a_.solution.states, state);
    }

    /// "+3.2 Pa: 15.2 Pa of 12 Pa required (low fire, mild day)"
    [[nodiscard]] std::string margin() const {
        const StateResult& state = a_.solution.states[*v_.state];
        if (v_.kind == Kind::fraction) {
            return at_the_front(state);
        }
        const double spare_pa = *v_.figure - *v_.limit;
        const ShownApart both = apart(*v_.figure, *v_.limit, Kind::pressure);
        return (spare_pa > 0.0 ? "+" : "") + apart(spare_pa, 0.0, Kind::pressure).figure + ", "
               + both.figure + " where " + both.limit + " is required ("
               + state_name(a_.installation, state) + ')';
    }

    [[nodiscard]] bool only_just() const {
        constexpr double least_share = 0.05; // of what is required; judgement
        return *v_.figure - *v_.limit < least_share * std::abs(*v_.limit);
    }

    /// "+0.07 m/s, 0.31 m/s through the opening where 0.24 m/s is required, the flue 1:9.6 of it
    /// (on embers, mild day)"
    [[nodiscard]] std::string at_the_front(const StateResult& state) const {
        const Case& c = a_.installation;
        const bool embers = state.kind == StateKind::door_open_embers;
        const auto [velocity_m_s, wanted_m_s] = front_velocity(c, state);
        const double share = flue_over_opening(c);
        const ShownApart both = apart(velocity_m_s, wanted_m_s, Kind::speed);
        return (velocity_m_s > wanted_m_s ? "+" : "")
               + apart(velocity_m_s - wanted_m_s, 0.0, Kind::speed).figure
               + ", air enters the opening at " + both.figure + " where " + both.limit
               + " is required"
               + (share > 0.0 ? ", the flue 1:" + format_number(1.0 / share, 2) + " of it" : "")
               + " (" + (embers ? "embers, " : "high fire, ") + weather(state) + ')';
    }

    const Assessment& a_;
    const HarmVerdict& v_;
};

std::string lower_first(std::string_view words) {
    std::string text{words};
    if (!text.empty() && text.front() >= 'A' && text.front() <= 'Z') {
        text.front() = static_cast<char>(text.front() - 'A' + 'a');
    }
    return text;
}

} // namespace

std::string harm_sentence(const Assessment& a, const HarmVerdict& v) {
    const HarmWords words(a, v);
    switch (v.harm) {
    case Harm::fire:
        return words.fire();
    case Harm::draft:
        return words.draft();
    case Harm::reloading:
        return words.reloading();
    case Harm::upkeep:
        break;
    }
    return words.upkeep();
}

std::string first_to_do(const Assessment& a, const HarmVerdict& v) {
    if (v.outcome == HarmOutcome::falls_short && v.finding) {
        return std::string{a.findings[*v.finding].what_to_do()};
    }
    return {};
}

std::string reason_of(const Assessment& a, const HarmVerdict& v) {
    return HarmWords(a, v).reason();
}

std::string reasons_against(const Assessment& a) {
    std::string reasons;
    for (const HarmVerdict& v : a.verdict.harms) {
        const std::string reason = v.counts ? reason_of(a, v) : std::string{};
        if (!reason.empty()) {
            reasons += (reasons.empty() ? "" : "; ") + std::string{name(v.harm)} + ": " + reason;
        }
    }
    return reasons;
}

std::string headline(const Verdict& verdict) {
    std::string counted;
    std::string uncounted;
    std::string open;
    std::string open_uncounted;
    const auto add = [](std::string& list, const HarmVerdict& v) {
        list += (list.empty() ? "" : ", ") + lower_first(title(v.harm));
    };
    for (const HarmVerdict& v : verdict.harms) {
        if (v.outcome == HarmOutcome::falls_short) {
            add(v.counts ? counted : uncounted, v);
        } else if (v.outcome == HarmOutcome::cannot_tell) {
            add(v.counts ? open : open_uncounted, v);
        }
    }
    std::string text = !counted.empty() ? "This run falls short: " + counted + '.'
                       : !open.empty()
                           ? "Not decided: " + open + ". Nothing else that counts is short."
                           : std::string{"This run passes: nothing that counts is short."};
    if (!uncounted.empty()) {
        text += " Not met, but not counted: " + uncounted + '.';
    }
    if (verdict.rules_broken > 0) {
        text += " Rules, " + std::string{verdict.rules_of} + ": "
                + std::to_string(verdict.rules_broken) + " not met.";
    }
    if (!open.empty() && !counted.empty()) {
        text += " Not decided: " + open + '.';
    }
    if (!open_uncounted.empty()) {
        text += " Not decided, and not counted: " + open_uncounted + '.';
    }
    return text;
}

} // namespace fluewright
