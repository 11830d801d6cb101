#include "catch.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "io/input/json_document.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

using namespace fluewright;

namespace {

Diagnostic first_of(std::string_view text) {
    const auto result = read_installation(text);
    REQUIRE_FALSE(result.has_value());
    return result.error().front();
}

nlohmann::json as_library_value(const json::Document& document, const json::Node& node) {
    nlohmann::json value;
    switch (node.type) {
    case json::Type::nothing:
        break;
    case json::Type::boolean:
        value = node.truth;
        break;
    case json::Type::number:
        value = node.number;
        break;
    case json::Type::string:
        value = std::string{node.text};
        break;
    case json::Type::array:
        value = nlohmann::json::array();
        for (auto i = node.first; i != json::no_node; i = document.at(i).next) {
            value.push_back(as_library_value(document, document.at(i)));
        }
        break;
    case json::Type::object:
        value = nlohmann::json::object();
        for (auto i = node.first; i != json::no_node; i = document.at(i).next) {
            value[std::string{document.at(i).key}] = as_library_value(document, document.at(i));
        }
        break;
    }
    return value;
}

} // namespace

TEST_CASE("faults of grammar have a place and a way out", "[reader]") {
    struct Row {
        std::string text;
        int line;
        int column;
        std::string message;
        std::string help;
    };

    const auto row = GENERATE(values<Row>({
        {"", 1, 1, "the file is empty", "start with { \"appliance\": { }, \"run\": [ ] }"},
        {" \n // nothing\n",
         3,
         1,
         "the file is empty",
         "start with { \"appliance\": { }, \"run\": [ ] }"},
        {"{\"a\": 1",
         1,
         8,
         "the file ends before `}`",
         "close what was opened in line 1, column 1"},
        {"{\"a\": [1, 2}",
         1,
         12,
         "a comma is missing before `}`",
         "put a comma between two values, or `]` after the last"},
        {"{\"a\": 1\n \"b\": 2}",
         2,
         2,
         "a comma is missing before `\"`",
         "put a comma between two values, or `}` after the last"},
        {"{\"a\": 1,}", 1, 8, "a comma with nothing between it and `}`", "take the comma away"},
        {"{a: 1}", 1, 2, "a key in double quotes is missing before `a`", "write \"key\": value"},
        {"{\"a\" 1}", 1, 6, "a colon is missing after the key `a`", "write \"a\": value"},
        {"{\"a\": }",
         1,
         7,
         "a value is missing before `}`",
         "a value is a text in double quotes, true, false or a number"},
        {"{\"a\": 'b'}", 1, 7, "a value is missing before `'`", "write texts in double quotes"},
        {"{\"a\": NaN}",
         1,
         7,
         "`NaN` is not a number",
         "leave the key out where the value is not known"},
        {"{\"a\": Infinity}",
         1,
         7,
         "`Infinity` is not a number",
         "leave the key out where the value is not known"},
        {"{\"a\": -Infinity}",
         1,
         7,
         "`-Infinity` is not a number",
         "write digits with one point between them, such as 0.5"},
        {"{\"a\": .5}",
         1,
         7,
         "a value is missing before `.5`",
         "a value is a text in double quotes, true, false or a number"},
        {"{\"a\": 05}",
         1,
         7,
         "`05` is not a number",
         "write digits with one point between them, such as 0.5"},
        {"{\"a\": 6in}",
         1,
         7,
         "`6in` is not a number",
         "write a value and its unit in double quotes, such as \"6 in\""},
        {"{\"a\": 1e999}", 1, 7, "this number is too large or too small to be worked with", ""},
        {"{\"a\": \"b\n\"}",
         1,
         7,
         "this text has no closing quote in its line",
         "put \" at its end"},
        {"{\"a\": \"b", 1, 7, "this text has no closing quote", "put \" at its end"},
        {"{\"a\": \"\\q\"}",
         1,
         8,
         "a backslash that stands for nothing",
         "write \\\\ for a backslash and \\\" for a quote or an inch mark"},
        {"{\"a\": \"\\ud800\"}",
         1,
         8,
         "this is not a character code",
         "write \\u and four digits 0-9, a-f"},
        {"{} {}",
         1,
         4,
         "there is something after the end of the installation",
         "one file holds one installation, in one pair of braces"},
        {"{} /* no end", 1, 4, "this comment has no end", "close it with */"},
        {"/ {}", 1, 1, "a single slash has no meaning here", "comments start with // or /*"},
        {"{\"a\": \"\x80\"}", 1, 8, "the text is not UTF-8", "save the file in the encoding UTF-8"},
        {"{\"caf\xC3\xA9\": \xFF}",
         1,
         10,
         "the text is not UTF-8",
         "save the file in the encoding UTF-8"},
    }));
    CAPTURE(row.text);
    const auto found = first_of(row.text);
    CHECK(found.line == row.line);
    CHECK(found.column == row.column);
    CHECK(found.fault.message == row.message);
    CHECK(found.fault.help == row.help);
}

