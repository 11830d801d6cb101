#include "random_household.hpp"

#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "random_installation.hpp"

#include <cmath>
#include <cstdlib>
#include <optional>
#include <string>

namespace fluewright::property {
namespace {

constexpr std::uint64_t seed_step = 0x9e3779b97f4a7c15U;

/// Four digits: a file that a person can read, and that reads back to the same numbers.
void round_values(Installation& made) {
    for (const std::string& pointer : value_pointers(made)) {
        Given& value = *find_value(made, pointer).value;
        if (value && *value != 0.0) {
            const double unit = std::pow(10.0, std::floor(std::log10(std::abs(*value))) - 3.0);
            value = std::round(*value / unit) * unit;
        }
    }
}

/// Some of what random_installation() makes is beyond what the reader takes.
std::optional<Installation> as_read(const Installation& made) {
    auto read = read_installation(write_installation(made));
    return read && resolve(*read) ? std::optional{std::move(read).value()} : std::nullopt;
}

} // namespace

Installation random_household(std::uint64_t seed) {
    constexpr int most_tries = 100;
    for (int i = 0; i < most_tries; ++i) {
        const std::uint64_t own_seed = seed + seed_step * static_cast<std::uint64_t>(i);
        Random random(own_seed * 0x5851f42d4c957f2dU + 0x7654321U);
        Installation made =
            random.chance(0.5) ? usual_heater(random) : random_installation(own_seed);
        add_details(random, made);
        leave_out(random, made);
        round_values(made);
        if (auto read = as_read(made)) {
            return std::move(*read);
        }
    }
    std::abort();
}

} // namespace fluewright::property
