#pragma once

#include "cli/batch/batch_output.hpp"
#include "cli/shell/command.hpp"
#include "fluewright/io/batch/batch_tally.hpp"

#include <string>
#include <string_view>

namespace fluewright::cli {

/// What the options of `batch` ask for.
struct BatchWanted {
    BatchFormat format{BatchFormat::table};
    BatchColumns columns;
    std::string_view only;
    BatchAsked asked;
    bool summary{}; ///< shares and reasons at the end
    unsigned jobs{1};

    /// A page tells of single rows.
    [[nodiscard]] TallyKeeps keeps() const {
        return format == BatchFormat::html ? TallyKeeps::rows : TallyKeeps::counts;
    }
};

/// Reads the options. The failure is the sentence to print.
[[nodiscard]] Result<BatchWanted, std::string> batch_wanted_of(const Context& context);

/// Whether --only lets a row through.
[[nodiscard]] bool is_wanted(const BatchRow& row, std::string_view only);

[[nodiscard]] std::string header_of(const BatchWanted& wanted);

/// The command as far as the answer depends on it, and the version that gives it.
[[nodiscard]] std::string command_of(const BatchWanted& wanted);

/// The columns with what they mean, for --fields help.
[[nodiscard]] std::string columns_help();

} // namespace fluewright::cli
