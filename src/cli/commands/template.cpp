#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "fluewright/io/reference/starting_file.hpp"

#include <array>

namespace fluewright::cli {
namespace {

int run_template(const Context& context) {
    return write_answer(
        context, starting_file(context.units().value_or(UnitSystem::metric)), all_pass);
}

constexpr std::array<const OptionInfo*, 2> template_options{&option::units, &option::output};

} // namespace

extern const Command template_command;
const Command template_command{
    .name = "template",
    .summary = "a commented file to start from",
    .about = "Prints an installation with a comment on every key. Put your own figures in, leave "
             "out what you do not know, and give it to `fluewright check`.",
    .word = {},
    .options = template_options,
    .example = "fluewright template --units us --output run.json",
    .run = run_template};

} // namespace fluewright::cli
