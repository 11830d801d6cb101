#include "shown.hpp"

#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "fluewright/advice/upkeep/maintenance.hpp"
#include "io/report/check_parts.hpp"
#include "io/report/parts/cut_sheet.hpp"
#include "io/results/state_rows.hpp"
#include "io/results/text_columns.hpp"
#include "io/text/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/core.h>

namespace fluewright::drawing {
namespace {

struct Color {
    double red, green, blue;
};

/// Luminance falls evenly from the first to the last.
constexpr std::array<Color, 6> ramp_stops{{{255, 243, 191},
                                           {250, 199, 108},
                                           {236, 141, 77},
                                           {203, 80, 84},
                                           {130, 45, 103},
                                           {52, 22, 82}}};

constexpr std::array<double, 3> grade_shares{0.08, 0.45, 0.85};

/// The station at the far end of a section; null where the state has none.
const Station* station_of(const StateResult& state, std::size_t section) {
    const auto found =
        std::find_if(state.stations.begin() + (state.stations.empty() ? 0 : 1),
                     state.stations.end(),
                     [section](const Station& station) { return station.section == section; });
    return found == state.stations.end() ? nullptr : &*found;
}

class Subject {
public:
    Subject(const Installation& written,
            const Assessment& assessment,
            const Elevation& elevation,
            const DrawOptions& options)
        : written_(written), a_(assessment), e_(elevation), options_(options) {
        style_.units = a_.installation.units;
    }

    Shown made() {
        out_.show = options_.show;
        out_.state = options_.state != nullptr ? options_.state : drawn_state(a_, options_.show);
        out_.tints.resize(e_.parts.size());
        out_.notes.resize(e_.parts.size());
        switch (options_.show) {
        case Show::temperature:
        case Show::surface:
        case Show::pressure:
            figures();
            break;
        case Show::creosote:
            creosote();
            break;
        case Show::cut_list:
            cuts();
            break;
        }
        return std::move(out_);
    }

private:
    [[nodiscard]] Kind kind() const {
        return out_.show == Show::pressure ? Kind::pressure : Kind::temperature;
    }

    void figures() {
        out_.unit = chart::unit_scale(kind(), customary_unit(kind(), style_.units));
        const std::string_view what = out_.show == Show::temperature ? "Gas temperature"
                                      : out_.show == Show::surface
                                          ? "Temperature of the outside of the pipe"
                                          : "Pressure in the flue against the air round it";
        if (out_.state == nullptr) {
            out_.caption = fmt::format("{}: no condition has figures along the run", what);
            return;
        }
        out_.caption =
            fmt::format("{}: {}", what, report::state_words(a_.installation, *out_.state));
        out_.asides = "Figures beside the parts hold at their end towards the chimney top.";
        for (std::size_t i = 0; i < e_.parts.size(); ++i) {
            out_.tints[i] = tint(e_.parts[i]);
            out_.notes[i] = note(e_.parts[i]);
        }
        as_the_pipe_beside();
        find_range();
    }

    /// A part that has no wall of its own is as the pipe before it.
    void as_the_pipe_beside() {
        for (std::size_t i = 1; i < out_.tints.size(); ++i) {
            if (!out_.tints[i].from) {
                out_.tints[i] = {out_.tints[i - 1].to, out_.tints[i - 1].to};
            }
        }
    }

    [[nodiscard]] Tint tint(const DrawnPart& part) const {
        const StateResult& state = *out_.state;
        const Station* end = station_of(state, part.section);
        if (end == nullptr) {
            return {};
        }
        const Station* before = end - 1;
        switch (out_.show) {
        case Show::temperature:
            return {before->gas_temperature_k, end->gas_temperature_k};
        case Show::pressure:
            return {end->joint_pressure_pa, end->pressure_in_zone_pa};
        default: {
            const Section& section = a_.installation.sections[part.section];
            const auto range = surface_range(a_.installation, state, section);
            if (!range) {
                return {};
            }
            const bool cools = before->gas_temperature_k >= end->gas_temperature_k;
            return cools ? Tint{range->hottest_k, range->coldest_k}
                         : Tint{range->coldest_k, range->hottest_k};
        }
        }
    }

    /// The figures of the part in the words and digits of the profile.
    [[nodiscard]] std::string note(const DrawnPart& part) const {
        const results::StateRow row{
            a_.installation,
            *out_.state,
            a_.verdicts[static_cast<std::size_t>(out_.state - a_.solution.states.data())]};
        const Station* end = station_of(*out_.state, part.section);
        if (end == nullptr) {
            return {};
        }
        const results::StationRow station{
            row, static_cast<std::size_t>(end - out_.state->stations.data())};
        const auto told = [&](std::string_view key, std::string_view word) -> std::string {
            const auto& column = results::column_of<results::StationRow>(key);
            const json::Value value = column.get(station);
            return value.number() ? fmt::format(
                       "{} {}",
                       word,
                       column.info().shows_sign
                           ? report::signed_quantity(*value.number(), column.info().kind, style_)
                           : results::text_quantity(column.info(), value, style_))
                                  : std::string{};
        };
        std::string words;
        const auto add = [&](const std::string& more) {
            words += (words.empty() || more.empty() ? "" : ", ") + more;
        };
        if (out_.show == Show::pressure) {
            add(told("pressure_in_zone_pa", "pressure"));
            return words;
        }
        if (!part.has_length() && part.part->kind != PartKind::cap) {
            return {}; // as the pipe beside it
        }
        add(told("gas_temperature_k", "gas"));
        add(told("inner_wall_k", "inside"));
        add(told("outer_wall_k", "outside"));
        return words;
    }

