// Holds the coupled solve of every condition against the nested search on random installations with
// leaks, hoods, regulators, houses, fans and wind: the same outcome, the same flow, the same draft.
//   one_solve COUNT [FIRST_SEED]
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"
#include "installation_text.hpp"
#include "model/march/open_share.hpp"
#include "random_household.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <string>

using namespace fluewright;
using namespace fluewright::property;

namespace {

constexpr double same_flow_share = 2e-6;
constexpr double same_pressure_pa = 1e-4;
/// Of limits that are read off a curve, without a march of their own.
constexpr double same_limit_share = 2e-4;

struct Apart {
    double flow{};
    double draft_pa{};
    double room_pa{};
    double limit{};
};

double share_apart(double a, double b) {
    const double greater = std::max(std::abs(a), std::abs(b));
    return greater > 0.0 ? std::abs(a - b) / greater : 0.0;
}

bool has_hood(const Case& c) {
    return std::any_of(c.sections.begin(), c.sections.end(), has_plain_opening);
}

/// How far two answers are apart, or why they cannot be compared. Behind a hood there may be two,
/// and the nested search need not find the one that draws where a house lies between.
std::string
compare(const StateResult& quick, const StateResult& slow, bool has_hood, Apart& apart) {
    if (has_hood && quick.draft_pa > slow.draft_pa + same_pressure_pa) {
        return {};
    }
    if (quick.status != slow.status) {
        return fmt::format(
            "{} where the nested search says {}", name(quick.status), name(slow.status));
    }
    const double limits = std::max(share_apart(quick.capacity_kg_s, slow.capacity_kg_s),
                                   share_apart(quick.door.opening_share, slow.door.opening_share));
    const Apart here{share_apart(quick.gas_flow_kg_s, slow.gas_flow_kg_s),
                     std::abs(quick.draft_pa - slow.draft_pa),
                     std::abs(quick.room.pressure_pa - slow.room.pressure_pa),
                     limits};
    apart = {std::max(apart.flow, here.flow),
             std::max(apart.draft_pa, here.draft_pa),
             std::max(apart.room_pa, here.room_pa),
             std::max(apart.limit, here.limit)};
    if (here.flow > same_flow_share || here.draft_pa > same_pressure_pa
        || here.room_pa > same_pressure_pa || here.limit > same_limit_share) {
        return fmt::format(
            "flow {:.9g} and {:.9g} kg/s, draft {:.9g} and {:.9g} Pa, room {:.9g} and "
            "{:.9g} Pa, capacity {:.9g} and {:.9g}, door {:.9g} and {:.9g}",
            quick.gas_flow_kg_s,
            slow.gas_flow_kg_s,
            quick.draft_pa,
            slow.draft_pa,
            quick.room.pressure_pa,
            slow.room.pressure_pa,
            quick.capacity_kg_s,
            slow.capacity_kg_s,
            quick.door.opening_share,
            slow.door.opening_share);
    }
    return {};
}

} // namespace

int main(int argument_count, char** arguments) {
    const std::uint64_t count = argument_count > 1 ? std::strtoull(arguments[1], nullptr, 10) : 100;
    const std::uint64_t first = argument_count > 2 ? std::strtoull(arguments[2], nullptr, 10) : 1;
    const bool tell_file = argument_count > 3;
    Apart apart;
    std::size_t conditions = 0;
    std::size_t off = 0;
    for (std::uint64_t seed = first; seed < first + count; ++seed) {
        const Installation written = random_household(seed);
        const auto made = resolve(written);
        if (!made) {
            continue;
        }
        const bool hood = has_hood(*made);
        for (std::size_t weather = 0; weather < made->weathers.size(); ++weather) {
            const FlueModel model(*made, surroundings_of(*made, weather, Fire::burning));
            for (const StateKind kind : states_of(*made)) {
                // Without a fire there is no search; nobody loads by a door under a draft hood,
                // where every flow may have two answers.
                if (fire_of(kind) == Fire::out || (is_door_open(kind) && hood)) {
                    continue;
                }
                ++conditions;
                const std::string fault =
                    compare(solve_state(model, kind, Detail::totals),
                            solve_state_by_nesting(model, kind, Detail::totals),
                            hood,
                            apart);
                if (!fault.empty()) {
                    ++off;
                    fmt::print("seed {}, {}, weather {}: {}\n", seed, name(kind), weather, fault);
                    if (tell_file) {
                        fmt::print("{}\n", file_text(written));
                    }
                }
            }
        }
    }
    fmt::print(
        "{} installations, {} conditions, {} apart; at most {:.2g} of flow, {:.2g} Pa of draft, "
        "{:.2g} Pa of room, {:.2g} of a limit\n",
        count,
        conditions,
        off,
        apart.flow,
        apart.draft_pa,
        apart.room_pa,
        apart.limit);
    return off == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
