#include "html_page.hpp"

#include "io/text/markup.hpp"
#include "io/text/page_text.hpp"
#include "page_style.hpp"

#include <fmt/core.h>

namespace fluewright::page {

Style style_of(int heading_level) {
    Style style;
    style.width = page_width;
    style.page_level = heading_level;
    return style;
}

void HtmlPage::add(std::string_view id, std::string_view heading, std::string_view text) {
    if (!text.empty()) {
        sections_.push_back({std::string{id},
                             std::string{heading},
                             fmt::format("<h2>{}</h2>\n", markup(heading)) + page_html(text)});
    }
}

void HtmlPage::add_headed(std::string_view id, std::string_view name, std::string_view text) {
    if (!text.empty()) {
        sections_.push_back({std::string{id}, std::string{name}, page_html(text)});
    }
}

void HtmlPage::add_figure(std::string_view id,
                          std::string_view heading,
                          std::string_view svg,
                          std::string_view caption) {
    sections_.push_back(
        {std::string{id},
         std::string{heading},
         fmt::format("<h2>{}</h2>\n<figure>\n{}<figcaption>{}</figcaption>\n</figure>\n",
                     markup(heading),
                     svg,
                     markup(caption))});
}

void HtmlPage::add_to_last(std::string_view text) {
    sections_.back().html += page_html(text);
}

std::string HtmlPage::finished(const Frame& frame) const {
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
                      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
                      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
                      "style-src 'unsafe-inline'\"/>\n";
    out += fmt::format("<title>{}</title>\n<style>{}</style>\n</head>\n<body>\n",
                       markup(frame.title),
                       style_sheet);
    out += fmt::format("<header>\n<p class=\"kicker\">{}</p>\n<h1>{}</h1>\n"
                       "<p class=\"lead {}\">{}</p>\n</header>\n",
                       markup(frame.kicker),
                       markup(frame.title),
                       frame.passes ? "good" : "bad",
                       page_words(frame.lead));
    out += "<nav aria-label=\"Contents\">\n<ul>\n";
    for (const Section& section : sections_) {
        out += fmt::format("<li><a href=\"#{}\">{}</a></li>\n", section.id, markup(section.name));
    }
    out += "</ul>\n</nav>\n<main>\n";
    for (const Section& section : sections_) {
        out += fmt::format("<section id=\"{}\">\n{}</section>\n", section.id, section.html);
    }
    return out
           + fmt::format("</main>\n<footer>\n<p>{}</p>\n</footer>\n</body>\n</html>\n",
                         markup(frame.foot));
}

} // namespace fluewright::page
