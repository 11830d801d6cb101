#include "check_parts.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/core/quantity/one_system.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {
namespace {

constexpr Indent item{.first = 2, .rest = 5};
constexpr Indent below{.first = 5, .rest = 5};
constexpr Indent listed{.first = 5, .rest = 7};
constexpr std::size_t most_causes = 5;
constexpr std::size_t most_checks = 3;
constexpr std::size_t leading_causes = 3;
constexpr double least_told = 0.03;
constexpr double settled = 0.9; ///< probability from which a cause stands alone

std::string per_cent(double share) {
    return share > 0.995 ? "over 99 %" : format_number(100.0 * share, share < 0.1 ? 1 : 2) + " %";
}

std::string times_words(double times) {
    return times >= 100.0 ? "over 100 times" : format_number(times, 2) + " times";
}

struct DiagnosisText {
    const Diagnosis& d;
    const Style& style;

    /// Nobody lights a fire only to read a gauge once more where none may be lit.
    [[nodiscard]] bool may_be_taken_again(const SeenFact& fact) const {
        return !(d.no_fire && fact.needs_fire);
    }

    [[nodiscard]] std::string seen() const {
        if (d.seen.empty()) {
            return {};
        }
        std::string out = report::heading("What was seen", style);
        int number = 0;
        for (const SeenFact& fact : d.seen) {
            std::string line = fmt::format("{}. {}", ++number, fact.words);
            if (!fact.expected.empty()) {
                line += fact.as_written == fact.expected
                            ? fmt::format("; the first cause below gives {}", fact.expected)
                            : fmt::format("; the file as written gives {}, the first cause below "
                                          "gives {}",
                                          fact.as_written,
                                          fact.expected);
            }
            if (!fact.fits) {
                line += fact.expected.empty() ? "; the first cause below does not account for it"
                        : may_be_taken_again(fact) ? ", which does not fit: take it again"
                                                   : ", which does not fit";
            }
            out += fact.fits ? paragraph(line, item, style.width)
                             : report::inked_paragraph(line, item, Ink::warning, style);
        }
        return out;
    }

    /// Where no cause explains all, what is written or read wrong may be the fault.
    [[nodiscard]] std::string doubts() const {
        if (d.wrong_figures.empty() && d.doubtful.empty()) {
            return {};
        }
        std::string out = report::heading("A figure may be wrong; look at these first", style);
        for (const WrongFigure& figure : d.wrong_figures) {
            const auto shown = [&](double si) {
                return format_quantity(si, figure.kind, style.units);
            };
            out += paragraph(fmt::format("- `{}`: were it {} and not {}, all that was seen would "
                                         "fit with nothing hidden ({}).",
                                         figure.pointer,
                                         shown(figure.meant),
                                         shown(figure.written),
                                         figure.slip),
                             hung_in,
                             style.width);
        }
        for (const DoubtfulReading& reading : d.doubtful) {
            const SeenFact& fact = d.seen[reading.seen];
            out += paragraph(fmt::format("- {}: without it the rest fits {}.{}",
                                         fact.words,
                                         reading.explanation,
                                         may_be_taken_again(fact) ? " Take it again." : ""),
                             hung_in,
                             style.width);
        }
        return out;
    }

    [[nodiscard]] std::string bearings(const Explanation& e, bool speaks_for) const {
        std::string list;
        for (const Bearing& bearing : e.bearings) {
            if ((bearing.likelier_times > 1.0) != speaks_for) {
                continue;
            }
            const double times = speaks_for ? bearing.likelier_times : 1.0 / bearing.likelier_times;
            list += list.empty() ? "" : "; ";
            list += fmt::format("{} ({} {})",
                                d.seen[bearing.seen].words,
                                times_words(times),
                                speaks_for ? "more likely" : "less likely");
        }
        return list;
    }

