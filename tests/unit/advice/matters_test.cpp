// The tables of matters and checks hold together.
#include "catch.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <set>
#include <string_view>

using namespace fluewright;

TEST_CASE("the table of matters is complete and in order") {
    std::string_view before;
    for (const Matter& row : matters()) {
        CAPTURE(row.id);
        CHECK(before < row.id);
        before = row.id;
        CHECK_FALSE(row.title.empty());
        CHECK_FALSE(row.meaning.empty());
        CHECK_FALSE(row.remedy.empty());
        CHECK(find_matter(row.id) == &row);
        // Somebody speaks of it, and nobody sees it worse than the table of matters says.
        Severity worst = Severity::note;
        bool spoken_of = false;
        for (const Check& check : checks()) {
            if (check.matter == &row) {
                spoken_of = true;
                worst = std::min(worst, check.severity);
            }
        }
        CHECK(spoken_of);
        if (find_check(row.id) == nullptr) {
            CHECK(worst == row.severity); // only bodies speak of it
        }
    }
    CHECK(find_matter("no-such-finding") == nullptr);
}

TEST_CASE("every check has a matter, a limit and a source") {
    std::set<std::string_view> ids;
    for (const Check& row : checks()) {
        CAPTURE(row.id);
        CHECK(ids.insert(row.id).second);
        REQUIRE(row.matter != nullptr);
        CHECK(find_matter(row.matter->id) == row.matter);
        CHECK_FALSE(row.rule.empty());
        CHECK_FALSE(row.applies.empty());
        CHECK(catalog::find_source(row.source) != nullptr);
        CHECK(find_check(row.id) == &row);
        CHECK((row.body == "any" || catalog::find_rule_body(row.body) != nullptr));
        CHECK((row.basis == Basis::body) == (row.body != "any"));
        // A check of the trade or the physics and a row of the rules are told apart by their ids.
        CHECK((find_matter(row.id) == nullptr || find_matter(row.id) == row.matter));
    }
    CHECK(find_check("no-such-check") == nullptr);
}
