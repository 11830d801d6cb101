#pragma once

#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>
#include <vector>

/// A self-contained page in sections.
namespace fluewright::page {

/// A style whose texts become parts of a page, with headings of a level.
[[nodiscard]] Style style_of(int heading_level);

/// What stands above and below the sections.
struct Frame {
    std::string_view title;
    std::string_view kicker; ///< over the title
    std::string_view lead;   ///< the answer, below it
    bool passes{};
    std::string foot;
};

class HtmlPage {
public:
    /// A section with its heading; left out where the text is empty. Text as page_html() takes it.
    void add(std::string_view id, std::string_view heading, std::string_view text);

    /// A section whose text brings its heading; `name` is for the list of contents.
    void add_headed(std::string_view id, std::string_view name, std::string_view text);

    /// A section with a picture and what is to say of it.
    void add_figure(std::string_view id,
                    std::string_view heading,
                    std::string_view svg,
                    std::string_view caption);

    /// More text in the section added last.
    void add_to_last(std::string_view text);

    [[nodiscard]] std::string finished(const Frame& frame) const;

private:
    struct Section {
        std::string id;
        std::string name;
        std::string html;
    };

    std::vector<Section> sections_;
};

} // namespace fluewright::page