    void find_range() {
        std::vector<double> all;
        for (const Tint& t : out_.tints) {
            for (const auto& value : {t.from, t.to}) {
                if (value) {
                    all.push_back(out_.unit.shown(*value));
                }
            }
        }
        if (out_.show == Show::pressure) {
            all.push_back(0.0);
        }
        chart::Axis axis = chart::axis_over(all, {});
        axis.start_px = 0.0;
        constexpr double wanted_px = 350.0;
        axis.end_px = wanted_px;
        axis.round_out();
        out_.low = axis.low;
        out_.high = axis.high;
    }

    void creosote() {
        const Maintenance upkeep = maintenance(written_, a_.installation, a_.solution);
        if (!upkeep.applies) {
            out_.caption = "Deposit: this fuel leaves none that a sweep looks for";
            return;
        }
        out_.caption = "Where deposit will settle, by the inner wall at low and high fire";
        for (std::size_t i = 0; i < e_.parts.size(); ++i) {
            const RunPart* part = e_.parts[i].part;
            const auto found = std::find_if(
                upkeep.parts.begin(), upkeep.parts.end(), [part](const PartDeposit& deposit) {
                    return deposit.part == part->index;
                });
            if (found == upkeep.parts.end()) {
                continue;
            }
            const auto grade = static_cast<double>(found->risk);
            out_.tints[i] = {grade, grade};
            out_.notes[i] = fmt::format("{} risk: {}", name(found->risk), found->reason);
        }
        as_the_pipe_beside();
    }

    void cuts() {
        out_.caption = "What to cut: pieces as they are laid, overall lengths with the lap";
        if (options_.parts == nullptr) {
            return;
        }
        for (std::size_t i = 0; i < e_.parts.size(); ++i) {
            for (const PipeStretch& stretch : options_.parts->stretches) {
                if (e_.parts[i].has_length() && !stretch.parts.empty()
                    && stretch.parts.front() == e_.parts[i].part->index) {
                    out_.notes[i] = words_of(stretch);
                }
            }
        }
    }

    [[nodiscard]] std::string words_of(const PipeStretch& stretch) const {
        std::string words;
        for (const StretchPiece& piece : stretch.pieces) {
            words += words.empty() ? "" : " + ";
            words += report::mark_words(piece.length_m, style_.units);
            words += piece.is_cut ? " cut" : piece.telescopes ? " telescoping" : "";
        }
        const bool several = stretch.parts.size() > 1;
        return (several ? stretch.place + ": " : "") + (words.empty() ? stretch.note : words);
    }

    const Installation& written_;
    const Assessment& a_;
    const Elevation& e_;
    const DrawOptions& options_;
    Style style_;
    Shown out_;
};

std::string_view way_of(const RunPart& part) {
    return part.level()              ? "across"
           : part.lie == Lie::sloped ? "sloping"
           : part.rise_m < 0.0       ? "down"
                                     : "up";
}

} // namespace

std::string ramp(double share) {
    const double at = std::clamp(share, 0.0, 1.0) * (ramp_stops.size() - 1);
    const auto stop = std::min(static_cast<std::size_t>(at), ramp_stops.size() - 2);
    const double part = at - static_cast<double>(stop);
    const auto mixed = [&](double Color::*channel) {
        return static_cast<int>(std::lround((1.0 - part) * (ramp_stops[stop].*channel)
                                            + part * (ramp_stops[stop + 1].*channel)));
    };
    return fmt::format(
        "#{:02x}{:02x}{:02x}", mixed(&Color::red), mixed(&Color::green), mixed(&Color::blue));
}

std::string grade_color(std::size_t grade) {
    return ramp(grade_shares[std::min(grade, grade_shares.size() - 1)]);
}

std::string Shown::color(double si) const {
    return show == Show::creosote ? grade_color(static_cast<std::size_t>(si))
                                  : ramp((unit.shown(si) - low) / (high - low));
}

Shown shown_of(const Installation& written,
               const Assessment& assessment,
               const Elevation& elevation,
               const DrawOptions& options) {
    return Subject{written, assessment, elevation, options}.made();
}

std::string part_words(const Case& resolved,
                       const Elevation& elevation,
                       std::size_t index,
                       const Style& style) {
    const RunPart& part = *elevation.parts[index].part;
    std::string words = label(part);
    if (part.has_length()) {
        words += fmt::format(
            ", {} {}", way_of(part), report::quantity(part.length_m, Kind::length, style));
    }
    if (part.turn_rad > 0.0) {
        words += ", " + report::quantity(part.turn_rad, Kind::angle, style);
    }
    if (part.kind == PartKind::elbow) {
        words += fmt::format(", {}", name(part.build.value));
    }
    if (part.kind == PartKind::cap) {
        words += fmt::format(", {} {}", name(part.build.value), part.bare_end() ? "end" : "cap");
    }
    if (part.cleanout) {
        words += ", cleanout";
    }
    const RunPart* before = index > 0 ? elevation.parts[index - 1].part : nullptr;
    const bool has_size = part.has_length() || part.changes_size();
    const std::string size = bore_name(part.bore, style.units);
    if (has_size && (before == nullptr || bore_name(before->bore, style.units) != size)) {
        words += ", " + size;
    }
    const std::string& wall = resolved.walls[part.wall].name;
    if (part.has_length() && (before == nullptr || resolved.walls[before->wall].name != wall)) {
        words += ", " + wall;
    }
    if (part.written.clearance_m) {
        words += fmt::format(", {} to combustibles",
                             report::quantity(*part.written.clearance_m, Kind::length, style));
    }
    return words;
}

} // namespace fluewright::drawing
