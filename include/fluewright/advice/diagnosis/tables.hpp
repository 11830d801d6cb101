#pragma once

#include "fluewright/advice/diagnosis/cause_id.hpp"
#include "fluewright/advice/diagnosis/reading_id.hpp"
#include "fluewright/advice/diagnosis/symptom_id.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

/// The tables of data/ that diagnosis rests on.
namespace fluewright::diagnosis {

struct Cause {
    std::string_view id;
    std::string_view title;
    std::string_view
        kind;        ///< none, hidden (the file does not know of it) or design (it is built so)
    double prior;    ///< weight before anything was seen
    double size_low; ///< of a hidden cause, in SI
    double size_high;
    std::string_view scale;     ///< spacing of the sizes tried: even, log or free
    std::string_view size_kind; ///< name of a Kind
    std::string_view size_what; ///< what a size counts: "of the section blocked"
    double over_weeks;          ///< share of cases that grow over weeks
    double overnight;           ///< share of cases that come overnight
    std::string_view mechanism;
    std::string_view remedy;
    std::string_view burner_remedy; ///< at a burner; empty: as `remedy`
    std::string_view confirm;       ///< id of the check that settles it
    std::string_view told;          ///< "symptom:pages|symptom:pages", of a flaw of the design
    std::string_view kinds;         ///< kinds of heater it can be the cause at: applies_to()
    std::string_view source;
    std::string_view mark;
};

struct Check {
    std::string_view id;
    std::string_view kind;  ///< what is learnt by it
    std::string_view look;  ///< what is looked at, where it is a look
    std::string_view state; ///< how it is fired, where that matters
    std::string_view fire;  ///< "yes": the appliance has to burn for it, "no": it stays cold
    double effort;
    std::string_view title;
    std::string_view how;
    std::string_view reveals; ///< "cause:share|cause:share", for a look
    double false_alarm;
    std::string_view kinds; ///< kinds of heater it is asked at: applies_to()
    std::string_view source;
    std::string_view mark;
};

/// Standard deviations: of the reading, where the file gives none, and of the computation.
struct Reading {
    std::string_view id;
    double absolute;
    double relative;
    double model_absolute;
    double model_relative;
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

/// Share of people who report a symptom over a computed figure x.
/// [theory eq. 65]
struct Symptom {
    std::string_view id;
    double threshold;
    double softness;
    double least;
    double most;
    std::string_view x;
    std::string_view source;
    std::string_view mark;

    /// least + (most - least) / (1 + exp((threshold - x) / softness))
    [[nodiscard]] double share(double value) const;
};

[[nodiscard]] std::span<const Cause> causes();
[[nodiscard]] std::span<const Check> checks();
[[nodiscard]] std::span<const Reading> readings();
[[nodiscard]] std::span<const Symptom> symptoms();

/// By id; null for none.
[[nodiscard]] const Cause* find_cause(std::string_view id);
[[nodiscard]] const Check* find_check(std::string_view id);

[[nodiscard]] const Cause& cause_of(CauseId id);

/// What cures a cause at a kind of heater.
[[nodiscard]] std::string_view remedy_at(const Cause& cause, HeaterKind kind);

/// Of a row of causes().
[[nodiscard]] CauseId id_of(const Cause& cause);
[[nodiscard]] const Reading& reading_of(ReadingId id);
[[nodiscard]] const Symptom& symptom_of(SymptomId id);

/// Share of cases of a cause in which a look finds something; the false alarms where it does not
/// reveal that cause.
[[nodiscard]] double found_share(const Check& look, std::string_view cause);

/// How many of the collected pages name a flaw of the design as a reason of a symptom; 0 where it
/// cannot be one, empty where nothing is known of it.
[[nodiscard]] std::optional<double> pages_telling(const Cause& flaw, std::string_view symptom);

} // namespace fluewright::diagnosis
