// Danger means danger: fire, or smoke and carbon monoxide in a living space.
#include "../outdoor_top.hpp"
#include "advice/checks/physics/joint_pressure.hpp"
#include "catch.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "sound.hpp"
#include "written_parts.hpp"

#include <algorithm>
#include <string>

using namespace fluewright;
using namespace fluewright::checking;

namespace {

Findings findings_in(const Installation& in) {
    const Result<Case, Faults> resolved = resolve(with_outdoor_top(in));
    REQUIRE(resolved.has_value());
    return check_all(in, *resolved, solve(*resolved, Detail::stations), {}).findings;
}

bool has(const Findings& findings, std::string_view id) {
    return std::any_of(
        findings.begin(), findings.end(), [&](const Finding& f) { return f.matter->id == id; });
}

bool dangerous(const Findings& findings) {
    return std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
        INFO(f.matter->id << ": " << f.message);
        return f.severity == Severity::danger;
    });
}

/// A sound run whose chimney stands in a chase up to its cap.
Installation in_chase(std::string_view fit, Build cap) {
    Installation in = sound();
    in.run[0].joint = from_word<JointFit>(fit);
    in.run[1].zone = Zone::chase;
    in.run[2].zone = Zone::chase;
    in.run.back().build = cap;
    in.run.back().zone = Zone::outdoors;
    return in;
}

} // namespace

TEST_CASE("the judgement of a joint turns at the limits of its row") {
    for (const JointPressureRow& row : joint_pressure_rows) {
        CAPTURE(row.why);
        const auto harm = [&](double over_pa) { return joint_harm(row.space, row.make, over_pa); };
        constexpr double beside_pa = 1e-6;
        CHECK(row.note_pa <= row.warning_pa);
        CHECK(row.warning_pa <= row.danger_pa);
        CHECK(harm(-5.0) == JointHarm::none);
        CHECK(harm(row.note_pa) == JointHarm::none);
        CHECK(harm(row.note_pa + beside_pa) == JointHarm::note);
        CHECK(harm(row.danger_pa + beside_pa) == JointHarm::danger);
        CHECK(harm(row.danger_pa) != JointHarm::danger);
        if (row.warning_pa < row.danger_pa) {
            CHECK(harm(row.warning_pa) == JointHarm::note);
            CHECK(harm(row.warning_pa + beside_pa) == JointHarm::warning);
        }
    }
}

TEST_CASE("a leakier joint and a nearer room are never judged milder") {
    for (const double over_pa : {0.05, 0.15, 0.4, 0.6, 1.9, 2.1, 4.0, 8.0, 12.0, 25.0}) {
        CAPTURE(over_pa);
        for (const JointMake make : {JointMake::slip, JointMake::locked, JointMake::sealed}) {
            CHECK(joint_harm(SmokeSpace::living, make, over_pa)
                  >= joint_harm(SmokeSpace::shut, make, over_pa));
            CHECK(joint_harm(SmokeSpace::open_air, make, over_pa) == JointHarm::none);
        }
        for (const SmokeSpace space : {SmokeSpace::living, SmokeSpace::shut}) {
            CHECK(joint_harm(space, JointMake::slip, over_pa)
                  >= joint_harm(space, JointMake::locked, over_pa));
            CHECK(joint_harm(space, JointMake::locked, over_pa)
                  >= joint_harm(space, JointMake::sealed, over_pa));
        }
    }
}

TEST_CASE("a little pressure below the cap of a sealed chimney is a note") {
    CHECK(joint_harm(SmokeSpace::shut, JointMake::sealed, 0.15) == JointHarm::note);
    for (const std::string_view fit : {"sealed", "tight"}) {
        for (const Build cap : {Build::open, Build::plain, Build::rain}) {
            CAPTURE(fit);
            CHECK_FALSE(dangerous(findings_in(in_chase(fit, cap))));
        }
    }
}

TEST_CASE("smoke that a nest holds back is a danger at slip joints and a warning at sealed ones") {
    Installation in = sound();
    Part nest = named(PartKind::obstruction);
    nest.blocked = 0.74;
    in.run.insert(in.run.begin() + 2, nest);
    in.run[0].joint = JointFit::ordinary;
    CHECK(has(findings_in(in), "smoke-at-joints"));
    in.run[0].joint = JointFit::sealed;
    CHECK_FALSE(has(findings_in(in), "smoke-at-joints"));
    CHECK(has(findings_in(in), "smoke-may-seep-at-joints"));
    // What the file does not say of a bare pipe is no seal.
    in.run[0].joint.reset();
    in.run[0].wall = "single-wall steel";
    CHECK(has(findings_in(in), "smoke-at-joints"));
}

TEST_CASE("air control open is no condition of an appliance that nobody loads by hand") {
    const auto states = [](bool by_hand) {
        Installation in = sound();
        Part nest = named(PartKind::obstruction);
        nest.blocked = 0.78;
        in.run.insert(in.run.begin() + 2, nest);
        in.run[0].joint = JointFit::ordinary;
        if (!by_hand) {
            in.appliance.fuel = {};
            in.appliance.fuel.name = "wood pellets";
            in.appliance.door = {};
        }
        std::string all;
        for (const Finding& finding : findings_in(in)) {
            if (finding.matter->id == "smoke-at-joints") {
                all += finding.state;
            }
        }
        return all;
    };
    CHECK(states(true).find("air control open") != std::string::npos);
    CHECK(states(false).find("high fire") != std::string::npos);
    CHECK(states(false).find("air control open") == std::string::npos);
}
