#pragma once

#include "cli/shell/command.hpp"
#include "fluewright/core/result.hpp"

#include <cstdint>
#include <string>

namespace fluewright::cli {

/// An option whose value is a whole number.
struct CountOption {
    const OptionInfo& option;
    std::uint64_t least;
    std::uint64_t most;
    std::uint64_t usual; ///< where the option is not given
};

/// A whole number as it was typed, within the bounds of the option. The failure is the sentence to
/// print.
[[nodiscard]] Result<std::uint64_t, std::string> read_whole(std::string_view typed,
                                                            const CountOption& info);

/// The same of the value of the option itself.
[[nodiscard]] Result<std::uint64_t, std::string> read_count(const Context& context,
                                                            const CountOption& info);

/// The value of --seed: 1 where it is not given.
[[nodiscard]] Result<std::uint64_t, std::string> read_seed(const Context& context);

/// The value of --jobs: all cores where it is not given.
[[nodiscard]] Result<unsigned, std::string> read_jobs(const Context& context);

} // namespace fluewright::cli
