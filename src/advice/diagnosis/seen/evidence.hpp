#pragma once

#include "prediction.hpp"

#include <functional>
#include <string>
#include <vector>

/// One thing seen or read, and how likely it is where something is predicted.
namespace fluewright::diagnosis {

enum class Seen : std::uint8_t {
    smoke_joints,
    smoke_door,
    smoke_lighting,
    smoke_wind,
    smoke_fan,
    sluggish,
    roaring,
    drips,
    smell,
    co_alarm,
    worse,
    window,
    stick,
    look,
    draft,
    gas_temperature,
    surface_temperature,
    room_pressure,
    carbon_dioxide,
    oxygen,
    moisture,
    deposit,
};

/// Answers other than numbers.
enum class Answer : std::uint8_t { no, yes, in, out, still, over_weeks, overnight, steady };

/// Why something that was seen speaks for no cause and against none.
enum class Aside : std::uint8_t {
    no,
    deposit_measured, ///< the flue found good where a deposit to be swept was measured
    stove_out,        ///< an alarm while the appliance was out: something else may have raised it
};

struct Evidence {
    Seen seen{};
    Situation situation{};
    std::size_t point{}; ///< 0 the outlet, n behind part n, the last the chimney top
    Answer answer{Answer::yes};
    const Check* look{};       ///< what a look reveals
    double value{};            ///< of a reading, SI
    double spread{};           ///< its standard deviation, without that of the computation
    bool by_probe{};           ///< of a gas temperature: what a bare probe shows
    std::size_t observation{}; ///< index in the file's list
    Aside aside{Aside::no};

    [[nodiscard]] bool is_reading() const { return seen >= Seen::draft; }

    /// Whether it answers the question for a trouble, one way or the other.
    [[nodiscard]] bool is_complaint() const { return seen < Seen::worse; }

    [[nodiscard]] bool complains() const { return is_complaint() && answer == Answer::yes; }
};

/// The predictions of one hypothesis at one heat of the fire.
using Lookup = std::function<const Prediction&(const Situation&)>;

/// The situations a piece of evidence depends on.
[[nodiscard]] std::vector<Situation> needs(const Evidence& evidence, const Case& resolved);

/// The figure that decides: the reading predicted, or the x of the symptom's table row.
[[nodiscard]] double predicted(const Evidence& evidence, const Altered& altered, const Lookup& at);

/// How likely the evidence is where `x` is predicted; of readings a density, 1 of what is set
/// aside.
[[nodiscard]] double likelihood(const Evidence& evidence, double x, const Altered& altered);

/// Standard deviation of a reading against its prediction.
[[nodiscard]] double total_spread(const Evidence& evidence, double x, const Altered& altered);

/// The evidence in the file, entry by entry.
[[nodiscard]] std::vector<Evidence> evidence_in(const Installation& written, const Case& resolved);

/// The evidence in one entry; `index` is its place in the file's list.
[[nodiscard]] std::vector<Evidence> evidence_of(const Observation& seen,
                                                std::size_t index,
                                                const Installation& written,
                                                const Case& resolved);

/// Standard deviation of a reading whose file gives none.
[[nodiscard]] double reading_spread(Seen seen, double value, double room_k);

/// "smoke at the joints (high fire)", "draft 5 Pa at the outlet (high fire)"
[[nodiscard]] std::string words(const Evidence& evidence, const Case& resolved);

/// What is predicted, as one would say it: "5 Pa", "likely", "blown out".
[[nodiscard]] std::string
expectation_words(const Evidence& evidence, double x, double share, const Case& resolved);

/// Whether a reading lies within so many of its spreads of what is predicted.
[[nodiscard]] bool
lies_within(const Evidence& evidence, double x, double spreads, const Altered& altered);

/// Share of people who report a symptom where nothing at all points to it.
[[nodiscard]] double reported_anyway(Seen symptom);

[[nodiscard]] Kind kind_of(Seen seen);

} // namespace fluewright::diagnosis
