// Sections that are not round: geometry, what the file may say, and what they meet.
#include "fluewright/advice/parts/joints.hpp"
#include "plain_run.hpp"

#include <numbers>

using namespace fluewright;

namespace {

constexpr double inch = 0.0254;

WrittenSize oval(Given width_m, Given depth_m, Given diameter_m) {
    return {diameter_m, width_m, depth_m, SectionShape::oval};
}

EndFacts end_of(const FlueBore& bore, PipeEnd end) {
    EndFacts facts;
    facts.end = end;
    facts.take_bore(bore);
    return facts;
}

std::string adapter(const FlueBore& below, const FlueBore& above) {
    return fit_of(end_of(below, PipeEnd::socket), end_of(above, PipeEnd::crimped), UnitSystem::us)
        .adapter;
}

} // namespace

TEST_CASE("an oval is two half circles and the straights between them") {
    const FlueBore bore = oval_bore(8.0 * inch, 5.0 * inch);
    // pi/4 25 + 5 x 3 = 34.635 in2; pi 5 + 2 x 3 = 21.708 in
    CHECK(bore.area_m2 == Approx(34.6350 * inch * inch).epsilon(1e-5));
    CHECK(bore.perimeter_m == Approx(21.7080 * inch).epsilon(1e-5));
    CHECK(bore.diameter_m == Approx(6.6407 * inch).epsilon(1e-4));
    CHECK(oval_bore(5.0 * inch, 8.0 * inch).area_m2 == bore.area_m2);
    // Between the circle of its short side and the rectangle around it; less than an ellipse's
    // circle of its long side.
    CHECK(bore.area_m2 > round_bore(5.0 * inch).area_m2);
    CHECK(bore.area_m2 < rectangular_bore(8.0 * inch, 5.0 * inch).area_m2);
    const FlueBore round = oval_bore(0.15, 0.15);
    CHECK(round.area_m2 == Approx(round_bore(0.15).area_m2));
    CHECK(round.perimeter_m == Approx(round_bore(0.15).perimeter_m));
}

TEST_CASE("round pipe pressed oval keeps its perimeter and loses area") {
    for (const double depth_in : {2.0, 4.0, 5.0, 5.9}) {
        const auto bore = bore_of(oval({}, depth_in * inch, 6.0 * inch));
        REQUIRE(bore.has_value());
        CHECK(bore->perimeter_m == Approx(std::numbers::pi * 6.0 * inch));
        CHECK(bore->area_m2 < round_bore(6.0 * inch).area_m2);
        // By its other side it is the same.
        const auto other = bore_of(oval(bore->width_m, {}, 6.0 * inch));
        REQUIRE(other.has_value());
        CHECK(other->depth_m == Approx(depth_in * inch));
    }
    // Half the perimeter is the widest.
    CHECK(bore_of(oval(9.42 * inch, {}, 6.0 * inch)).has_value());
    CHECK_FALSE(bore_of(oval(9.43 * inch, {}, 6.0 * inch)).has_value());
}

TEST_CASE("an oval takes two sizes, and a shape takes its sides") {
    const auto faults = [](Given width_m, Given depth_m, Given diameter_m, SectionShape shape) {
        Installation in = plain::stack(4.0, 0.15, 0.5);
        in.appliance.outlet.width_m = width_m;
        in.appliance.outlet.depth_m = depth_m;
        in.appliance.outlet.diameter_m = diameter_m;
        in.appliance.outlet.shape = shape;
        return !resolve(with_outdoor_top(in)).has_value();
    };
    CHECK_FALSE(faults(0.2, 0.12, {}, SectionShape::oval));
    CHECK_FALSE(faults({}, 0.12, 0.15, SectionShape::oval));
    CHECK(faults({}, {}, 0.15, SectionShape::oval));
    CHECK(faults(0.2, {}, {}, SectionShape::oval));
    CHECK(faults(0.2, 0.12, 0.15, SectionShape::oval));
    CHECK(faults(0.24, {}, 0.15, SectionShape::oval)); // over half the perimeter
    CHECK_FALSE(faults(0.2, 0.12, {}, SectionShape::rectangular));
    CHECK(faults({}, {}, 0.15, SectionShape::rectangular));
}

