#pragma once

#include "fluewright/model/fields/given.hpp"

#include <vector>

/// What was seen on the installation, and how one fire goes.
namespace fluewright {

/// A stretch of time of one fire, for the warm-up.
struct BurnEntry {
    Word name;
    Given duration_s;
    Given burn_rate_kg_s; ///< 0: the fire is out

    bool operator==(const BurnEntry&) const = default;
};

/// Something seen, tried or measured on the installation as it stands. Several readings taken at
/// one time and place may share an entry; each counts by itself.
struct Observation {
    Choice<SmokePlace>
        smoke;     ///< joints, door, lighting, wind, fan or none: where or when smoke comes out
    Flag sluggish; ///< the fire burns poorly
    Flag roaring;  ///< the fire cannot be held down
    Flag drips;    ///< tar or water runs from the flue
    Flag smell_when_idle;
    Flag co_alarm;               ///< a carbon monoxide alarm sounded
    Choice<TroubleCourse> worse; ///< over weeks, overnight or steady
    Flag better_with_window_open;
    Choice<SmokeStick> smoke_stick; ///< in, out or still: what smoke held at a joint does
    Choice<LookedAt> look;          ///< what was looked at: cap, flue, damper, ...
    Choice<FoundState> found;       ///< good or bad, of what was looked at
    Choice<StateKind> state;        ///< high fire, low fire, ...
    Word weather;                   ///< name of one of the weathers
    Choice<WindowState> window;     ///< open or shut
    Choice<FanState> fan;           ///< running or off
    Choice<WindState> wind;         ///< windy or calm
    Word at;                        ///< "outlet", "chimney top", or the number of a part
    Given draft_pa;
    Given gas_temperature_k;
    Choice<GasReading> gas_temperature_kind; ///< "true gas" or "bare probe"
    Given surface_temperature_k;
    Given room_pressure_pa;
    Given carbon_dioxide;
    Given oxygen;
    Given moisture;
    Given deposit_m;

    bool operator==(const Observation&) const = default;
};

/// Whether a carbon monoxide alarm has sounded: nobody may light the appliance before it has been
/// examined.
[[nodiscard]] bool alarm_has_sounded(const std::vector<Observation>& seen);

/// Whether a temperature was measured at which the pipe glows or the fire is out of hand: a surface
/// at red heat, or gas over the band of sound fires. Nobody may light the appliance before it has
/// been examined.
[[nodiscard]] bool was_too_hot(const Observation& seen);

/// A point of the run by the words of an observation: 0 the outlet and where none is named, n the
/// far end of part n, `parts` + 1 the chimney top.
[[nodiscard]] std::size_t point_of(const Word& at, std::size_t parts);

/// What still holds of what was seen once the run has been changed: that an alarm has sounded or
/// the run was too hot, since no change in a file says that its cause is gone, or what it left
/// behind; how thick the deposit is, which only a sweep takes out; and what was measured of the
/// room, which other air alone changes.
[[nodiscard]] std::vector<Observation> seen_of_changed_run(const std::vector<Observation>& seen);

} // namespace fluewright
