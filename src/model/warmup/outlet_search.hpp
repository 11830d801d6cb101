#pragma once

#include <algorithm>
#include <cmath>

namespace fluewright {

/// The outlet pressure that gives itself: the lower it is, the more air the joints let in, the less
/// the flue draws and the more it loses, so that the miss falls as the pressure rises, by one where
/// nothing leaks and steeply at a hood. Between two passes that missed on either side: regula falsi
/// with the Illinois halving, and every third time the middle.
class OutletSearch {
public:
    double next(double outlet_pa, double miss_pa) {
        note_slope(outlet_pa, miss_pa);
        Side& side = miss_pa > 0.0 ? low_ : high_;
        Side& other = miss_pa > 0.0 ? high_ : low_;
        const bool is_low = miss_pa > 0.0;
        other.miss_pa *= begun_ && last_was_low_ == is_low ? 0.5 : 1.0;
        last_was_low_ = is_low;
        begun_ = true;
        side = {.known = true, .outlet_pa = outlet_pa, .miss_pa = miss_pa};
        if (!low_.known || !high_.known) {
            return outlet_pa - miss_pa / slope_;
        }
        const double width_pa = high_.outlet_pa - low_.outlet_pa;
        if (width_pa < narrowest_pa) {
            // The walls have moved on since one of the two was found.
            low_.known = high_.known = false;
            return outlet_pa - 0.1 * miss_pa / slope_;
        }
        const bool halve = ++count_ % 3 == 0;
        const double share = halve ? 0.5 : low_.miss_pa / (low_.miss_pa - high_.miss_pa);
        return low_.outlet_pa + share * width_pa;
    }

    /// Something else has moved, and the answer with it; how steeply the miss falls stays known.
    void restart() {
        low_.known = high_.known = false;
        begun_ = false;
    }

private:
    struct Side {
        bool known{};
        double outlet_pa{};
        double miss_pa{};
    };

    void note_slope(double outlet_pa, double miss_pa) {
        constexpr double steepest = -1e4;
        constexpr double widest_pa = 1.0; // farther apart, a gate may have opened in between
        const double moved_pa = outlet_pa - last_.outlet_pa;
        if (last_.known && std::abs(moved_pa) > narrowest_pa && std::abs(moved_pa) < widest_pa) {
            const double slope = (miss_pa - last_.miss_pa) / moved_pa;
            slope_ = std::clamp(slope, steepest, -1.0);
        }
        last_ = {.known = true, .outlet_pa = outlet_pa, .miss_pa = miss_pa};
    }

    static constexpr double narrowest_pa = 1e-9;

    Side low_;  ///< where the miss is positive: the answer lies higher
    Side high_; ///< where it is negative
    Side last_;
    double slope_{-1.0}; ///< of the miss by the outlet pressure
    bool last_was_low_{};
    bool begun_{};
    int count_{};
};

} // namespace fluewright
