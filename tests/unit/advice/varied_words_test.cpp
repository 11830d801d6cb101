// Words as values: fuel, wall, cap and the like; Sobol samples; spreads cut by what can be
// computed.
#include "catch.hpp"
#include "fluewright/advice/study/variations.hpp"
#include "fluewright/model/fields/words_at.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "plain_run.hpp"
#include "written_parts.hpp"

#include <set>

using namespace fluewright;

namespace {

/// Two walls, a bend, a cap and a fuel that stand in the file.
Installation shop() {
    Installation in = plain::stack(5.0, 0.15, 0.3);
    in.appliance.fuel.name = "beech";
    in.run.front().wall = "single-wall steel";
    in.run.push_back(named(PartKind::elbow));
    in.run.back().build = Build::gored;
    in.run.push_back(straight_up(2.0, "insulated 25 mm", Zone::outdoors));
    in.run.push_back(named(PartKind::cap));
    return in;
}

std::string refusal(std::string_view typed, const Installation& in) {
    const auto read = read_varied_range(typed, in);
    return read ? std::string{} : read.error();
}

VariedRange taken(std::string_view typed, const Installation& in) {
    auto read = read_varied_range(typed, in);
    INFO(typed);
    REQUIRE(read);
    return std::move(read).value();
}

} // namespace

TEST_CASE("words are varied, and the ids name them") {
    const Installation in = shop();
    const Variations grid = Variations::every_combination(
        in,
        {taken("fuel=oak, beech", in), taken("cap = open,plain", in), taken("height=6,7 m", in)});
    REQUIRE(grid.size() == 8);
    CHECK(grid.id(0, "shop") == "shop fuel=oak cap=open height=6m");
    const auto last = grid.at(7, "shop");
    REQUIRE(last);
    CHECK(last->appliance.fuel.name == "beech");
    CHECK(last->run.back().build == Build::plain);
    CHECK(grid.at(0, "shop")->run.back().build == Build::open);
    const VariedRange walls = taken("/run/2/wall=insulated 25 mm, insulated 50 mm", in);
    const Variations two = Variations::every_combination(in, {walls});
    CHECK(two.id(1, "s") == "s /run/2/wall=insulated-50-mm");
    CHECK(two.at(1, "s")->run[2].wall == "insulated 50 mm");
    CHECK(two.at(1, "s")->run[0].wall == "single-wall steel");
    // Yes and no are words as well, and words go together with numbers.
    const Variations together =
        Variations::every_combination(in, {taken("braced=true,false & outdoor=-5,5 degC", in)});
    REQUIRE(together.size() == 2);
    CHECK(together.at(1, "s")->site.roof.braced == false);
}

TEST_CASE("what is no word of the file is told with the nearest") {
    const Installation in = shop();
    CHECK(refusal("fuel=oka,beech", in).find("did you mean `oak`?") != std::string::npos);
    CHECK(refusal("cap=plan", in).find("did you mean `plain`?") != std::string::npos);
    CHECK(refusal("wal=insulated 25 mm", in).find("did you mean `wall`?") != std::string::npos);
    CHECK(refusal("hight=3 m", in).find("did you mean `height`?") != std::string::npos);
    CHECK(refusal("wall=insulated 25 mm", in).find("/run/0/wall or /run/2/wall")
          != std::string::npos);
    CHECK(refusal("fuel=oak,oak", in).find("twice") != std::string::npos);
    CHECK(refusal("fuel=", in).find("there are") != std::string::npos);
    CHECK(refusal("fuel=oak,", in).find("cannot stand") != std::string::npos);
    CHECK(refusal("braced=true,fals", in).find("did you mean `false`?") != std::string::npos);
    CHECK(refusal("fuel=oak,beech & outdoor=1,2,3 degC", in).find("go together")
          != std::string::npos);
}

