#include "command.hpp"
#include "fluewright/core/nearest_word.hpp"

#include <algorithm>
#include <array>

namespace fluewright::cli {

extern const Command batch_command;
extern const Command check_command;
extern const Command parts_command;
extern const Command improve_command;
extern const Command size_command;
extern const Command compare_command;
extern const Command sweep_command;
extern const Command diagnose_command;
extern const Command draw_command;
extern const Command explain_command;
extern const Command catalog_command;
extern const Command report_command;
extern const Command new_command;
extern const Command template_command;
extern const Command schema_command;
extern const Command completions_command;
extern const Command manual_command;
extern const Command vary_command;
extern const Command warmup_command;

std::span<const Command* const> commands() {
    static constexpr std::array rows{&check_command,
                                     &warmup_command,
                                     &batch_command,
                                     &vary_command,
                                     &parts_command,
                                     &size_command,
                                     &improve_command,
                                     &compare_command,
                                     &sweep_command,
                                     &diagnose_command,
                                     &draw_command,
                                     &report_command,
                                     &explain_command,
                                     &catalog_command,
                                     &new_command,
                                     &template_command,
                                     &schema_command,
                                     &manual_command,
                                     &completions_command};
    return rows;
}

std::vector<const OptionInfo*> options_of(const Command& command) {
    std::vector<const OptionInfo*> rows(command.options.begin(), command.options.end());
    if (std::find(rows.begin(), rows.end(), &option::output) != rows.end()) {
        rows.push_back(&option::force);
    }
    rows.insert(rows.end(), common_options().begin(), common_options().end());
    return rows;
}

const Command* find_command(std::string_view name) {
    for (const Command* command : commands()) {
        if (command->name == name) {
            return command;
        }
    }
    return nullptr;
}

std::string nearest_command_help(std::string_view typed) {
    std::vector<std::string_view> names;
    for (const Command* command : commands()) {
        names.push_back(command->name);
    }
    if (const auto nearest = nearest_word(typed, names)) {
        return "did you mean `" + std::string{*nearest} + "`?";
    }
    return "`fluewright --help` lists the commands";
}

} // namespace fluewright::cli
