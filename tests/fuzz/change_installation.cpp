#include "any_installation.hpp"
#include "buildable.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "takers.hpp"

#include <algorithm>
#include <vector>

using namespace fluewright;
using namespace fluewright::property;

namespace fuzz {
namespace {

/// An entry of the run once more, taken out, or in another place.
void change_run(std::vector<Part>& run, Random& random) {
    if (run.empty()) {
        return;
    }
    const auto at = run.begin() + static_cast<std::ptrdiff_t>(random.index(run.size()));
    switch (random.index(3)) {
    case 0:
        run.insert(at, Part{*at});
        break;
    case 1:
        run.erase(at);
        break;
    default:
        std::iter_swap(at, run.begin() + static_cast<std::ptrdiff_t>(random.index(run.size())));
        break;
    }
}

} // namespace

std::string change_installation(std::string_view text, std::uint64_t seed) {
    Random random{seed};
    const ReadResult read = read_installation(text);
    Installation changed = read && random.chance(0.9) ? *read : any_installation(random, seed);
    if (random.chance(0.3)) {
        change_run(changed.run, random);
    }
    const std::vector<AnyPlace> places = any_places(changed);
    const std::size_t times = 1 + random.index(4);
    for (std::size_t i = 0; i < times && !places.empty(); ++i) {
        random.one_of(places).set(random);
    }
    if (random.chance(0.7)) {
        make_buildable(changed);
    }
    return write_installation(changed);
}

} // namespace fuzz