TEST_CASE("every place for a word takes its words, is read back, and copies nothing to be read") {
    const Installation in = shop();
    std::size_t places = 0;
    for (const std::string& pointer : word_pointers(in)) {
        const FieldInfo* field = field_at(in, pointer);
        REQUIRE(field != nullptr);
        if (field->words != Words::choices) {
            continue;
        }
        for (const std::string_view word : field->choices) {
            Installation changed = in;
            INFO(pointer << " " << word);
            CHECK(set_word(changed, pointer, word));
            CHECK(word_at(changed, pointer) == std::string{word});
            ++places;
        }
        Installation same = in;
        CHECK_FALSE(set_word(same, pointer, "no such word"));
    }
    CHECK(places > 100);
    CHECK_FALSE(word_at(in, "/run/0/up"));
    CHECK_FALSE(word_at(in, "/run/99/wall"));
    CHECK(number_at(in, "/run/0/up") == in.run[0].up_m);
    CHECK_FALSE(number_at(in, "/run/0/wall"));
    CHECK(may_be_varied_word("fuel"));
    CHECK(may_be_varied_word("/run/2/wall"));
    CHECK_FALSE(may_be_varied_word("moisture"));
    CHECK_FALSE(may_be_varied_word("title"));
}

TEST_CASE("a Sobol sequence covers each range evenly and goes on where fewer samples ended") {
    const Installation in = shop();
    const auto ranges = [&] {
        return std::vector<VariedRange>{taken("height=6..8 m", in),
                                        taken("outdoor=-10..10 degC", in),
                                        taken("fuel=oak,beech", in)};
    };
    const Variations few = Variations::sobol_sequence(in, ranges(), 64, 4);
    const Variations many = Variations::sobol_sequence(in, ranges(), 128, 4);
    std::set<int> pieces;
    double oak = 0.0;
    for (std::size_t i = 0; i < few.size(); ++i) {
        CHECK(few.values(i) == many.values(i));
        pieces.insert(static_cast<int>((few.values(i)[0] - 6.0) * 32.0));
        oak += few.values(i)[2] == 0.0 ? 1.0 : 0.0;
    }
    CHECK(pieces.size() == 64);
    CHECK(oak == 32.0);
    CHECK(few.id(6, "s").starts_with("s-07 height="));
}

TEST_CASE("a spread is never pressed onto the limit of what can be computed") {
    const Installation in = shop();
    const VariedRange wide = taken("moisture=5 % sd 5 %", in);
    CHECK(share_left_out(wide, 0) == Approx(0.1587).epsilon(1e-3)); // below one deviation
    CHECK(share_left_out(taken("moisture=18 % sd 3 %", in), 0) < 1e-6);
    CHECK(share_left_out(taken("height=6..8 m", in), 0) == 0.0);
    const Variations samples = Variations::latin_hypercube(in, {wide}, 400, 1);
    std::set<double> seen;
    double mean = 0.0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        seen.insert(samples.values(i).front());
        mean += samples.values(i).front() / 400.0;
    }
    CHECK(*seen.begin() > 0.0);
    CHECK(seen.size() == 400);
    // Of a bell cut at one deviation below its mean: mean + sd 0.24197/0.84134.
    CHECK(mean == Approx(0.05 + 0.05 * 0.28760).epsilon(0.005));
}

TEST_CASE("a place of the file is meant as written, whatever size is varied before it") {
    // The reducer falls out where the pipe takes the collar's size, and all behind it moves up.
    Installation in = plain::stack(5.0, 0.15, 0.3);
    in.run.insert(in.run.begin(), named(PartKind::reducer));
    in.run.front().diameter_m = 0.125;
    in.run[1].diameter_m.reset();
    in.run[1].zone = Zone::room;
    in.run.push_back(straight_up(2.0, "single-wall steel", Zone::outdoors));
    in.run.push_back(named(PartKind::cap));
    in.run.back().build = Build::plain;
    const double collar_m = *in.appliance.outlet.diameter_m;
    const std::string size = std::to_string(collar_m * 1000.0) + " mm";
    const Variations sizes = Variations::every_combination(
        in,
        {taken("diameter=" + size, in), taken("/run/2/up=2.5 m", in), taken("cap=open,plain", in)});
    const auto made = sizes.at(0, "s");
    INFO((made ? std::string{} : made.error()));
    REQUIRE(made);
    CHECK(made->run.size() < in.run.size());
    CHECK(made->run.back().build == Build::open);
    CHECK(made->run[made->run.size() - 2].up_m == 2.5);
}
