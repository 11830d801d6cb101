#include "fluewright/advice/parts/parts_list.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace fluewright {
namespace {

/// Lengths are counted in tenths of a millimetre, which holds inches and millimetres exactly.
constexpr double tick_m = 1e-4;
constexpr int meets_ticks = 20; // 2 mm

int ticks(double length_m) {
    return static_cast<int>(std::lround(length_m / tick_m));
}

constexpr std::int16_t unreachable = std::numeric_limits<std::int16_t>::max();

/// Fewest fixed pieces for every sum, and the last piece of each.
struct Sums {
    std::vector<std::int16_t> count;
    std::vector<std::int16_t> last;
};

Sums sums_to(int most, const std::vector<int>& lengths) {
    const auto size = static_cast<std::size_t>(most) + 1;
    Sums sums{std::vector<std::int16_t>(size, unreachable), std::vector<std::int16_t>(size, -1)};
    sums.count[0] = 0;
    for (std::size_t sum = 1; sum < size; ++sum) {
        for (std::size_t i = 0; i < lengths.size(); ++i) {
            const auto length = static_cast<std::size_t>(lengths[i]);
            if (length > sum || sums.count[sum - length] == unreachable) {
                continue;
            }
            const auto count = static_cast<std::int16_t>(sums.count[sum - length] + 1);
            if (count < sums.count[sum]) {
                sums.count[sum] = count;
                sums.last[sum] = static_cast<std::int16_t>(i);
            }
        }
    }
    return sums;
}

std::vector<double> pieces_of(const Sums& sums, const std::vector<int>& lengths, int sum) {
    std::vector<double> pieces;
    while (sum > 0) {
        const int length =
            lengths[static_cast<std::size_t>(sums.last[static_cast<std::size_t>(sum)])];
        pieces.push_back(static_cast<double>(length) * tick_m);
        sum -= length;
    }
    std::sort(pieces.rbegin(), pieces.rend());
    return pieces;
}

} // namespace

MadeUp make_up(double between_m, const std::vector<FixedLength>& lengths, double may_exceed_m) {
    std::vector<int> fixed;
    int longest = 0;
    for (const FixedLength& length : lengths) {
        if (length.shortest_m >= length.length_m - tick_m && length.length_m > tick_m) {
            fixed.push_back(ticks(length.length_m));
            longest = std::max(longest, fixed.back());
        }
    }
    const int wanted = ticks(between_m);
    MadeUp made;
    if (wanted <= meets_ticks) {
        made.off_m = -between_m;
        return made;
    }
    const Sums sums = sums_to(wanted + std::max(longest, meets_ticks), fixed);
    const auto reached = [&](int sum) {
        return sum >= 0 && sums.count[static_cast<std::size_t>(sum)] != unreachable;
    };
    // As few pieces as possible within the tolerance.
    int best = -1;
    for (int sum = wanted - meets_ticks; sum <= wanted + meets_ticks; ++sum) {
        if (sum > 0 && reached(sum)
            && (best < 0
                || sums.count[static_cast<std::size_t>(sum)]
                       < sums.count[static_cast<std::size_t>(best)])) {
            best = sum;
        }
    }
    int above = -1;
    for (int sum = wanted; sum < static_cast<int>(sums.count.size()) && above < 0; ++sum) {
        above = reached(sum) ? sum : -1;
    }
    const bool tall_enough = above >= 0 && (above - wanted) * tick_m <= may_exceed_m + tick_m;
    if (best < 0 && !tall_enough) {
        int fewest = unreachable;
        double set_m = 0.0;
        int rest_of = -1;
        for (const FixedLength& length : lengths) {
            if (length.shortest_m >= length.length_m - tick_m) {
                continue;
            }
            for (int sum = std::max(0, wanted - ticks(length.length_m));
                 sum <= wanted - ticks(length.shortest_m);
                 ++sum) {
                if (reached(sum) && sums.count[static_cast<std::size_t>(sum)] < fewest) {
                    fewest = sums.count[static_cast<std::size_t>(sum)];
                    rest_of = sum;
                    set_m = (wanted - sum) * tick_m;
                }
            }
        }
        if (rest_of >= 0) {
            made.pieces_m = pieces_of(sums, fixed, rest_of);
            made.pieces_m.push_back(set_m);
            made.telescopes = true;
            return made;
        }
    }
    if (best < 0) {
        best = above;
    }
    if (best >= 0) {
        made.pieces_m = pieces_of(sums, fixed, best);
        made.off_m = best * tick_m - between_m;
    } else {
        made.off_m = -between_m;
    }
    return made;
}

} // namespace fluewright
