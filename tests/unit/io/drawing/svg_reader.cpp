#include "svg_reader.hpp"

#include "io/input/json_document.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <utility>

namespace fluewright::picture {
namespace {

constexpr std::array<std::pair<std::string_view, char>, 5> entities{
    {{"&amp;", '&'}, {"&lt;", '<'}, {"&gt;", '>'}, {"&quot;", '"'}, {"&#39;", '\''}}};

bool is_entity(std::string_view text) {
    return std::any_of(entities.begin(), entities.end(), [text](const auto& entity) {
        return text.starts_with(entity.first);
    });
}

std::string plain(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const auto found = std::find_if(entities.begin(), entities.end(), [text](const auto& e) {
            return text.starts_with(e.first);
        });
        out += found != entities.end() ? found->second : text.front();
        text.remove_prefix(found != entities.end() ? found->first.size() : 1);
    }
    return out;
}

using Attributes = std::map<std::string, std::string, std::less<>>;

/// Attributes of what stands between < and >; a fault under the key "!".
Attributes attributes_of(std::string_view tag) {
    Attributes all;
    const std::size_t name_end = tag.find_first_of(" \n/");
    std::string_view left = name_end == std::string_view::npos ? "" : tag.substr(name_end);
    while (true) {
        const std::size_t start = left.find_first_not_of(" \n/");
        if (start == std::string_view::npos) {
            return all;
        }
        left.remove_prefix(start);
        const std::size_t equal = left.find('=');
        if (equal == std::string_view::npos || left.size() < equal + 2 || left[equal + 1] != '"') {
            all["!"] = "an attribute without a value in quotation marks";
            return all;
        }
        const std::size_t end = left.find('"', equal + 2);
        if (end == std::string_view::npos) {
            all["!"] = "an attribute that does not end";
            return all;
        }
        const std::string key{left.substr(0, equal)};
        if (all.contains(key)) {
            all["!"] = "the attribute " + key + " twice";
        }
        all[key] = left.substr(equal + 2, end - equal - 2);
        left.remove_prefix(end + 1);
    }
}

double number(const Attributes& all, std::string_view key) {
    const auto found = all.find(key);
    return found == all.end() ? 0.0 : std::strtod(found->second.c_str(), nullptr);
}

std::string text_at(const Attributes& all, std::string_view key) {
    const auto found = all.find(key);
    return found == all.end() ? std::string{} : found->second;
}

SetText set_text(const Attributes& all, std::string words) {
    const double size = number(all, "font-size");
    const auto weight =
        text_at(all, "font-weight") == "bold" ? chart::Weight::bold : chart::Weight::regular;
    const double wide = chart::text_width(words, size, weight);
    const std::string anchor = text_at(all, "text-anchor");
    const double before = anchor == "middle" ? 0.5 * wide : anchor == "end" ? wide : 0.0;
    const double up = chart::ascent_share * size;
    const double high = (chart::ascent_share + chart::descent_share) * size;
    const std::string turned = text_at(all, "transform");
    if (turned.empty()) {
        return {{number(all, "x") - before, number(all, "y") - up, wide, high}, std::move(words)};
    }
    // "translate(x y) rotate(-90)": reads upwards.
    char* rest = nullptr;
    const double x = std::strtod(turned.c_str() + std::string_view{"translate("}.size(), &rest);
    const double y = std::strtod(rest, nullptr);
    return {{x - up, y - wide + before, high, wide}, std::move(words)};
}

} // namespace

std::string fault_of_xml(std::string_view text) {
    if (json::find_invalid_utf8(text) != std::string_view::npos) {
        return "not UTF-8";
    }
    std::string without_ends{text};
    std::replace(without_ends.begin(), without_ends.end(), '\n', ' ');
    if (json::find_unprintable(without_ends) != std::string_view::npos) {
        return "a character that does not show";
    }
    std::vector<std::string> open;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '&' && !is_entity(text.substr(i))) {
            return "a bare ampersand";
        }
        if (text[i] != '<') {
            continue;
        }
        const std::size_t end = text.find('>', i);
        if (end == std::string_view::npos) {
            return "a tag that does not end";
        }
        const std::string_view tag = text.substr(i + 1, end - i - 1);
        const std::string name{tag.substr(0, tag.find_first_of(" \n/", 1))};
        if (tag.starts_with('/')) {
            if (open.empty() || open.back() != tag.substr(1)) {
                return "the end of " + name + " out of place";
            }
            open.pop_back();
        } else {
            const Attributes all = attributes_of(tag);
            if (all.contains("!")) {
                return name + ": " + all.at("!");
            }
            if (!tag.ends_with('/')) {
                open.push_back(name);
            }
        }
        i = end;
    }
    return open.empty() ? std::string{} : open.back() + " is not ended";
}

Svg read_svg(std::string_view text) {
    Svg svg;
    const auto tag_at = [text](std::size_t at) {
        return text.substr(at + 1, text.find('>', at) - at - 1);
    };
    if (const std::size_t at = text.find("<svg "); at != std::string_view::npos) {
        const Attributes all = attributes_of(tag_at(at));
        svg.width = number(all, "width");
        svg.height = number(all, "height");
    }
    for (std::size_t at = text.find("<text "); at != std::string_view::npos;
         at = text.find("<text ", at + 1)) {
        const std::size_t start = text.find('>', at) + 1;
        svg.texts.push_back(set_text(attributes_of(tag_at(at)),
                                     plain(text.substr(start, text.find('<', start) - start))));
    }
    return svg;
}

std::string crowded(const Svg& svg) {
    const drawing::Box canvas{0.0, 0.0, svg.width, svg.height};
    for (std::size_t i = 0; i < svg.texts.size(); ++i) {
        const SetText& one = svg.texts[i];
        if (!canvas.holds(one.box)) {
            return "outside the canvas: " + one.words;
        }
        for (std::size_t k = 0; k < i; ++k) {
            if (one.box.meets(svg.texts[k].box)) {
                return "overlap: " + one.words + " | " + svg.texts[k].words;
            }
        }
    }
    return {};
}

} // namespace fluewright::picture
