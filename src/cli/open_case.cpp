#include "open_case.hpp"

#include "files.hpp"
#include "fluewright/io/json_reader.hpp"
#include "fluewright/model/resolve.hpp"

#include <algorithm>
#include <iostream>

namespace fluewright::cli {
namespace {

int tell(const Context& context, Diagnostics diagnostics) {
    // High and low fire may fail at the same value for the same reason; once is enough.
    const auto same = [](const Diagnostic& a, const Diagnostic& b) {
        return a.fault.pointer == b.fault.pointer && a.fault.message == b.fault.message;
    };
    diagnostics.erase(std::unique(diagnostics.begin(), diagnostics.end(), same), diagnostics.end());
    if (context.wants_json()) {
        return write_answer(
            context, diagnostics_json(diagnostics), fault_of_user, context.arguments.words.front());
    }
    context.streams.err << diagnostics_text(diagnostics);
    return fault_of_user;
}

} // namespace

Result<OpenedCase, int> open_case(const Context& context) {
    const auto input = read_input(context.arguments.words.front(), context.streams.in);
    if (!input) {
        context.streams.err << "fluewright: " << input.error() << '\n';
        return Failure{static_cast<int>(no_access)};
    }
    const auto installation = read_installation(input->text, input->name);
    if (!installation) {
        return Failure{tell(context, installation.error())};
    }
    auto made = resolve(*installation);
    if (!made) {
        return Failure{tell(context, locate(made.error(), input->text, input->name))};
    }
    OpenedCase opened{
        .name = input->name, .written = *installation, .installation = std::move(made).value()};
    if (const auto units = context.units()) {
        opened.installation.units = *units;
    }
    return opened;
}

} // namespace fluewright::cli
