#include "io/results/answer.hpp"

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "io/results/record.hpp"

#include <array>
#include <cmath>

namespace fluewright::results {
namespace {

struct AssumptionRow {
    std::string_view file;
    const Assumption& of;
};

struct InputRow {
    std::string_view command;
    const AnswerInput& of;
};

struct AnswerRow {
    const InputRow& input;
    const json::Value& result;
    const std::vector<AssumptionRow>& assumptions;
};

constexpr std::array<std::string_view, 1> program_words{"fluewright"};

std::span<const std::string_view> answering_commands() {
    static const std::vector<std::string_view> names = [] {
        std::vector<std::string_view> list;
        for (const CommandResult& one : command_results()) {
            list.push_back(one.command);
        }
        return list;
    }();
    return names;
}

std::optional<std::string_view> if_said(const std::string& text) {
    return text.empty() ? std::optional<std::string_view>{} : std::optional<std::string_view>{text};
}

} // namespace

template <>
const Record<AssumptionRow>& record_of<AssumptionRow>() {
    static const Record<AssumptionRow> record{
        "assumption",
        "a value the program supplied because a file did not say it",
        {{"file", "the one that could have said it", &AssumptionRow::file},
         {"pointer",
          "where the file could have said it",
          [](const AssumptionRow& a) -> decltype(auto) { return (a.of.pointer); }},
         {"what", "in words", [](const AssumptionRow& a) -> decltype(auto) { return (a.of.what); }},
         {"value",
          "in `unit`; null where a word stands for it",
          [](const AssumptionRow& a) {
              return a.of.word.empty() && std::isfinite(a.of.value) ? std::optional{a.of.value}
                                                                    : std::nullopt;
          }},
         {"unit",
          "SI unit of the value; empty for a plain number or a word",
          [](const AssumptionRow& a) {
              return a.of.word.empty() ? si_unit(a.of.kind) : std::string_view{};
          }},
         {"word", "instead of a value", [](const AssumptionRow& a) { return if_said(a.of.word); }},
         {"source",
          "id; `fluewright explain` has its page",
          [](const AssumptionRow& a) { return a.of.source; }},
         {"mark", "how the value is known", [](const AssumptionRow& a) { return a.of.mark; }}}};
    return record;
}

template <>
const Record<AnswerFile>& record_of<AnswerFile>() {
    static const Record<AnswerFile> record{
        "input_file",
        "a file that was asked about",
        {{"file", "as it was named", &AnswerFile::name},
         {"id", "of the installation", [](const AnswerFile& f) { return if_said(f.id); }},
         {"title", "of the installation", [](const AnswerFile& f) { return if_said(f.title); }}}};
    return record;
}

template <>
const Record<InputRow>& record_of<InputRow>() {
    static const Record<InputRow> record{
        "input",
        "what was asked of what",
        {{"command", Kind::number, "of the program", &InputRow::command, answering_commands()},
         {"files",
          "in the order given; none where the command asks about no file",
          [](const InputRow& i) -> decltype(auto) { return (i.of.files); }}}};
    return record;
}

template <>
const Record<AnswerRow>& record_of<AnswerRow>() {
    static const Record<AnswerRow> record{
        "answer",
        "every answer, whatever the command",
        {{"program",
          Kind::number,
          "which answers",
          [](const AnswerRow&) { return program_words.front(); },
          program_words},
         {"version", "of the program", [](const AnswerRow& a) { return a.input.of.version; }},
         {"input",
          "what was asked",
          [](const AnswerRow& a) -> decltype(auto) { return (a.input); }},
         {"result",
          "what the command has to say",
          [](const AnswerRow& a) -> decltype(auto) { return (a.result); }},
         {"assumptions",
          "what the program supplied because the files did not",
          [](const AnswerRow& a) -> decltype(auto) { return (a.assumptions); }},
         {"cautions", "to be read with every answer", [](const AnswerRow& a) {
              return cautions(a.input.of.heater());
          }}}};
    return record;
}

const RecordInfo& answer_record() {
    return record_of<AnswerRow>().info();
}

std::string answer_text(std::string_view command,
                        const AnswerInput& input,
                        const json::Value& result,
                        std::span<const AssumedOf> assumed) {
    std::vector<AssumptionRow> assumptions;
    for (const AssumedOf& one : assumed) {
        for (const Assumption& assumption : one.assumptions) {
            assumptions.push_back({one.file, assumption});
        }
    }
    const InputRow asked{command, input};
    const AnswerRow answer{asked, result, assumptions};
    return json::indented_text(record_of<AnswerRow>().json(answer)) + '\n';
}

std::string answer_text(std::string_view command,
                        const AnswerInput& input,
                        const json::Value& result,
                        std::span<const Assumption> assumptions) {
    const std::array one{AssumedOf{input.file(), assumptions}};
    return answer_text(command, input, result, one);
}

} // namespace fluewright::results
