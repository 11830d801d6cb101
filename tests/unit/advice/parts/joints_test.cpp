#include "catch.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <random>
#include <set>
#include <utility>

using namespace fluewright;

namespace {

constexpr std::array ends{
    PipeEnd::plain, PipeEnd::crimped, PipeEnd::socket, PipeEnd::flange, PipeEnd::locking};

/// Row: the end below. Column: the end above. g good, u points up, n never. Written down by hand.
constexpr std::array<const char*, 5> by_hand{
    // plain crimped socket flange locking
    "ngunn", // plain
    "ununn", // crimped
    "ggnnn", // socket
    "nnngn", // flange
    "nnnng", // locking, of one wall
};

Part straight(double diameter_m, std::size_t heater, std::size_t chimney, std::string wall) {
    Part part;
    part.part = PartKind::straight;
    part.up_m = 0.6;
    part.diameter_m = diameter_m;
    part.wall = std::move(wall);
    part.zone = Zone::outdoors;
    part.heater_end = ends[heater];
    part.chimney_end = ends[chimney];
    return part;
}

Case resolved(const Installation& in) {
    Result<Case, Faults> made = resolve(in);
    REQUIRE(made.has_value());
    return std::move(made).value();
}

/// What the checks find of the ends and sizes of the joints.
Findings joint_findings(const Installation& in, const Case& made) {
    Findings found = check_shape(in, made, {}).findings;
    found.erase(std::remove_if(found.begin(),
                               found.end(),
                               [](const Finding& finding) {
                                   const std::string_view id = finding.matter->id;
                                   return id != "ends-do-not-mate" && id != "crimp-points-up"
                                          && id != "diameters-do-not-match";
                               }),
                found.end());
    return found;
}

EndFacts facts(PipeEnd end, double diameter_m = 0.15, std::string wall = "a") {
    return {end, diameter_m, std::move(wall), false, false};
}

} // namespace

TEST_CASE("every wrong pairing is found in 500 random runs") {
    std::mt19937 random{7};
    const auto any = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
    constexpr std::array<double, 5> sizes{0.150, 0.1524, 0.180, 0.1778, 0.200};
    const std::array<std::string, 3> walls{
        "single-wall steel", "double-wall connector", "insulated 25 mm"};
    int wrong = 0;
    for (int run = 0; run < 500; ++run) {
        Installation in;
        in.appliance.type = ApplianceType::stove;
        in.appliance.fuel.name = "beech";
        in.appliance.outlet.diameter_m = sizes[any(5)];
        const std::size_t collar = any(5);
        in.appliance.outlet.end = ends[collar];

        struct End {
            std::size_t end;
            double diameter_m;
            std::size_t wall;
        };

        End below{collar, *in.appliance.outlet.diameter_m, 99};
        std::set<int> never;
        std::set<int> up;
        std::set<int> bore;
        const std::size_t count = 1 + any(6);
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t heater = any(5);
            const std::size_t chimney = any(5);
            const std::size_t wall = any(3);
            const double d = any(3) == 0 ? sizes[any(5)] : below.diameter_m;
            in.run.push_back(straight(d, heater, chimney, walls[wall]));
            const auto part = static_cast<int>(i);
            char outcome = by_hand[below.end][heater];
            if (below.end == 4 && heater == 4 && below.wall != wall) {
                outcome = 'n';
            }
            if (outcome == 'n') {
                never.insert(part);
            }
            if (outcome == 'u') {
                up.insert(part);
            }
            if (std::abs(d - below.diameter_m) > 0.001) {
                bore.insert(part);
            }
            below = {chimney, d, wall};
        }
        const Case made = resolved(in);
        const JointReport report = joints_of(made);
        REQUIRE(report.joints.size() == count);
        const Findings found = check_shape(in, made, {}).findings;
        std::map<std::string_view, std::set<int>> by_id;
        for (const Finding& finding : found) {
            by_id[finding.matter->id].insert(finding.part);
        }
        CHECK(by_id["ends-do-not-mate"] == never);
        CHECK(by_id["crimp-points-up"] == up);
        CHECK(by_id["diameters-do-not-match"] == bore);
        for (const Joint& joint : report.joints) {
            const std::size_t wrong_here =
                never.count(joint.above) + up.count(joint.above) + bore.count(joint.above);
            CHECK((joint.fit.adapter.empty() && !joint.fit.other_part) == (wrong_here == 0));
        }
        wrong += static_cast<int>(never.size() + up.size() + bore.size());
    }
    CHECK(wrong > 500);
}

