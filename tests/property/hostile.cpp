// Solves installations drawn from the field table, most with numbers at their limits. Each has to
// be refused with a reason, or every condition of it has to end in a solution or a named outcome:
// no trap of the floating-point unit, no figure that a flue cannot have, no state given up, no more
// than its time.
//   hostile COUNT [FIRST_SEED]
#include "any_installation.hpp"
#include "buildable.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/states/vent_limit.hpp"
#include "installation_text.hpp"

#include <array>
#include <cmath>
#include <csetjmp>
#include <csignal>
#include <cstdlib>
#include <ctime>
#include <fmt/format.h>
#include <string>
#if defined(__linux__) && defined(__GLIBC__)
#include <cfenv>
#endif

using namespace fluewright;
using namespace fluewright::property;

namespace {

constexpr std::size_t most_told = 20;

/// Of the processor, which others may keep busy. What is asked for is 0.2 s; loose joints in a
/// tight house behind a fire that the run cannot vent are searches within searches still.
constexpr double wanted_s = 0.2;
constexpr double most_s = 10.0;

/// Where a trap leads back to. A handler can reach nothing else.
sigjmp_buf after_trap;

extern "C" void come_back(int /*signal*/) {
    ::siglongjmp(after_trap, 1);
}

/// Traps for what has no number; a result too small or rounded is none.
void set_traps(bool on) {
#if defined(__linux__) && defined(__GLIBC__)
    std::feclearexcept(FE_ALL_EXCEPT);
    constexpr int wrong = FE_INVALID | FE_DIVBYZERO | FE_OVERFLOW;
    on ? ::feenableexcept(wrong) : ::fedisableexcept(wrong);
#else
    (void)on;
#endif
}

/// What is wrong with a solved state, or nothing.
std::string fault_of(const Case& resolved, const StateResult& state) {
    if (state.status == Status::no_answer) {
        return "the solver gave up";
    }
    if (!std::isfinite(state.draft_pa + state.draft_needed_pa + state.capacity_kg_s
                       + state.gas_flow_kg_s + state.gas_temperature_k + state.door.opening_share
                       + state.flow.heat_loss_w + state.room.pressure_pa)) {
        return "a figure is not finite";
    }
    if (state.status != Status::solved && state.status != Status::cannot_vent) {
        return {};
    }
    if (has_closed_fire(state.kind) && state.draft_pa < -vent_limit::overpressure_pa) {
        return fmt::format("a draft of {} Pa", state.draft_pa);
    }
    // Wind of 60 m/s on a cap, and the column of the tallest run that is read.
    constexpr double most_draft_pa = 6000.0;
    if (std::abs(state.draft_pa) > most_draft_pa) {
        return fmt::format("a draft of {} Pa", state.draft_pa);
    }
    constexpr double sound_m_s = 750.0; // in gas of 1200 degC
    for (const Station& station : state.stations) {
        if (!std::isfinite(station.gas_temperature_k + station.inner_wall_k + station.outer_wall_k
                           + station.pressure_pa + station.flow_kg_s)) {
            return "a station is not finite";
        }
        constexpr double coldest_k = 190.0;
        constexpr double hottest_k = 2000.0;
        if (station.gas_temperature_k < coldest_k || station.gas_temperature_k > hottest_k) {
            return fmt::format("gas of {} K", station.gas_temperature_k);
        }
        if (station.velocity_m_s > 1.05 * vent_limit::mach * sound_m_s) {
            return fmt::format("gas at {} m/s", station.velocity_m_s);
        }
    }
    return state.capacity_kg_s < 0.0 || resolved.sections.empty() ? "no meaning" : "";
}

struct Tally {
    std::size_t refused{};
    std::size_t solved{};
    std::size_t told{};
    std::size_t faults{};
    std::size_t slow{}; ///< took longer than wanted_s
    double worst_s{};
    std::uint64_t worst_seed{};
    std::array<std::size_t, status_words.size()> states{};
};

void tell(Tally& tally, std::uint64_t seed, const std::string& what, const Installation& written) {
    ++tally.faults;
    if (tally.told++ < most_told) {
        fmt::print("seed {}: {}\n{}\n\n", seed, what, file_text(written));
    }
}

void try_one(std::uint64_t seed, Tally& tally) {
    Random random{seed * 6364136223846793005ULL + 99};
    Installation written = any_installation(random, seed);
    make_buildable(written);
    AssessOptions options;
    options.size_search = false;
    const std::clock_t begun = std::clock();
    if (::sigsetjmp(after_trap, 1) != 0) {
        set_traps(false);
        tell(tally, seed, "a trap of the floating-point unit", written);
        return;
    }
    set_traps(true);
    const Result<Assessment, Faults> assessed = assess(written, options);
    set_traps(false);
    const double taken_s = static_cast<double>(std::clock() - begun) / CLOCKS_PER_SEC;
    tally.slow += taken_s > wanted_s ? 1U : 0U;
    if (taken_s > tally.worst_s) {
        tally.worst_s = taken_s;
        tally.worst_seed = seed;
    }
    if (taken_s > most_s) {
        tell(tally, seed, fmt::format("it took {:.2f} s", taken_s), written);
    }
    if (!assessed) {
        ++tally.refused;
        if (assessed.error().empty() || assessed.error().front().message.empty()) {
            tell(tally, seed, "refused without a reason", written);
        }
        return;
    }
    ++tally.solved;
    for (const StateResult& state : assessed->solution.states) {
        ++tally.states[static_cast<std::size_t>(state.status)];
        if (const std::string fault = fault_of(assessed->installation, state); !fault.empty()) {
            tell(tally,
                 seed,
                 fmt::format("{}, weather {}: {}", name(state.kind), state.weather, fault),
                 written);
            return;
        }
    }
}

} // namespace

int main(int argc, char** argv) {
    if (argc < 2) {
        std::fputs("usage: hostile COUNT [FIRST_SEED]\n", stderr);
        return 2;
    }
    const std::uint64_t count = std::strtoull(argv[1], nullptr, 10);
    const std::uint64_t first = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 0;
    std::signal(SIGFPE, come_back);
    Tally tally;
    for (std::uint64_t seed = first; seed < first + count; ++seed) {
        try_one(seed, tally);
    }
    fmt::print(
        "{} installations: {} solved, {} refused; {} took over {} s, worst {:.3f} s (seed {}); "
        "states:",
        count,
        tally.solved,
        tally.refused,
        tally.slow,
        wanted_s,
        tally.worst_s,
        tally.worst_seed);
    for (std::size_t i = 0; i < status_words.size(); ++i) {
        fmt::print(" {} {}", tally.states[i], status_words[i]);
    }
    fmt::print("; {} faults\n", tally.faults);
    // Were nearly all refused, it would say little.
    return tally.faults == 0 && tally.solved > count / 8 ? 0 : 1;
}
