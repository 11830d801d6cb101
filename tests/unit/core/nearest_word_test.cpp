#include "catch.hpp"
#include "fluewright/core/nearest_word.hpp"

#include <array>
#include <string>

using fluewright::nearest_word;

namespace {

constexpr std::array<std::string_view, 8> woods = {
    "alder", "ash", "beech", "birch", "larch", "oak", "pine", "spruce"};

std::string nearest(std::string_view typed) {
    return std::string(nearest_word(typed, woods).value_or("nothing"));
}

} // namespace

TEST_CASE("A misspelt word finds its neighbour") {
    CHECK(nearest("birhc") == "birch");
    CHECK(nearest("oka") == "oak");
    CHECK(nearest("spurce") == "spruce");
    CHECK(nearest("spruse") == "spruce");
    CHECK(nearest("pines") == "pine");
    CHECK(nearest("lder") == "alder");
    CHECK(nearest("pine") == "pine");
}

TEST_CASE("Letter case does not count") {
    CHECK(nearest("BIRCH") == "birch");
    CHECK(nearest("Birhc") == "birch");
}

TEST_CASE("Nothing is suggested when nothing is close") {
    CHECK(nearest("") == "nothing");
    CHECK(nearest("xyz") == "nothing");
    CHECK(nearest("coal") == "nothing");
    CHECK(nearest(std::string(100000, 'a')) == "nothing");
    CHECK_FALSE(nearest_word("oak", {}).has_value());
}

TEST_CASE("A single letter is not close to every other letter") {
    constexpr std::array<std::string_view, 2> units = {"m", "cm"};
    CHECK_FALSE(nearest_word("x", units).has_value());
    CHECK(nearest_word("km", units) == "m");
}

TEST_CASE("A tie goes to the earlier word and a closer word beats an earlier one") {
    constexpr std::array<std::string_view, 3> words = {"cat", "car", "cap"};
    CHECK(nearest_word("caz", words) == "cat");
    CHECK(nearest_word("cap", words) == "cap");
}

TEST_CASE("Swapping two neighbours is one step, so a long key may hold two slips") {
    constexpr std::array<std::string_view, 3> keys = {"burn_rate", "draft_needed", "door"};
    CHECK(nearest_word("drfat_neeedd", keys) == "draft_needed");
    CHECK(nearest_word("brun_raet", keys) == "burn_rate");
}
