#include "open_case.hpp"

#include "cli/files/files.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "help.hpp"

#include <algorithm>
#include <iostream>

namespace fluewright::cli {

AnswerInput answer_input(const std::vector<AnswerFile>& files) {
    return {.version = version_number(), .files = files};
}

AnswerInput answer_input(const Written& written) {
    return answer_input(std::vector{answer_file(written.name, written.installation)});
}

AnswerInput answer_input(const OpenedCase& opened) {
    return answer_input(std::vector{answer_file(opened.name, opened.written)});
}

int tell_faults(const Context& context, Diagnostics diagnostics) {
    // High and low fire may fail at the same value for the same reason; once is enough.
    const auto same = [](const Diagnostic& a, const Diagnostic& b) {
        return a.fault.pointer == b.fault.pointer && a.fault.message == b.fault.message;
    };
    diagnostics.erase(std::unique(diagnostics.begin(), diagnostics.end(), same), diagnostics.end());
    if (context.wants_json()) {
        std::vector<AnswerFile> files;
        for (const std::string& word : context.arguments.words) {
            files.push_back({.name = word == "-" ? "<stdin>" : word, .id = {}, .title = {}});
        }
        return write_answer(context,
                            diagnostics_json(diagnostics, context.command, answer_input(files)),
                            wrong_input);
    }
    context.streams.err << diagnostics_text(diagnostics);
    return wrong_input;
}

Result<Written, int> read_written(const Context& context, std::string_view file) {
    auto input = read_input(file, context.streams.in, context.files_read);
    if (!input) {
        return Failure{refuse(context, no_access, input.error())};
    }
    auto installation = read_installation(input->text, input->name);
    if (!installation) {
        return Failure{tell_faults(context, installation.error())};
    }
    return Written{.name = std::move(input->name),
                   .text = std::move(input->text),
                   .installation = std::move(installation).value()};
}

int tell_faults(const Context& context, const Faults& faults, const Written& written) {
    return tell_faults(context, locate(faults, written.text, written.name));
}

int unless_given_up(const Context& context, bool gave_up, int status) {
    if (!gave_up) {
        return status;
    }
    context.streams.err << "fluewright: the solver found no answer for one of the states; "
                           "please report it with the input and `fluewright --version`\n";
    return program_failed;
}

Result<OpenedCase, int> open_case(const Context& context) {
    const auto written = read_written(context, context.arguments.words.front());
    if (!written) {
        return Failure{written.error()};
    }
    auto made = resolve(written->installation);
    if (!made) {
        return Failure{tell_faults(context, made.error(), *written)};
    }
    OpenedCase opened{.name = written->name,
                      .text = written->text,
                      .written = written->installation,
                      .installation = std::move(made).value()};
    if (const auto units = context.units()) {
        opened.installation.units = *units;
    }
    return opened;
}

} // namespace fluewright::cli
