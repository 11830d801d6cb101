#include "check_parts.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/report/report_improve.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "io/text/words.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {
namespace {

constexpr Indent deeper{.first = 5, .rest = 7};

class Page {
public:
    Page(const Improvement& made, const Style& style) : made_(made), style_(style) {}

    std::string text() {
        out_ = paragraph(made_.sentence, flush_left, style_.width);
        if (!made_.reason.empty()) {
            out_ += paragraph(made_.reason, flush_left, style_.width);
        }
        const std::string& title = made_.present.installation.title;
        if (!title.empty()) {
            out_ += paragraph("Installation: " + title, flush_left, style_.width);
        }
        if (made_.outcome == Improvement::Outcome::leave_alone) {
            leave_alone();
            return std::move(out_);
        }
        heading("The run now");
        out_ += paragraph(made_.present.sentence, hung_in, style_.width);
        for (const HarmVerdict& verdict : made_.present.verdict.harms) {
            if (verdict.counts && verdict.outcome == HarmOutcome::falls_short) {
                out_ += paragraph(verdict.sentence, hung_in, style_.width);
            }
        }
        if (!made_.plans.empty()) {
            changes();
            states();
        }
        closing();
        return std::move(out_);
    }

private:
    void heading(std::string_view words) { out_ += report::heading(words, style_); }

    void line(std::string_view words, Indent indent) {
        out_ += paragraph(words, indent, style_.width);
    }

    void leave_alone() {
        const auto& findings = made_.present.findings;
        const auto worth = std::count_if(findings.begin(), findings.end(), [](const Finding& f) {
            return f.severity != Severity::note;
        });
        if (worth > 0) {
            line(fmt::format("{} still {} to look at: `fluewright check` lists {}.",
                             worth == 1 ? "One finding is" : fmt::format("{} findings are", worth),
                             "there",
                             worth == 1 ? "it" : "them"),
                 flush_left);
        }
    }

    [[nodiscard]] std::string outcome_words(const Plan& plan) const {
        const Case& c = plan.resolved;
        const StateResult& state = plan.score.states[plan.score.limiting];
        const StateVerdict& verdict = plan.score.verdicts[plan.score.limiting];
        if (made_.goal == Goal::less_draft && plan.score.passes && !plan.cures) {
            return "not enough: draft still up to "
                   + format_quantity((1.0 + plan.score.greatest_over)
                                         * c.appliance.draft_greatest_pa,
                                     Kind::pressure,
                                     style_.units);
        }
        if (plan.score.passes && !plan.cures && !plan.against.empty()) {
            return "not enough; not cured by this: " + titles_of(plan.against);
        }
        const std::string spare =
            verdict.kind == Kind::pressure && !has_figures(state)
                ? std::string{in_place_of_figures(state)}
            : verdict.kind == Kind::pressure
                ? report::signed_quantity(verdict.spare, Kind::pressure, style_)
                : opening_words(c, state);
        const std::string left =
            plan.against.empty() ? "" : "; not cured by this: " + titles_of(plan.against);
        return fmt::format("{}: {} in {}{}",
                           !plan.cures              ? "not enough"
                           : plan.short_of_wanted   ? "not all of it"
                           : !left.empty()          ? "betters"
                           : is_barely_enough(plan) ? "just cures"
                                                    : "cures",
                           spare,
                           state_name(c, state),
                           plan.cures ? left : "");
    }

    [[nodiscard]] std::string door_words(const StateResult& state) const {
        return opening_share_words(made_.present.installation, state.door.opening_share);
    }

    void changes() {
        heading("Changes, best first");
        for (const Plan& plan : made_.plans) {
            std::string what;
            for (const Remedy& remedy : plan.steps) {
                what += fmt::format("{}{}{}",
                                    what.empty() ? "" : "; then: ",
                                    remedy.what,
                                    remedy.place.empty() ? "" : " (" + remedy.place + ")");
            }
            line(fmt::format("{}. {}{}.", plan.rank, harm_words(plan), what),
                 {.first = 2, .rest = 5});
            const std::string facts = fmt::format("{}{}; {}",
                                                  cost_words(made_, plan.cost),
                                                  plan.on_front ? " *" : "",
                                                  outcome_words(plan));
            line(facts, deeper);
            look_at(plan);
        }
        line("* No other change that was tried costs less and leaves a greater margin.", hung_in);
        line(
            made_.proven
                ? "Every two changes that cost less than the best were tried, and of two and three "
                  "those that could do it by twice what their parts do."
                : "The search stopped at its bound of work, before all was tried. Of up to three "
                  "changes together, those that cost less than "
                      + cost_words(made_, made_.tried_below) + " were tried.",
            hung_in);
    }

    /// What a plan brings that harms stands in its first line.
    [[nodiscard]] static std::string harm_words(const Plan& plan) {
        const bool danger =
            std::any_of(plan.raised.begin(), plan.raised.end(), [](const Matter* matter) {
                return matter->severity == Severity::danger;
            });
        return !plan.new_harm ? "" : danger ? "Brings a new danger: " : "Brings a new fault: ";
    }

    void titles(std::string_view before, const std::vector<const Matter*>& matters) {
        if (!matters.empty()) {
            line(std::string{before} + titles_of(matters), deeper);
        }
    }