TEST_CASE("an oval flue flows by its hydraulic diameter and is sold by its area") {
    Installation in = plain::stack(4.0, 0.15, 0.5);
    for (Part& part : in.run) {
        part.diameter_m.reset();
    }
    in.appliance.outlet = {};
    in.appliance.outlet.width_m = 0.20;
    in.appliance.outlet.depth_m = 0.12;
    in.appliance.outlet.shape = SectionShape::oval;
    const Case c = plain::resolved(in);
    const FlueBore bore = oval_bore(0.20, 0.12);
    CHECK(c.appliance.outlet_area_m2 == Approx(bore.area_m2));
    CHECK(c.sections[1].area_m2 == Approx(bore.area_m2));
    CHECK(c.sections[1].diameter_m == Approx(4.0 * bore.area_m2 / bore.perimeter_m));
    CHECK_FALSE(c.sections[1].rectangular);
    CHECK(c.run.parts[0].bore.diameter_m == Approx(bore.diameter_m));
    CHECK_FALSE(c.run.parts[0].has_choice_of_size());
}

TEST_CASE("pipe for a collar that is not round is offered by area") {
    // 8 x 8 in: a circle of 64 in2 is 9.03 in across; its hydraulic diameter is 8 in.
    const FlueBore square = rectangular_bore(8.0 * inch, 8.0 * inch);
    CHECK(square.diameter_m == Approx(9.0270 * inch).epsilon(1e-4));
    const FlueBore flat = oval_bore(8.0 * inch, 5.0 * inch);
    const FlueBore pipe = round_bore(6.0 * inch);
    CHECK(adapter(flat, pipe)
          == "oval-to-round adapter, 8 in x 5 in crimped below, 6 in plain above");
    CHECK(adapter(pipe, flat)
          == "round-to-oval adapter, 6 in crimped below, 8 in x 5 in plain above");
    CHECK(adapter(square, pipe)
          == "square-to-round adapter, 8 in x 8 in crimped below, 6 in plain above");
    CHECK(adapter(flat, square).starts_with("oval-to-square adapter"));
    CHECK(adapter(flat, oval_bore(5.0 * inch, 8.0 * inch)).empty());
    CHECK(adapter(flat, oval_bore(7.0 * inch, 5.0 * inch)).starts_with("reducer"));
    CHECK(bore_name(flat, UnitSystem::us) == "oval 8 in x 5 in");
    CHECK(bore_name(pipe, UnitSystem::us) == "6 in");
}

TEST_CASE("a liner goes down the narrow side of a tile, with its sheet and its wrap") {
    Installation in = plain::stack(6.0, 0.15, 0.5);
    Part& flue = in.run.front();
    flue.diameter_m.reset();
    flue.wall = "clay-lined masonry";
    flue.liner = "8x12"; // 6.43 by 10.43 in inside
    const Run run = plain::resolved(in).run;
    CHECK(liner_goes_in(run, 6.0 * inch, LinerCover::bare));
    CHECK_FALSE(liner_goes_in(run, 6.0 * inch, LinerCover::insulated));
    CHECK_FALSE(liner_goes_in(run, 7.0 * inch, LinerCover::bare));
    CHECK(liner_that_goes_in(run, 5.0 * inch) == "flexible liner insulated");
    CHECK(liner_that_goes_in(run, 6.0 * inch) == "flexible liner");
    CHECK(liner_that_goes_in(run, 8.0 * inch).empty());
    // Nothing goes into pipe.
    CHECK_FALSE(liner_goes_in(
        plain::resolved(plain::stack(6.0, 0.15, 0.5)).run, 3.0 * inch, LinerCover::bare));
}
