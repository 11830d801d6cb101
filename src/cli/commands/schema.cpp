#include "fluewright/io/reference/schema.hpp"

#include "cli/shell/command.hpp"
#include "cli/shell/files.hpp"

#include <array>

namespace fluewright::cli {
namespace {

int run_schema(const Context& context) {
    return write_answer(context, input_schema(), all_pass);
}

constexpr std::array<const OptionInfo*, 1> schema_options{&option::output};

} // namespace

extern const Command schema_command;
const Command schema_command{
    .name = "schema",
    .summary = "the JSON Schema of the input file, for editors",
    .about = "Prints the JSON Schema (draft 2020-12) of the input file. An editor that knows it "
             "completes keys and marks wrong ones while you type.",
    .word = {},
    .options = schema_options,
    .example = "fluewright schema --output fluewright.schema.json",
    .run = run_schema};

} // namespace fluewright::cli