    [[nodiscard]] std::string outlook_words(const Cured& cured) const {
        std::string words = fmt::format("the smallest relative margin is in {}: ", cured.state);
        if (is_door_open(cured.kind)) {
            const double share = cured.opening_share;
            words +=
                share >= 1.0 ? "smoke stays in over the whole opening"
                : share > 0.0
                    ? fmt::format("smoke stays in up to {} of the opening",
                                  opening_share_words(share, cured.opening_wanted, style.units))
                    : "smoke comes out at once";
        } else if (cured.status != Status::solved) {
            words += "the run cannot vent that burn rate";
        } else {
            const ShownApart both =
                format_apart(cured.draft_pa, cured.draft_needed_pa, Kind::pressure, style.units);
            words += fmt::format("{} of draft where {} is required, {} to spare",
                                 both.figure,
                                 both.limit,
                                 report::signed_quantity(cured.margin_pa(), Kind::pressure, style));
        }
        const bool drawn =
            cured.status == Status::solved && !is_door_open(cured.kind) && cured.margin_pa() >= 0.0;
        return words
               + (cured.works ? "."
                  : drawn     ? ". The draft is then enough, but something else that counts is not "
                                "met: see `check`."
                              : ". That still falls short.");
    }

    /// What the cure does not take away of what was seen, as a sentence after another.
    [[nodiscard]] static std::string left_words(const Cured& cured) {
        std::string list;
        for (const LeftTrouble& trouble : cured.left) {
            list += fmt::format(
                "{}{} ({})", list.empty() ? "" : "; ", trouble.words, per_cent(trouble.share));
        }
        return list.empty() ? list : " Likely even then: " + list + '.';
    }

    [[nodiscard]] std::string cause(const Explanation& e, int number) const {
        std::string title = fmt::format("{}. {}: {}", number, per_cent(e.probability), e.title);
        std::string out = number == 1 ? report::inked_paragraph(title, item, Ink::heading, style)
                                      : paragraph(title, item, style.width);
        for (const SizedCause& sized : e.causes) {
            if (sized.has_size) {
                out += paragraph("Size: " + sized.size_words, below, style.width);
            }
        }
        out += paragraph("Why: " + e.mechanism, below, style.width);
        const std::string supporting = bearings(e, true);
        const std::string opposing = bearings(e, false);
        if (!supporting.empty()) {
            out += paragraph("For it: " + supporting, listed, style.width);
        }
        if (!opposing.empty()) {
            out += paragraph("Against it: " + opposing, listed, style.width);
        }
        if (number > static_cast<int>(leading_causes)) {
            return out;
        }
        if (!e.remedy.empty()) {
            out += paragraph("Cure: " + in_one_system(e.remedy, style.units), below, style.width);
        }
        if (e.cured) {
            out += paragraph("Once cured, " + outlook_words(*e.cured) + left_words(*e.cured),
                             below,
                             style.width);
        }
        if (e.confirm != nullptr) {
            out += paragraph(fmt::format("To be sure: {}. {}",
                                         in_one_system(e.confirm->title, style.units),
                                         in_one_system(e.confirm->how, style.units)),
                             below,
                             style.width);
        }
        return out;
    }

    [[nodiscard]] std::string causes() const {
        std::string out = report::heading("Causes, most likely first", style);
        int number = 0;
        double told = 0.0;
        for (const Explanation& e : d.explanations) {
            if (number >= static_cast<int>(most_causes)
                || (number > 0 && e.probability < least_told)) {
                break;
            }
            out += cause(e, ++number);
            told += e.probability;
        }
        const double rest = 1.0 - told;
        if (rest > 0.005) {
            out += paragraph(
                fmt::format("All other causes together: {}.", per_cent(rest)), item, style.width);
        }
        return out;
    }

    [[nodiscard]] std::string better() const {
        if (!d.better) {
            return {};
        }
        std::string out =
            report::heading("What to change in the design", style)
            + paragraph("Even with nothing hidden the run falls short. The change that pays best:",
                        {.first = 2, .rest = 2},
                        style.width);
        for (const std::string& step : d.better->steps) {
            out += paragraph("- " + step + '.', hung_in, style.width);
        }
        out += paragraph("Then " + outlook_words(d.better->outcome)
                             + " `fluewright improve` ranks the others.",
                         {.first = 2, .rest = 2},
                         style.width);
        return out;
    }

