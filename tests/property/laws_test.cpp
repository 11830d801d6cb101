#include "fluewright/model/catalog/catalog.hpp"
#include "trial.hpp"

#include <algorithm>
#include <cmath>

using namespace fluewright;
using namespace fluewright::property;

namespace {

double draft_pa(const Case& resolved, const GasStream& stream) {
    const FlueModel model = burning(resolved);
    return model.draft_pa(model.solve(stream));
}

/// The last straight of a run where it is upright, so that nothing changes behind it; or its size.
std::size_t last_upright(const std::vector<Part>& run) {
    for (std::size_t i = run.size(); i-- > 0;) {
        if (run[i].part == PartKind::straight) {
            return run[i].up_m ? i : run.size();
        }
    }
    return run.size();
}

bool cools_everywhere(const std::vector<Station>& stations) {
    return std::all_of(stations.begin(), stations.end(), [](const Station& s) {
        return s.inner_wall_k <= s.gas_temperature_k;
    });
}

double gas_density_kg_m3(const Case& resolved, const MarchResult& m) {
    return resolved.air_pressure_pa
           / (resolved.gas_high().products().gas_constant_j_kgk * m.top_temperature_k);
}

} // namespace

// Holds where the gas that fills the added height is lighter than the air outdoors: gas cooled to
// outdoor temperature can be denser by its carbon dioxide, and a zone may be colder than outdoors.
TEST_CASE("more height gives more buoyancy") {
    int held = 0;
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        const Trial t = trial(seed);
        const std::size_t top = last_upright(t.written.run);
        if (top == t.written.run.size()) {
            continue;
        }
        Installation higher = t.written;
        *higher.run[top].up_m *= 1.25;
        const Case more = resolved(higher);
        const GasStream stream = stream_of(t.resolved, GasChoice::high_fire);
        const FlueModel before = burning(t.resolved);
        const FlueModel after = burning(more);
        const MarchResult a = before.solve(stream);
        const MarchResult b = after.solve(stream);
        if (gas_density_kg_m3(more, b) > 0.98 * before.surroundings().outdoor_density_kg_m3) {
            continue;
        }
        ++held;
        if (!(b.buoyancy_pa > a.buoyancy_pa)) {
            fail(t, fmt::format("buoyancy {} -> {}", a.buoyancy_pa, b.buoyancy_pa));
        }
    }
    CHECK(held > static_cast<int>(some / 2));
}

TEST_CASE("colder outdoors gives more draft at fixed flow and temperature") {
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        const Trial t = trial(seed);
        // A house draws, too, and the more so in frost: the room is held.
        Case present = t.resolved;
        present.room_pressure_burning_pa = 0.0;
        Case colder = present;
        colder.weathers[0].outdoor_temperature_k -= 5.0;
        const GasStream stream = stream_of(present, GasChoice::high_fire);
        const double before = draft_pa(present, stream);
        const double after = draft_pa(colder, stream);
        if (!(after > before)) {
            fail(t, fmt::format("draft {} -> {}", before, after));
        }
    }
    SUCCEED();
}

// Holds where the flue cools the gas. An elbow mixes the gas, and in a zone warmer than the gas
// that warms it: there the draft may rise by more than the elbow takes.
TEST_CASE("adding an elbow never raises draft at fixed flow and temperature") {
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        const Trial t = trial(seed);
        Random random(seed + 991U);
        Installation bent = t.written;
        Part elbow;
        elbow.part = PartKind::elbow;
        elbow.angle_rad = random.between(0.3, 1.57); // a pair leads on in any direction
        elbow.build = random.chance(0.5) ? Build::gored : Build::mitered;
        const auto place = 1 + random.index(bent.run.size() - (bent.run.size() > 1 ? 1 : 0));
        bent.run.insert(bent.run.begin() + static_cast<std::ptrdiff_t>(place), 2, elbow);
        const Case with_elbow = resolved(bent);
        for (const GasChoice gas : both_fires) {
            const GasStream stream = stream_of(t.resolved, gas);
            const FlueModel model = burning(t.resolved);
            std::vector<Station> stations(model.station_count());
            const double before = model.draft_pa(model.solve(stream, stations));
            const double after = draft_pa(with_elbow, stream);
            if (after > before && cools_everywhere(stations)) {
                fail(t, fmt::format("elbow at {}: draft {} -> {}", place, before, after));
            }
        }
    }
    SUCCEED();
}

