#include "require_option.hpp"

namespace fluewright::cli {

Result<Required, std::string> required_of(const Context& context) {
    if (!context.arguments.has(option::require)) {
        return Required{};
    }
    Result<Required, std::string> read = read_required(context.arguments.value(option::require));
    if (!read) {
        return Failure{"--require: " + read.error()};
    }
    return read;
}

} // namespace fluewright::cli