TEST_CASE("the adapter is named") {
    const auto adapter = [](const EndFacts& below, const EndFacts& above) {
        return fit_of(below, above, UnitSystem::metric).adapter;
    };
    CHECK(adapter(facts(PipeEnd::plain), facts(PipeEnd::plain))
          == "crimp-to-socket adapter, 150 mm crimped below, 150 mm socket above");
    // What goes into a socket from below, or over a crimp, would let liquid out.
    CHECK(adapter(facts(PipeEnd::crimped), facts(PipeEnd::crimped)).empty());
    CHECK(adapter(facts(PipeEnd::socket), facts(PipeEnd::socket)).empty());
    CHECK(adapter(facts(PipeEnd::plain), facts(PipeEnd::flange))
          == "flange adapter, 150 mm crimped below, 150 mm flange above");
    CHECK(adapter(facts(PipeEnd::plain), facts(PipeEnd::locking, 0.15, "double-wall connector"))
          == "adapter from pipe to double-wall connector, 150 mm crimped below, 150 mm locking "
             "above");
    CHECK(adapter(facts(PipeEnd::plain, 0.1524), facts(PipeEnd::crimped, 0.150))
          == "inch-to-metric adapter, 6 in crimped below, 150 mm plain above");
    CHECK(adapter(facts(PipeEnd::plain, 0.1778), facts(PipeEnd::crimped, 0.1524))
          == "reducer, 7 in crimped below, 6 in plain above");
    CHECK(adapter(facts(PipeEnd::plain, 0.150), facts(PipeEnd::plain, 0.180))
          == "crimp-to-socket adapter, as increaser, 150 mm crimped below, 180 mm socket above");
    CHECK(adapter(facts(PipeEnd::plain), facts(PipeEnd::crimped)).empty());
    CHECK(adapter(facts(PipeEnd::plain, 0.15), facts(PipeEnd::open, 0.2)).empty());
}

TEST_CASE("a plain end of thin pipe is crimped where an adapter would do the same") {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.end = PipeEnd::plain;
    in.run = {straight(0.15, 0, 0, "single-wall steel")};
    const Joint thin = joints_of(resolved(in)).joints[0];
    CHECK(thin.turned.crimps);
    CHECK(thin.bought_adapter().empty());
    CHECK(thin.cure().starts_with("Crimp the end of straight 1 that points to the heater; or put"));
    // Thick sheet is not crimped, nor is pipe of another size made to fit by it.
    in.run[0].wall = "single-wall steel heavy";
    CHECK_FALSE(joints_of(resolved(in)).joints[0].turned.crimps);
    in.run[0].wall = "single-wall steel";
    in.run[0].diameter_m = 0.18;
    CHECK_FALSE(joints_of(resolved(in)).joints[0].turned.crimps);
    CHECK_FALSE(joints_of(resolved(in)).joints[0].bought_adapter().empty());
}

TEST_CASE("7 in and 180 mm look alike and do not fit") {
    const Fit fit =
        fit_of(facts(PipeEnd::plain, 0.1778), facts(PipeEnd::crimped, 0.180), UnitSystem::metric);
    CHECK(fit.bore == Bore::inch_and_metric);
    CHECK(fit.mating == Mating::good);
    // Two metric sizes that are near each other are not of two systems.
    CHECK(fit_of(facts(PipeEnd::plain, 0.110), facts(PipeEnd::crimped, 0.113), UnitSystem::metric)
              .bore
          == Bore::wider_above);
}

TEST_CASE("usual ends stand in and are marked as assumed") {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 0.15;
    Part thin = straight(0.15, 0, 0, "single-wall steel");
    thin.heater_end.reset();
    thin.chimney_end.reset();
    Part thick = thin;
    thick.wall = "single-wall steel heavy";
    Part chimney = thin;
    chimney.wall = "insulated 25 mm";
    Part brick = thin;
    brick.wall = "clay-lined masonry";
    in.run = {thin, thick, chimney, brick};
    const Case made = resolved(in);
    const JointReport report = joints_of(made);
    REQUIRE(report.parts.size() == 4);
    CHECK(report.parts[0].heater.end == PipeEnd::crimped);
    CHECK(report.parts[0].chimney.end == PipeEnd::plain);
    CHECK(report.parts[0].thickness_m == Approx(0.0006));
    CHECK(report.parts[1].heater.end == PipeEnd::plain);
    CHECK(report.parts[1].chimney.end == PipeEnd::socket);
    CHECK(report.parts[2].heater.end == PipeEnd::locking);
    CHECK(report.parts[3].heater.end == PipeEnd::open);
    CHECK(report.parts[0].heater.assumed);
    CHECK(report.joints[1].fit.mating == Mating::never);
    // Assumed against assumed tells nothing about what lies on the bench: no finding.
    CHECK(joint_findings(in, made).empty());
}