    [[nodiscard]] std::string checks() const {
        if (!d.mend_first.empty()) {
            return report::heading("Next step", style)
                   + paragraph(d.mend_first, {.first = 2, .rest = 2}, style.width);
        }
        if (d.checks.empty()) {
            return {};
        }
        const Explanation& first = d.explanations.front();
        std::string out = report::heading("Next check worth making", style);
        if (first.probability >= settled && first.confirm != nullptr && !d.nothing_explains) {
            return out
                   + paragraph(fmt::format("One cause is clearly ahead. Confirm it before you "
                                           "spend money on it. {}. {}",
                                           first.confirm->title,
                                           in_one_system(first.confirm->how, style.units)),
                               {.first = 2, .rest = 2},
                               style.width);
        }
        out += check_text(d.checks.front(), style);
        out +=
            paragraph(fmt::format("Then put it into \"observed\" and run again, for instance: {}",
                                  write_observation(d.checks.front().entry, style.units)),
                      hung_in,
                      style.width);
        std::string others;
        for (std::size_t i = 1; i < std::min(d.checks.size(), most_checks + 1); ++i) {
            others += (others.empty() ? "" : "; ") + std::string{d.checks[i].check->title};
            others += d.checks[i].place.empty() ? "" : ", " + d.checks[i].place;
        }
        if (!others.empty()) {
            out += paragraph("After that: " + others + '.', hung_in, style.width);
        }
        return out;
    }

    [[nodiscard]] std::string assumptions() const {
        if (d.assumptions.empty()) {
            return {};
        }
        return paragraph(
            fmt::format("- {} values the file does not give were taken as usual; `fluewright "
                        "check` lists them. A wrong one looks like a fault in the flue.",
                        d.assumptions.size()),
            hung_in,
            style.width);
    }
};

constexpr std::string_view how =
    "- Each cause is built into the run at many sizes and solved; Bayes' rule weighs them by what "
    "was seen. The weights before anything is seen are judgement (data/causes.csv): take the "
    "percentages as a ranking. docs/diagnosis.md tells how often it was right in made-up cases.";

} // namespace

std::string urgent_text(const Diagnosis& diagnosis, const Style& style) {
    if (diagnosis.urgent.empty()) {
        return {};
    }
    std::string out = report::inked_paragraph("DO THIS FIRST", flush_left, Ink::bad, style);
    for (const std::string& line : diagnosis.urgent) {
        out += report::inked_paragraph("- " + line, hung_in, Ink::bad, style);
    }
    return out + '\n';
}

std::string shown_dangers_text(const Diagnosis& diagnosis, const Style& style) {
    return report::dangers_text(diagnosis.dangers,
                                "What the file itself shows; no fire before it is put right",
                                style)
           + report::not_decided_text(diagnosis.not_decided, style);
}

std::string check_text(const NextCheck& check, const Style& style) {
    std::string title{check.check->title};
    title += check.place.empty() ? "." : ", " + check.place + '.';
    std::string out = paragraph(fmt::format("{} {}",
                                            in_one_system(title, style.units),
                                            in_one_system(check.check->how, style.units)),
                                {.first = 2, .rest = 2},
                                style.width);
    for (const Expectation& expected : check.expected) {
        out += paragraph(
            fmt::format("if {}: {}", expected.cause, expected.words), listed, style.width);
    }
    return out;
}

std::string so_far_text(const Diagnosis& diagnosis, const Style& style) {
    std::string out = report::inked_paragraph(diagnosis.sentence, flush_left, Ink::heading, style);
    const std::size_t told = std::min(diagnosis.explanations.size(), leading_causes);
    for (std::size_t i = 0; i < told; ++i) {
        const Explanation& e = diagnosis.explanations[i];
        out += paragraph(
            fmt::format("{}: {}", per_cent(e.probability), e.title), hung_in, style.width);
    }
    return out;
}

std::string diagnosis_text(const Diagnosis& diagnosis, const DiagnosisReportOptions& options) {
    const Style& style = options.style;
    const DiagnosisText writer{diagnosis, style};
    std::string out = urgent_text(diagnosis, style);
    out += shown_dangers_text(diagnosis, style);
    out += report::inked_paragraph(diagnosis.sentence,
                                   flush_left,
                                   diagnosis.nothing_explains ? Ink::warning : Ink::heading,
                                   style);
    if (!diagnosis.title.empty()) {
        out += paragraph("Installation: " + diagnosis.title, flush_left, style.width);
    }
    out += writer.seen();
    out += writer.doubts();
    out += writer.causes();
    out += writer.checks();
    out += writer.better();
    out += report::heading("How it is found", style);
    out += paragraph(how, hung_in, style.width);
    out += writer.assumptions();
    out += report::cautions_text(options.input.heater(), style);
    return report::signed_off(std::move(out), options.input.version, options.input.file(), style);
}

} // namespace fluewright
