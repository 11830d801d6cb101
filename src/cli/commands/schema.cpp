#include "fluewright/io/reference/schema.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"

#include <array>

namespace fluewright::cli {
namespace {

int run_schema(const Context& context) {
    const bool of_result = context.arguments.value(option::schema_of) == "result";
    return write_answer(context, of_result ? result_schema() : input_schema(), all_pass);
}

constexpr std::array<const OptionInfo*, 2> schema_options{&option::schema_of, &option::output};

} // namespace

extern const Command schema_command;
const Command schema_command{
    .name = "schema",
    .summary = "the JSON Schema of the input file or of the answers",
    .about = "Prints the JSON Schema (draft 2020-12) of the input file. An editor that knows it "
             "completes keys and marks wrong ones while you type. With --of result it "
             "prints that of every answer in JSON and of a line of batch.",
    .word = {},
    .options = schema_options,
    .example = "fluewright schema --output fluewright.schema.json",
    .run = run_schema};

} // namespace fluewright::cli
