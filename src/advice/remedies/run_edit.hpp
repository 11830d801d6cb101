#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/run.hpp"

#include <optional>

/// Reading and changing a run as it is written, for those who propose other runs.
namespace fluewright::run_edit {

/// Every part says for itself what it would carry on from the part before, and the outlet its size:
/// a part can then be changed or taken out without a change to the others.
[[nodiscard]] Installation spelled_out(const Installation& written);

/// What is left out again because it carries on anyway; parts that no longer change the size go.
[[nodiscard]] Installation shortened(Installation spelled);

/// Takes reducers and increasers out that do not change the size any more, and calls the others by
/// what they do.
void settle_size_changes(Installation& spelled);

[[nodiscard]] bool is_a(const Part& part, PartKind kind);
[[nodiscard]] bool is_straight(const Part& part);
[[nodiscard]] bool is_level(const Part& part);
/// A straight written as going up, so that its height can be changed.
[[nodiscard]] bool goes_up(const Part& part);
[[nodiscard]] bool changes_size(const Part& part);
/// Whether the file states that its crimped end points up, so that what runs down runs out.
[[nodiscard]] bool lies_upside_down(const Part& part);

/// The run as resolve() understands it, part i of the one being part i of the other; empty where
/// the installation cannot be built as it stands. What a part is, where it stands and how wide it
/// is comes from here.
[[nodiscard]] std::optional<Run> run_of(const Installation& installation);

/// Makes the topmost upright longer, or shorter where `more_m` is negative, and with the chimney
/// top what the file tells of it: its height over the roof and over what stands near. False, and
/// nothing is changed, where there is no such upright or less than `least_left_m` would be left.
[[nodiscard]] bool move_top(Installation& in, double more_m, double least_left_m);

/// A part of the section, wall, zone and joints of a pipe, to be set beside it.
[[nodiscard]] Part like_pipe(const Part& pipe);

/// Whether two parts that are spelled out say the same of their section.
[[nodiscard]] bool same_section(const Part& a, const Part& b);

/// A round pipe in place of whatever section the part had.
void set_diameter(Part& part, double diameter_m);

/// New round pipe in place of a part that is spelled out: it is clean. A part of that size stays.
void set_new_pipe(Part& part, double diameter_m);

/// Pipe or chimney of another kind in place of what a part that is spelled out was made of. What
/// the file told of the old one alone goes with it, so that it is assumed, or asked, for the new
/// one: ends, sheet, screws, lap, slip joint, class, listed distance and heat of its surface. The
/// fit of its joints stays, since a part that says nothing of it takes that of the part before.
void set_wall(Part& part, const std::string& wall);

/// A new clay liner, which is clean, in place of whatever section the part had.
void set_clay_liner(Part& part, const std::string& liner);

} // namespace fluewright::run_edit