    void look_at(const Plan& plan) {
        for (const Matter* matter : plan.raised) {
            line(fmt::format(
                     "new finding, {}: {} ({})", name(matter->severity), matter->title, matter->id),
                 deeper);
        }
        for (const std::string& words : plan.worsens) {
            line("may worsen: " + words, deeper);
        }
        std::string look;
        for (const Remedy& remedy : plan.steps) {
            const std::string words = may_worsen(remedy);
            for (const std::string_view each :
                 {std::string_view{remedy.caution},
                  words == "none known" ? std::string_view{} : std::string_view{words}}) {
                if (!each.empty()) {
                    look += (look.empty() ? "look at: " : "; ") + std::string{each};
                }
            }
        }
        if (!look.empty()) {
            line(look, deeper);
        }
        std::string cleared;
        for (const Matter* matter : plan.cleared) {
            cleared += (cleared.empty() ? "" : ", ") + std::string{matter->id};
        }
        if (!cleared.empty()) {
            line("clears: " + cleared, deeper);
        }
        titles("less bad than now: ", plan.better);
        titles("worse than now: ", plan.worse);
    }

    [[nodiscard]] TableCell cell(const StateResult& state, const StateVerdict& verdict) const {
        if (state.status == Status::no_answer) {
            return {"FAILED", Ink::bad};
        }
        if (state.status == Status::cannot_vent) {
            return {"too much !", Ink::bad};
        }
        const std::string mark = verdict.passes ? "" : " !";
        return {(verdict.kind == Kind::pressure
                     ? report::signed_number(verdict.spare, Kind::pressure, style_)
                     : door_words(state))
                    + mark,
                verdict.passes ? Ink::plain : Ink::bad};
    }

    /// An insert has conditions of its own, which are no columns of the hearth's table.
    [[nodiscard]] bool has_same_conditions(const Plan& plan) const {
        return std::equal(plan.score.states.begin(),
                          plan.score.states.end(),
                          made_.score.states.begin(),
                          made_.score.states.end(),
                          [](const StateResult& a, const StateResult& b) {
                              return a.kind == b.kind && a.weather == b.weather;
                          });
    }

    void states() {
        heading("What each does in every condition");
        const Case& c = made_.present.installation;
        for (std::size_t weather = 0; weather < c.weathers.size(); ++weather) {
            std::vector<TableColumn> columns{{.heading = c.weathers[weather].name}};
            for (const StateResult& state : made_.score.states) {
                if (state.weather == weather) {
                    const std::string_view word = condition_word(c, state.kind);
                    const std::string_view opened =
                        has_open_front(c.appliance) ? "held" : "may be opened";
                    columns.push_back(
                        {.heading = is_door_open(state.kind)
                                        ? fmt::format("{}\n{}", word, opened)
                                        : report::with_unit(fmt::format("{}\nmargin", word),
                                                            Kind::pressure,
                                                            style_),
                         .align = Align::decimal});
                }
            }
            TextTable table(std::move(columns));
            add_row(table, "now", made_.score, weather);
            for (const Plan& plan : made_.plans) {
                if (has_same_conditions(plan)) {
                    add_row(table, std::to_string(plan.rank), plan.score, weather);
                }
            }
            out_ += table.text(style_, 2);
        }
        line("! short. Margin: draft less the required draft.", hung_in);
    }

    void
    add_row(TextTable& table, std::string label, const Score& scored, std::size_t weather) const {
        std::vector<TableCell> cells{{std::move(label)}};
        for (std::size_t i = 0; i < scored.states.size(); ++i) {
            if (scored.states[i].weather == weather) {
                cells.push_back(cell(scored.states[i], scored.verdicts[i]));
            }
        }
        table.add(std::move(cells));
    }

    /// Which rules the changes were held against.
    [[nodiscard]] std::string rules_words() const {
        const catalog::RuleBody* body = made_.present.body;
        return body == nullptr || body->id == "none"
                   ? " No rules are chosen; --rules us, uk, ca, au or de checks every change "
                     "against them."
                   : fmt::format(" Each change was held against the rules of {}.", body->name);
    }

    void closing() {
        out_ += '\n';
        line(fmt::format("{} different runs were solved.{}",
                         made_.tried,
                         made_.plans.empty()
                             ? ""
                             : " `--write-plan 1 better.json` writes the file with change 1 made."),
             flush_left);
        if (made_.currency.empty()) {
            line("Effort: 1 an hour with what is there, 3 rebuilding part of the connector, 5 a "
                 "day on the roof. It is a judgement, not a price; --prices FILE ranks by your own "
                 "prices.",
                 flush_left);
        }
        if (!made_.unpriced.empty()) {
            std::string words;
            for (const std::string& title : made_.unpriced) {
                words += (words.empty() ? "" : ", ") + title;
            }
            line("Left out, as the price file has no price for them: " + words + ".", flush_left);
        }
        line("The code and the makers' instructions come first." + rules_words(), flush_left);
    }

    const Improvement& made_;
    const Style& style_;
    std::string out_;
};

} // namespace

std::string improvement_text(const Improvement& improvement, const Style& style) {
    std::string out = Page(improvement, style).text();
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