TEST_CASE("a fault of grammar names the object it is in", "[reader]") {
    CHECK(first_of(R"({"run": [{}, {"up": +1}]})").fault.pointer == "/run/1");
}

TEST_CASE("nesting ends at 32 levels", "[reader]") {
    const auto nested = [](std::size_t levels) {
        return std::string(levels, '[') + std::string(levels, ']');
    };
    CHECK(json::parse(nested(32)).complete);
    CHECK_FALSE(json::parse(nested(33)).complete);
    const auto deep = first_of(std::string(100000, '['));
    CHECK(deep.fault.message == "nested more than 32 levels deep");
    CHECK(deep.column == 33);
}

TEST_CASE("files end at 16 MB", "[reader]") {
    std::string text(json::greatest_size, ' ');
    CHECK(first_of(text).fault.message == "the file is empty");
    text += ' ';
    CHECK(first_of(text).fault.message == "the file is larger than 16 MB");
}

TEST_CASE("duplicate keys name both places", "[reader]") {
    const auto found = first_of("{\"title\": \"a\",\n  \"title\": \"b\", \"appliance\": {\"type\": "
                                "\"stove\"}, \"run\": []}");
    CHECK(found.line == 2);
    CHECK(found.column == 3);
    CHECK(found.fault.pointer == "/title");
    CHECK(found.fault.message == "the key `title` appears twice");
    CHECK(found.fault.found == "\"title\"");
    CHECK(found.fault.help == "the first is in line 1, column 2; keep the one that is meant");
}

TEST_CASE("a long object with one key twice is found and takes no long time", "[reader]") {
    std::string text = "{";
    for (int i = 0; i < 50000; ++i) {
        text += fmt::format("\"k{}\": 0,", i);
    }
    const auto parsed = json::parse(text + "\"k40000\": 1}");
    CHECK(parsed.complete);
    REQUIRE(parsed.troubles.size() == 1);
    CHECK(parsed.troubles[0].fault.pointer == "/k40000");
    CHECK(json::parse(text + "\"k\": 1}").troubles.empty());
}

TEST_CASE("documents read as the packaged library reads them", "[reader]") {
    const auto* text =
        GENERATE(R"({"a": [1, -2.5e3, 0, -0.0, true, false, null], "b": {"c": {}}, "d": []})",
                 R"("a \"quoted\" \\ \/ \b\f\n\r\t \u00e9 \u20ac \ud83d\ude00 text")",
                 "  3.25  ",
                 R"(/* a */ {"x": "°C ′ ½"} // b)",
                 "[[[[1]]],[[2]]]",
                 R"({"a~b": {"c/d": 1}})");
    const auto parsed = json::parse(text);
    REQUIRE(parsed.complete);
    CHECK(as_library_value(parsed.document, parsed.document.root())
          == nlohmann::json::parse(text, nullptr, true, true));
}

TEST_CASE("whether a text is JSON, the packaged library agrees", "[reader]") {
    const std::string whole = R"({"a": [1, -2.5e3, "x\u00e9\n"], "b": {"c": null}, "d": true})";
    for (std::size_t i = 0; i < whole.size(); ++i) {
        for (const char c : std::string_view{"\"\\{}[],:0-.eatu \n/"}) {
            std::string text = whole;
            text[i] = c;
            CAPTURE(text);
            CHECK(json::parse(text).complete == nlohmann::json::accept(text, true));
        }
        CHECK_FALSE(json::parse(whole.substr(0, i)).complete);
    }
}