TEST_CASE("a part that only lies upside down is told from one that needs an adapter") {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.end = PipeEnd::socket;
    // plain towards the heater, crimped up: the wrong way round between two right ones.
    in.run = {straight(0.15, 1, 0, "single-wall steel"),
              straight(0.15, 0, 1, "single-wall steel"),
              straight(0.15, 1, 0, "single-wall steel")};
    const Case made = resolved(in);
    const JointReport report = joints_of(made);
    CHECK(report.joints[0].turn_round.empty());
    CHECK(report.joints[1].turn_round == "straight 2");
    CHECK(report.joints[2].turn_round == "straight 2");
    const Findings found = joint_findings(in, made);
    REQUIRE(found.size() == 2);
    CHECK(found[0].remedy == "Turn straight 2 round; it is upside down.");
    // Two plain ends that no turning helps.
    in.run[1].chimney_end = PipeEnd::plain;
    in.run[1].heater_end = PipeEnd::plain;
    CHECK(joints_of(resolved(in)).joints[1].turn_round.empty());
}

TEST_CASE("several parts that lie upside down are all named") {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.end = PipeEnd::plain;
    Part chimney = straight(0.15, 4, 4, "insulated 25 mm");
    in.run = {straight(0.15, 0, 1, "single-wall steel"),
              straight(0.15, 0, 1, "single-wall steel"),
              chimney};
    const JointReport report = joints_of(resolved(in));
    CHECK(report.joints[0].turn_round == "straight 1");
    CHECK(report.joints[0].turned.adapter.empty());
    CHECK(report.joints[1].cure() == "Turn straight 1 and straight 2 round; they are upside down.");
    CHECK(report.joints[2].cure()
          == "Turn straight 2 round; it is upside down. Then put in: adapter from pipe to "
             "insulated 25 mm, 150 mm crimped below, 150 mm locking above.");
}

TEST_CASE("an crimped end that no turning brings down is told as such") {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.end = PipeEnd::crimped;
    in.run = {straight(0.15, 0, 0, "single-wall steel")};
    const JointReport report = joints_of(resolved(in));
    REQUIRE(report.joints[0].fit.mating == Mating::points_up);
    CHECK(report.joints[0].needs_something());
    CHECK(report.joints[0].cure() == "Use a part whose crimped end points to the heater.");
}

TEST_CASE("turning never leaves more joints in need of an adapter than before") {
    std::mt19937 random{11};
    const auto any = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
    for (int run = 0; run < 200; ++run) {
        Installation in;
        in.appliance.type = ApplianceType::stove;
        in.appliance.fuel.name = "beech";
        in.appliance.outlet.diameter_m = 0.15;
        in.appliance.outlet.end = ends[any(3)];
        const std::size_t count = 1 + any(6);
        for (std::size_t i = 0; i < count; ++i) {
            in.run.push_back(straight(0.15, any(3), any(3), "single-wall steel"));
        }
        const JointReport report = joints_of(resolved(in));
        int before = 0;
        int after = 0;
        for (const Joint& joint : report.joints) {
            before += joint.fit.mating != Mating::good ? 1 : 0;
            after += joint.turned.mating != Mating::good ? 1 : 0;
            CHECK(joint.needs_something() == !joint.cure().empty());
        }
        CHECK(after <= before);
        // Against every way to turn the parts.
        int least = 1 << 20;
        for (std::size_t ways = 0; ways < (std::size_t{1} << count); ++ways) {
            Installation other = in;
            for (std::size_t i = 0; i < count; ++i) {
                if ((ways >> i & 1U) != 0U) {
                    std::swap(other.run[i].heater_end, other.run[i].chimney_end);
                }
            }
            int cost = 0;
            for (const Joint& joint : joints_of(resolved(other)).joints) {
                cost += joint.fit.mating == Mating::never       ? 10
                        : joint.fit.mating == Mating::points_up ? 12
                                                                : 0;
            }
            least = std::min(least, cost);
        }
        int found = 0;
        for (const Joint& joint : report.joints) {
            found += joint.turned.mating == Mating::never       ? 10
                     : joint.turned.mating == Mating::points_up ? 12
                                                                : 0;
        }
        CHECK(found == least);
    }
}

TEST_CASE("gauge numbers have their sheet") {
    CHECK(sheet_gauge_m(24) * 1000 == Approx(0.607).epsilon(0.002));
    CHECK(sheet_gauge_m(26) * 1000 == Approx(0.456).epsilon(0.002));
    CHECK(sheet_gauge_m(20) * 1000 == Approx(0.911).epsilon(0.002));
    CHECK(sheet_gauge_m(22) > sheet_gauge_m(23));
    CHECK(sheet_gauge_m(4) == 0.0);
}
