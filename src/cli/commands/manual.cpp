#include "cli/reference/manual.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"

#include <array>

namespace fluewright::cli {
namespace {

int run_manual(const Context& context) {
    return write_answer(context, manual_page(), all_pass);
}

constexpr std::array<const OptionInfo*, 1> manual_options{&option::output};

} // namespace

extern const Command manual_command;
const Command manual_command{
    .name = "manual",
    .summary = "the manual page, for man",
    .about = "Prints the manual page as man reads it. An installed program has it already: man "
             "fluewright.",
    .word = {},
    .options = manual_options,
    .example = "fluewright manual --output fluewright.1",
    .run = run_manual};

} // namespace fluewright::cli