TEST_CASE("splitting a straight in two changes nothing") {
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        const Trial t = trial(seed);
        Random random(seed + 4242U);
        std::vector<std::size_t> straights;
        for (std::size_t i = 0; i < t.written.run.size(); ++i) {
            if (t.written.run[i].part == PartKind::straight) {
                straights.push_back(i);
            }
        }
        const std::size_t which = random.one_of(straights);
        const double share = random.between(0.1, 0.9);
        Installation split = t.written;
        Part second = split.run[which];
        const auto divide = [share](Given& lower, Given& upper) {
            if (lower) {
                upper = *lower * (1.0 - share);
                *lower *= share;
            }
        };
        Part& first = split.run[which];
        divide(first.up_m, second.up_m);
        divide(first.down_m, second.down_m);
        divide(first.across_m, second.across_m);
        divide(first.rise_m, second.rise_m);
        split.run.insert(split.run.begin() + static_cast<std::ptrdiff_t>(which) + 1, second);
        const Case in_two = resolved(split);
        const GasStream stream = stream_of(t.resolved, GasChoice::high_fire);
        const FlueModel whole_model = burning(t.resolved);
        const FlueModel split_model = burning(in_two);
        const MarchResult a = whole_model.solve(stream);
        const MarchResult b = split_model.solve(stream);
        // Both are within 0.1 % and 0.5 K of the same exact answer; see the convergence test.
        const double scale = std::max(std::abs(whole_model.draft_pa(a)), std::abs(a.buoyancy_pa));
        const double miss = std::abs(whole_model.draft_pa(a) - split_model.draft_pa(b));
        if (miss > 1e-3 * scale || std::abs(a.top_temperature_k - b.top_temperature_k) > 0.5) {
            fail(t,
                 fmt::format("part {}: draft {} -> {}, chimney top {} -> {} K",
                             which,
                             whole_model.draft_pa(a),
                             split_model.draft_pa(b),
                             a.top_temperature_k,
                             b.top_temperature_k));
        }
    }
    SUCCEED();
}

// Losses rule where, at the capacity, friction and fittings eat more than half of what the column
// gives and the gas keeps most of its heat. Elsewhere a wider flue cools the gas more than it eases
// its way, and capacity may fall.
TEST_CASE("capacity grows with diameter where losses rule") {
    int held = 0;
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        Trial t = trial(seed);
        Random random(seed + 313U);
        const double diameter_m = random.between(0.08, 0.30);
        Installation& w = t.written;
        w.run.clear();
        Part pipe;
        pipe.part = PartKind::straight;
        pipe.up_m = random.between(2.0, 12.0);
        pipe.wall = std::string{random.one_of(catalog::walls()).id};
        pipe.zone = Zone::outdoors;
        w.run.push_back(pipe);
        const auto capacity = [&](double wide_m) {
            Installation copy = w;
            copy.appliance.outlet.diameter_m = wide_m;
            copy.run.front().diameter_m = wide_m;
            const Case c = resolved(copy);
            return solve_state(burning(c), StateKind::free_burn, Detail::totals);
        };
        const StateResult narrow = capacity(diameter_m);
        if (narrow.status != Status::solved || narrow.capacity_kg_s <= 0.0) {
            continue;
        }
        Installation at_size = w;
        at_size.appliance.outlet.diameter_m = diameter_m;
        at_size.run.front().diameter_m = diameter_m;
        const Case sized = resolved(at_size);
        const FlueModel sized_model = burning(sized);
        GasStream stream = stream_of(sized, GasChoice::high_fire);
        stream.flow_kg_s = narrow.capacity_kg_s * sized.appliance.high.gas_per_fuel_kg_kg;
        const MarchResult at_capacity = sized_model.solve(stream);
        const double outdoor_k = sized.weathers[0].outdoor_temperature_k;
        if (at_capacity.friction_pa + at_capacity.fittings_pa < 0.5 * at_capacity.buoyancy_pa
            || at_capacity.top_temperature_k - outdoor_k
                   < 0.7 * (stream.temperature_k - outdoor_k)) {
            continue;
        }
        ++held;
        const StateResult wide = capacity(1.1 * diameter_m);
        if (!(wide.capacity_kg_s > narrow.capacity_kg_s)) {
            fail(t,
                 fmt::format("{} m: capacity {} -> {}",
                             diameter_m,
                             narrow.capacity_kg_s,
                             wide.capacity_kg_s));
        }
    }
    CHECK(held > static_cast<int>(some / 20));
}
