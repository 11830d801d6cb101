// The program that turns data/*.csv into C++ says where a table is wrong, and what.
#include "catch.hpp"
#include "data/embed/table.hpp"
#include "data/embed/written.hpp"

#include <string>
#include <vector>

namespace embed = fluewright::embed;

namespace {

struct Read {
    embed::Table table;
    std::vector<embed::Fault> faults;

    [[nodiscard]] std::string only_fault() const {
        REQUIRE(faults.size() == 1);
        return faults.front().text();
    }
};

Read read(const std::string& text) {
    Read made;
    made.table = embed::read_table("data/pies.csv", text, made.faults);
    return made;
}

const std::string head = "# Pies.\n#bounds,0..50,,,\nid,water_pct,what,source,mark\n";

} // namespace

TEST_CASE("a sound table is read as written") {
    const Read made = read(head + "plum,12.5,\"sweet, \"\"round\"\"\",kitchen,judgement\r\n");
    REQUIRE(made.faults.empty());
    REQUIRE(made.table.rows.size() == 1);
    CHECK(made.table.rows[0].line == 4);
    CHECK(made.table.rows[0].cells[2].text == "sweet, \"round\"");
    CHECK(made.table.columns[1].member == "water");
    const std::string rows = embed::rows({"pies", "Pie", "pie"}, made.table);
    CHECK(rows.find(".id = \"plum\", .water = 12.5 / 100.0, .what = \"sweet, \\\"round\\\"\"")
          != std::string::npos);
}

TEST_CASE("a fault of a table names file, line and column") {
    CHECK(read(head + "plum,81,sweet,kitchen,judgement\n").only_fault()
          == "data/pies.csv:4:6: water_pct is 81, outside its bounds 0..50");
    CHECK(read(head + "plum,much,sweet,kitchen,judgement\n").only_fault()
          == "data/pies.csv:4:6: water_pct is not a number: \"much\"");
    CHECK(read(head + "plum,,sweet,kitchen,judgement\n").only_fault()
          == "data/pies.csv:4:6: water_pct is not a number: \"\"");
    CHECK(read(head + "plum,0x10,sweet,kitchen,judgement\n").only_fault()
          == "data/pies.csv:4:6: water_pct is not a number: \"0x10\"");
    CHECK(read(head + "plum,12,sweet,kitchen\n").only_fault()
          == "data/pies.csv:4:15: 4 cells for 5 columns");
    CHECK(read(head + "plum,12,\"sweet,kitchen,judgement\n").faults.front().text()
          == "data/pies.csv:4:9: the quotation mark is not closed");
    CHECK(read(head + "plum,12,sw\"eet,kitchen,judgement\n").only_fault()
          == "data/pies.csv:4:11: a cell with a quotation mark in it stands in quotation marks");
    CHECK(read(head + "plum,1,a,kitchen,judgement\nplum,2,b,kitchen,judgement\n").only_fault()
          == "data/pies.csv:5:1: a second row is called plum");
    CHECK(read(head + ",1,a,kitchen,judgement\n").only_fault()
          == "data/pies.csv:4:1: the row has no id");
    CHECK(read(head).only_fault() == "data/pies.csv:1:1: the table has no rows");
    CHECK(read("#bounds,5..0\nid,water_pct\nplum,3\n").faults.front().text()
          == "data/pies.csv:1:9: the bounds of water_pct read low..high, not \"5..0\"");
    CHECK(read("#bounds,\nid,water_pct,what\nplum,3,a\n").only_fault()
          == "data/pies.csv:1:1: 2 cells of bounds for 3 columns");
    CHECK(read("id,water_pct\nplum,3\n").only_fault()
          == "data/pies.csv:1:1: a line #bounds is missing before the names of the columns");
}

TEST_CASE("a source or a mark that nobody knows is a fault") {
    Read made = read(head + "plum,12,sweet,cellar,guessed\n");
    std::vector<embed::Fault> none;
    const embed::Table sources = embed::read_table(
        "data/sources.csv", "#bounds,\nid,document\nkitchen,the book of pies\n", none);
    REQUIRE(none.empty());
    embed::check_sources(made.table, sources, made.faults);
    REQUIRE(made.faults.size() == 2);
    CHECK(made.faults[0].text() == "data/pies.csv:4:15: \"cellar\" is no row of sources.csv");
    CHECK(made.faults[1].text()
          == "data/pies.csv:4:22: \"guessed\" is none of the marks that data/README.md lists");
}

TEST_CASE("ids become enumerators, or say that they cannot") {
    const embed::Entry entry{"pies", "Pie", "pie", "PieId", "bakery", "bakery/pie_id.hpp"};
    Read made = read(head + "sour-plum,12,sweet,kitchen,judgement\n");
    const std::string header = embed::enumeration(entry, made.table, made.faults);
    CHECK(made.faults.empty());
    CHECK(header.find("enum class PieId : std::uint16_t {\n    sour_plum,\n};")
          != std::string::npos);
    made = read(head + "6 in,12,sweet,kitchen,judgement\n");
    (void)embed::enumeration(entry, made.table, made.faults);
    CHECK(made.only_fault() == "data/pies.csv:4:1: \"6 in\" cannot be a name in the code");
}
