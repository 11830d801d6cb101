#pragma once

#include "fluewright/model/run/run.hpp"
#include "resolving.hpp"

#include <optional>
#include <string>

/// The run being made, part by part, from the collar on.
namespace fluewright::resolving {

/// What carries on from part to part.
struct Carried {
    FlueBore bore; ///< clean
    std::string wall;
    bool wall_given{};
    Known<Zone> zone{Zone::room, false};
};

struct RunBuilder {
    const CaseWork& work;
    Carried now;
    int index{};
    std::string pointer;
    double height_m{}; ///< reached so far over the outlet

    /// The part's number as people count, from 1.
    [[nodiscard]] std::string number() const { return std::to_string(index + 1); }

    /// A section of the size, wall and zone that hold at this part.
    Section section(PartKind kind, const Part& written);
    /// Adds a part of the file: its RunPart and the sections it becomes.
    void add(const Part& written);

private:
    void take_over(const Part& written);
    RunPart begin(const Part& written) const;
    /// Puts a finished part and its section into the case, behind a step where the size changes.
    void finish(RunPart part, Section section, bool step_allowed);
    void close_tee(RunPart& part, Section& section) const;
    void step_if_size_changed(const Section& next) const;
    void straight(RunPart part, Section section);
    void turn(RunPart part, Section section);
    void change_of_size(RunPart part, Section section);
    void point(RunPart part, Section section);
};

/// Coefficients of parts that lose pressure at a point, on the velocity in their own section; each
/// notes what it had to assume. `part.written` says what the file has.
[[nodiscard]] double elbow_loss(const RunBuilder& builder, const RunPart& part, const Section& s);
[[nodiscard]] double tee_loss(const RunPart& part);
[[nodiscard]] double
size_change_loss(const RunBuilder& builder, const RunPart& part, double before_m2, double after_m2);
[[nodiscard]] double point_loss(const RunBuilder& builder, const RunPart& part);

/// RunPart::open_when_shut of a damper, noted where it is assumed.
[[nodiscard]] std::optional<double> open_when_shut(const RunBuilder& builder, const Part& written);

/// Turns that follow each other closely lose more than each alone.
void couple_bends(std::vector<Section>& sections);

} // namespace fluewright::resolving
