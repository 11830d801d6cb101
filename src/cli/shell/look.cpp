#include "look.hpp"

#include <algorithm>

namespace fluewright::cli {
namespace {

bool forces(std::string_view value) {
    return !value.empty() && value != "0";
}

bool wants_color(const Arguments& arguments, const Environment& environment) {
    const std::string_view when = arguments.value(option::color);
    if (when == "always" || when == "never") {
        return when == "always";
    }
    if (!environment.value("NO_COLOR").empty() || arguments.has(option::output)) {
        return false;
    }
    if (forces(environment.value("FORCE_COLOR")) || forces(environment.value("CLICOLOR_FORCE"))) {
        return true;
    }
    return environment.output_is_terminal && environment.value("TERM") != "dumb";
}

bool names_utf8(std::string_view locale) {
    std::string lower;
    for (const char c : locale) {
        if (c != '-') {
            lower += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
    }
    return lower.find("utf8") != std::string::npos;
}

bool wants_unicode(const Environment& environment) {
    for (const std::string_view name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
        if (const std::string_view value = environment.value(name); !value.empty()) {
            return names_utf8(value);
        }
    }
    return false;
}

} // namespace

Style look(const Arguments& arguments, const Environment& environment) {
    Style style;
    style.color = wants_color(arguments, environment);
    style.unicode = wants_unicode(environment);
    return style;
}

} // namespace fluewright::cli
