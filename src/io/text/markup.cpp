#include "markup.hpp"

#include "io/input/json_document.hpp"

namespace fluewright {

std::string markup(std::string_view text) {
    std::string out;
    for (const char c : json::visible(text)) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        default:
            out += c;
        }
    }
    return out;
}

} // namespace fluewright
