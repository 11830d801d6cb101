#include "dialogue.hpp"

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/fields/range.hpp"
#include "io/input/json_document.hpp"

#include <algorithm>
#include <iostream>
#include <optional>

namespace fluewright::cli {
namespace {

/// A cause this likely ends the questions.
constexpr double settled = 0.9;

/// A check that narrows the causes down by less is not worth a person's time.
constexpr double least_bits = 0.03;

/// Whoever is not understood so often is no person, or has gone.
constexpr int most_tries = 20;

/// No answer is so long; what comes behind it is left out.
constexpr std::size_t most_answer_bytes = 1000;

/// Where a line goes on so far without an end, nobody sits behind it.
constexpr std::size_t most_line_bytes = 1U << 20U;

enum class Said { answer, unknown, stop };

struct Answered {
    Said said{};
    Reply reply{};
};

std::string plain(std::string_view line) {
    std::string text;
    for (const char c : line) {
        text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    const std::size_t first = text.find_first_not_of(" \t\r");
    const std::size_t last = text.find_last_not_of(" \t\r.");
    return first == std::string::npos || last < first ? std::string{}
                                                      : text.substr(first, last - first + 1);
}

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

/// The next line, of which no more than an answer is kept. False where there is none.
bool read_line(std::istream& in, std::string& line) {
    line.clear();
    std::size_t bytes = 0;
    for (char c = 0; in.get(c); ++bytes) {
        if (c == '\n') {
            return true;
        }
        if (bytes >= most_line_bytes) {
            return false;
        }
        if (line.size() < most_answer_bytes) {
            line += c;
        }
    }
    return bytes > 0 && in.eof();
}

std::string sentence(const std::string& message, const std::string& help) {
    std::string text = message + (help.empty() ? "" : "; " + help);
    text.front() = text.front() >= 'a' && text.front() <= 'z'
                       ? static_cast<char>(text.front() - 'a' + 'A')
                       : text.front();
    return text.back() == '?' ? text : text + '.';
}

/// What is wrong with an answer that is none: a sentence.
std::string fault_of(const NextCheck& check, const std::string& line, const Style& style) {
    if (check.reply != ReplyKind::quantity) {
        return "\"" + json::shown(plain(line)) + "\" is no answer to this.";
    }
    const auto value = parse_quantity(line, check.kind);
    if (!value) {
        return sentence(json::visible(value.error().message), json::visible(value.error().help));
    }
    const FieldInfo* const field = field_of(check);
    return field == nullptr ? "That is no answer to this."
                            : "A reading of that size cannot be right: "
                                  + format_quantity(value->value, check.kind, style.units)
                                  + " is outside " + range_in_words(*field, style.units) + '.';
}

std::optional<Answered> understood(const NextCheck& check, const std::string& line) {
    const std::string text = plain(line);
    if (text.empty() || text == "?" || text == "don't know" || text == "dont know"
        || text == "do not know" || text == "unknown") {
        return Answered{Said::unknown, {}};
    }
    if (text == "stop" || text == "quit" || text == "q") {
        return Answered{Said::stop, {}};
    }
    if (check.reply == ReplyKind::quantity) {
        const auto value = parse_quantity(line, check.kind);
        const FieldInfo* const field = field_of(check);
        return value && field != nullptr && is_in_range(value->value, *field)
                   ? std::optional{Answered{Said::answer, {.word = {}, .value = value->value}}}
                   : std::nullopt;
    }
    for (const std::string_view word : reply_words(check.reply)) {
        const bool short_form = check.reply == ReplyKind::yes_no && text == word.substr(0, 1);
        if (text == word || short_form) {
            return Answered{Said::answer, {.word = std::string{word}, .value = std::nullopt}};
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
        out << paragraph("Your answer (" + may_say + "):", {.first = 0, .rest = 2}, style.width)
            << "> " << std::flush;
        std::string line;
        if (!read_line(context.streams.in, line)) {
            out << '\n';
            return {Said::stop, {}};
        }
        if (!context.environment.input_is_terminal) {
            out << json::visible(line) << '\n';
        }
        if (const auto answer = understood(check, line)) {
            return *answer;
        }
        out << paragraph("That was not understood. " + fault_of(check, line, style),
                         {.first = 0, .rest = 0},
                         style.width);
    }
    out << paragraph("The questions end here.", {.first = 0, .rest = 0}, style.width);
    return {Said::stop, {}};
}

bool is_settled(const Diagnosis& diagnosis) {
    return !diagnosis.seen.empty() && diagnosis.explanations.front().probability >= settled
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
    Diagnosis diagnosis = diagnoser.diagnose();
    out << shown_dangers_text(diagnosis, style);
    std::vector<std::string> urgent;
    while (true) {
        if (diagnosis.urgent != urgent) {
            out << urgent_text(diagnosis, style);
            urgent = diagnosis.urgent;
        }
        out << standing_text(diagnosis, style);
        const NextCheck* check = worth_making(diagnosis);
        if (is_settled(diagnosis) || check == nullptr) {
            out << '\n'
                << (is_settled(diagnosis) ? "That is clear enough. "
                                          : "No check is left that would tell more. ")
                << "The whole answer:\n\n";
            return diagnosis;
        }
        const Answered answered = put(context, style, *check);
        if (answered.said == Said::stop) {
            out << "\nThe whole answer so far:\n\n";
            return diagnosis;
        }
        if (answered.said == Said::unknown || !diagnoser.answer(*check, answered.reply)) {
            diagnoser.skip(*check);
        }
        out << '\n';
        diagnosis = diagnoser.diagnose();
    }
}

} // namespace fluewright::cli
