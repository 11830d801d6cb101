#include "../../catch.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/page/html_page.hpp"
#include "io/text/markup.hpp"
#include "io/text/page_text.hpp"

using namespace fluewright;

TEST_CASE("Signs of markup and what does not show are spelled out") {
    CHECK(markup("a < b & \"c\" > 'd'") == "a &lt; b &amp; &quot;c&quot; &gt; &#39;d&#39;");
    CHECK(markup("line\nend\ttab") == "line end tab");
    for (const std::string_view hidden :
         {"\x01", "\x1b[0m", "\u202e", "\u2066", "\ufffe", "\xff"}) {
        const std::string shown = markup(hidden);
        CHECK(shown.find(hidden.front()) == std::string::npos);
        CHECK(shown.starts_with("\\"));
    }
    CHECK(markup("\u00fcber 20 \u00b0C") == "\u00fcber 20 \u00b0C");
}

TEST_CASE("Lines become paragraphs, lists and lines as they stand") {
    const Style style = page::style_of(3);
    std::string text = page_heading("Size & <b>", 3);
    text += paragraph("A sentence with `code` in it.", {.first = 2, .rest = 4}, style.width);
    text += paragraph("- one", {.first = 2, .rest = 4}, style.width);
    text += paragraph("- two <i>", {.first = 2, .rest = 4}, style.width);
    text += paragraph("Below it.", {.first = 5, .rest = 5}, style.width);
    text += "      keep >== 3 ==|\n\n";
    text += inked("- as it must be", Ink::bad, style) + '\n';
    text += inked("SHORT", Ink::bad, style) + " of it\n";
    CHECK(page_html(text)
          == "<h3>Size &amp; &lt;b&gt;</h3>\n"
             "<p>A sentence with <code>code</code> in it.</p>\n"
             "<ul>\n<li>one</li>\n<li>two &lt;i&gt;</li>\n</ul>\n"
             "<p class=\"in\">Below it.</p>\n"
             "<pre>keep &gt;== 3 ==|\n</pre>\n"
             "<ul>\n<li><span class=\"bad\">as it must be</span></li>\n</ul>\n"
             "<p><span class=\"bad\">SHORT</span> of it</p>\n");
    CHECK(page_html("an odd ` tick\n") == "<p>an odd ` tick</p>\n");
}

TEST_CASE("A table of text is a table of the page, with heads") {
    TextTable table({{.heading = "part"}, {.heading = "rise\nm", .align = Align::right}, {}});
    table.add({{"straight <1>"}, {"1.2"}, {"ok", Ink::good}});
    table.add({{""}, {"3"}, {"no", Ink::bad}});
    table.add_note("and a note");
    const std::string html = page_html(table.text(page::style_of(2), 2));
    CHECK(html.find("<th scope=\"col\">part</th>") != std::string::npos);
    CHECK(html.find("<th scope=\"col\" class=\"number\">rise m</th><td></td>")
          != std::string::npos);
    CHECK(html.find("<th scope=\"row\">straight &lt;1&gt;</th><td class=\"number\">1.2</td>"
                    "<td class=\"good\">ok</td>")
          != std::string::npos);
    CHECK(html.find("<td></td><td class=\"number\">3</td><td class=\"bad\">no</td>")
          != std::string::npos);
    CHECK(html.find("colspan=\"3\">and a note<") != std::string::npos);
    // The same table stays text elsewhere.
    CHECK(table.text(Style{}, 2).find('<') == table.text(Style{}, 2).find("<1>"));
}

TEST_CASE("A text of a file cannot bring markup into a page") {
    TextTable table(std::vector<TableColumn>(1));
    table.add({{"\x01<script>\x02"
                "5x\x03"}});
    const std::string html =
        page_html(table.text(page::style_of(2), 0) + paragraph("\x01<script>", {}, page_width));
    CHECK(html.find("<script>") == std::string::npos);
    const std::string heading = page_html(
        page_heading("\x02"
                     "Zfrost\x03\n\x01<script>",
                     2)
        + page_heading({.before = "1. ", .word = "DANGER", .ink = Ink::bad, .after = "\x02"}, 3));
    CHECK(heading
          == "<h2>\\u0002Zfrost\\u0003 \\u0001&lt;script&gt;</h2>\n"
             "<h3>1. <span class=\"bad\">DANGER</span>\\u0002</h3>\n");
}
