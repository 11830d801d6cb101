#pragma once

#include <map>
#include <string>
#include <string_view>

namespace fluewright::cli {

/// What the program may know of the world beside its arguments.
struct Environment {
    std::map<std::string, std::string, std::less<>> variables;
    bool input_is_terminal{false};
    bool output_is_terminal{false};
    bool error_is_terminal{false};

    /// The value of a variable; empty when it is not set.
    [[nodiscard]] std::string_view value(std::string_view name) const {
        const auto found = variables.find(name);
        return found == variables.end() ? std::string_view{} : found->second;
    }
};

} // namespace fluewright::cli
