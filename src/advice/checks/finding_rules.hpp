#pragma once

#include "fluewright/advice/assessment.hpp"

/// The rules behind the findings, in groups of one subject.
namespace fluewright::rules {

/// What a rule looks at, and where it puts what it finds.
struct Subject {
    const Case& installation;
    const Solution& solution;
    Findings& findings;
    bool with_words{true}; ///< whether anybody reads the messages; writing them takes its time

    /// Starts a finding of the table; the caller fills what it knows.
    Finding& add(std::string_view id) const;

    [[nodiscard]] std::string show(double value, Kind kind) const {
        return with_words ? format_quantity(value, kind, installation.units) : std::string{};
    }

    /// "high fire, frost"
    [[nodiscard]] std::string words(const StateResult& state) const;

    /// "elbow 2", "the mouth": parts are numbered as in the file, from 1.
    [[nodiscard]] std::string place_of(const Section& section) const;
};

void draft(const Subject& subject);    ///< short, too strong, reversed, smoke at joints and door
void sizes(const Subject& subject);    ///< areas against the outlet and along the run
void heat(const Subject& subject);     ///< dew point, tar, ratings, lengthening
void shape(const Subject& subject);    ///< level runs, turns, cleanout, height
void house(const Subject& subject);    ///< starved, fans, wind, leaking joints and hoods
void doubtful(const Subject& subject); ///< input far from what is usual

/// Index of the first section of the chimney: the first upright part outdoors, in masonry or with
/// an insulated wall; what lies before it is the connector.
[[nodiscard]] std::size_t chimney_start(const Case& installation);

} // namespace fluewright::rules
