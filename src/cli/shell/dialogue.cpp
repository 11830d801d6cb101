#include "dialogue.hpp"

#include "asking.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/core/sentence.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/fields/range.hpp"
#include "io/input/json_document.hpp"

#include <algorithm>
#include <array>
#include <iostream>
#include <optional>
#include <span>

namespace fluewright::cli {
namespace {

/// A cause this likely ends the questions.
constexpr double settled = 0.9;

/// A check that narrows the causes down by less is not worth a person's time.
constexpr double least_bits = 0.03;

enum class Reaction { answer, unknown, stop };

struct Answered {
    Reaction said{};
    Reply reply{};
};

/// "yes, no, or don't know": what may be typed.
std::string allowed(const NextCheck& check, const Style& style) {
    std::string list;
    for (const std::string_view word : reply_words(check.reply)) {
        list += std::string{word} + ", ";
    }
    if (check.reply == ReplyKind::quantity) {
        list = "a reading with its unit, such as "
               + format_quantity(check.example, check.kind, style.units, 2);
        const FieldInfo* const field = field_of(check);
        list += field == nullptr ? ", " : " (" + range_in_words(*field, style.units) + "), ";
    }
    return list + "\"don't know\", or \"stop\"";
}

/// What is wrong with an answer that is none: a sentence.
std::string fault_of(const NextCheck& check, const std::string& line, const Style& style) {
    if (check.reply != ReplyKind::quantity) {
        return "\"" + json::shown(plain_answer(line)) + "\" is no answer to this.";
    }
    const auto value = parse_quantity(line, check.kind);
    if (!value) {
        const auto& error = value.error();
        return sentence_of(json::visible(error.message)
                           + (error.help.empty() ? "" : "; " + json::visible(error.help)));
    }
    const FieldInfo* const field = field_of(check);
    return field == nullptr ? "That is no answer to this."
                            : "A reading of that size cannot be right: "
                                  + format_quantity(value->value, check.kind, style.units)
                                  + " is outside " + range_in_words(*field, style.units) + '.';
}

std::optional<Answered> understood(const NextCheck& check, const std::string& line) {
    const std::string text = plain_answer(line);
    if (is_unknown_answer(text)) {
        return Answered{Reaction::unknown, {}};
    }
    if (is_stop_answer(text)) {
        return Answered{Reaction::stop, {}};
    }
    if (check.reply == ReplyKind::quantity) {
        const auto value = parse_quantity(line, check.kind);
        const FieldInfo* const field = field_of(check);
        return value && field != nullptr && is_in_range(value->value, *field)
                   ? std::optional{Answered{Reaction::answer, {.word = {}, .value = value->value}}}
                   : std::nullopt;
    }
    for (const std::string_view word : reply_words(check.reply)) {
        const bool short_form = check.reply == ReplyKind::yes_no && text == word.substr(0, 1);
        if (text == word || short_form) {
            return Answered{Reaction::answer, {.word = std::string{word}, .value = std::nullopt}};
        }
    }
    return std::nullopt;
}

/// One check put to the person, until the answer can be understood.
Answered put(const Context& context, const Style& style, const NextCheck& check) {
    std::ostream& out = context.streams.out;
    const std::string may_say = allowed(check, style);
    out << '\n' << check_text(check, style);
    for (int tries = 0; tries < most_tries; ++tries) {
        const auto line = read_answer(context, "Your answer (" + may_say + "):", style);
        if (!line) {
            return {Reaction::stop, {}};
        }
        if (const auto answer = understood(check, *line)) {
            return *answer;
        }
        tell_misfit(context, "That was not understood. " + fault_of(check, *line, style), style);
    }
    tell_misfit(context, "The questions end here.", style);
    return {Reaction::stop, {}};
}

/// What a person may say a run does, and how the file has it.
struct Complaint {
    std::string_view word;
    void (*note)(Observation& seen);
};

constexpr std::array complaints{
    Complaint{"smokes at the door", [](Observation& seen) { seen.smoke = SmokePlace::door; }},
    Complaint{"smokes at the joints", [](Observation& seen) { seen.smoke = SmokePlace::joints; }},
    Complaint{"smokes at lighting", [](Observation& seen) { seen.smoke = SmokePlace::lighting; }},
    Complaint{"smokes in wind", [](Observation& seen) { seen.smoke = SmokePlace::wind; }},
    Complaint{"burns badly", [](Observation& seen) { seen.sluggish = true; }},
    Complaint{"roars", [](Observation& seen) { seen.roaring = true; }},
    Complaint{"drips", [](Observation& seen) { seen.drips = true; }},
    Complaint{"smells when cold", [](Observation& seen) { seen.smell_when_idle = true; }}};

constexpr std::array since_when{
    Complaint{"over weeks", [](Observation& seen) { seen.worse = TroubleCourse::over_weeks; }},
    Complaint{"overnight", [](Observation& seen) { seen.worse = TroubleCourse::overnight; }},
    Complaint{"steady", [](Observation& seen) { seen.worse = TroubleCourse::steady; }}};

constexpr std::array alarm_heard{Complaint{"yes", [](Observation& seen) { seen.co_alarm = true; }},
                                 Complaint{"no", [](Observation& seen) { seen.co_alarm = false; }}};

/// A question with a list of answers; returns whether the person wants to go on.
bool put_open(const Context& context,
              const Style& style,
              std::string_view question,
              std::span<const Complaint> answers,
              Diagnoser& diagnoser) {
    std::string may_say;
    for (const Complaint& each : answers) {
        may_say += std::string{each.word} + ", ";
    }
    may_say += R"("don't know", or "stop")";
    context.streams.out << '\n' << paragraph(question, {.first = 2, .rest = 2}, style.width);
    for (int tries = 0; tries < most_tries; ++tries) {
        const auto line = read_answer(context, "Your answer (" + may_say + "):", style);
        const std::string text = line ? plain_answer(*line) : std::string{};
        if (!line || is_stop_answer(text)) {
            return false;
        }
        if (is_unknown_answer(text)) {
            return true;
        }
        const auto answer =
            std::find_if(answers.begin(), answers.end(), [&](const Complaint& each) {
                return text == each.word
                       || (answers.size() == alarm_heard.size() && text == each.word.substr(0, 1));
            });
        if (answer != answers.end()) {
            Observation seen;
            answer->note(seen);
            diagnoser.see(seen);
            return true;
        }
        tell_misfit(context,
                    "That was not understood. \"" + json::shown(text) + "\" is no answer to this.",
                    style);
    }
    return false;
}

/// Where the file tells nothing of what was seen: whether anybody is in danger, what it does, and
/// since when.
bool ask_what_it_does(const Context& context, const Style& style, Diagnoser& diagnoser) {
    if (!put_open(context,
                  style,
                  "Has a carbon monoxide alarm sounded, or had anybody a headache or felt sick "
                  "while it burned?",
                  alarm_heard,
                  diagnoser)) {
        return false;
    }
    if (alarm_has_sounded(diagnoser.installation().observed)) {
        context.streams.out << '\n' << urgent_text(diagnoser.diagnose(), style);
    }
    return put_open(context, style, "What does it do?", complaints, diagnoser)
           && put_open(context,
                       style,
                       "Since when? Did it build up over weeks, come overnight, or was it always "
                       "so?",
                       since_when,
                       diagnoser);
}

bool is_settled(const Diagnosis& diagnosis) {
    return !diagnosis.seen.empty()
           && (diagnosis.explanations.front().probability >= settled
               || !diagnosis.mend_first.empty())
           && !diagnosis.nothing_explains;
}

const NextCheck* worth_making(const Diagnosis& diagnosis) {
    const auto check = std::find_if(diagnosis.checks.begin(),
                                    diagnosis.checks.end(),
                                    [](const NextCheck& c) { return c.bits >= least_bits; });
    return check == diagnosis.checks.end() ? nullptr : &*check;
}

} // namespace

Diagnosis ask(const Context& context, const Style& style, Diagnoser& diagnoser) {
    std::ostream& out = context.streams.out;
    const bool goes_on =
        !diagnoser.installation().observed.empty() || ask_what_it_does(context, style, diagnoser);
    Diagnosis diagnosis = diagnoser.diagnose();
    if (!goes_on) {
        out << "\nThe whole answer so far:\n\n";
        return diagnosis;
    }
    out << urgent_text(diagnosis, style) << shown_dangers_text(diagnosis, style);
    std::vector<std::string> urgent = diagnosis.urgent;
    while (true) {
        if (diagnosis.urgent != urgent) {
            out << urgent_text(diagnosis, style);
            urgent = diagnosis.urgent;
        }
        out << so_far_text(diagnosis, style);
        const NextCheck* check = worth_making(diagnosis);
        if (is_settled(diagnosis) || check == nullptr) {
            out << '\n'
                << (is_settled(diagnosis) ? "That is clear enough. "
                                          : "No check is left that would tell more. ")
                << "The whole answer:\n\n";
            return diagnosis;
        }
        const Answered answered = put(context, style, *check);
        if (answered.said == Reaction::stop) {
            out << "\nThe whole answer so far:\n\n";
            return diagnosis;
        }
        if (answered.said == Reaction::unknown || !diagnoser.answer(*check, answered.reply)) {
            diagnoser.skip(*check);
        }
        out << '\n';
        diagnosis = diagnoser.diagnose();
    }
}

} // namespace fluewright::cli
