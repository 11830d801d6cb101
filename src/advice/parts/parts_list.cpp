#include "fluewright/advice/parts/parts_list.hpp"

#include "box.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/advice/verdict.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "small.hpp"
#include "stretches.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// What was checked of the run, as its list tells it.
PartsList told(const Checked& checked, UnitSystem units) {
    PartsList list;
    list.dangers = present_dangers(checked);
    list.not_decided = fire_not_decided(checked, units);
    std::vector<const Matter*> short_of_draft;
    for (const Finding& finding : checked.findings) {
        const Matter* matter = finding.matter;
        if (finding.harm == Harm::draft && finding.severity <= Severity::failure
            && std::find(short_of_draft.begin(), short_of_draft.end(), matter)
                   == short_of_draft.end()) {
            short_of_draft.push_back(matter);
        }
    }
    if (!short_of_draft.empty()) {
        list.falls_short = "It falls short as it is drawn here: " + titles_of(short_of_draft)
                           + ". Buy nothing before `fluewright check` and `fluewright improve` "
                             "have been read.";
    }
    return list;
}

void fill(const Installation& written,
          const Case& resolved,
          const Solution& solution,
          const PartsWishes& wishes,
          const Findings& findings,
          PartsList& list) {
    std::vector<StockPiece> stock = written.stock;
    stock.insert(stock.end(), wishes.at_hand.begin(), wishes.at_hand.end());
    const checking::View view{written, resolved, &solution};
    std::vector<double> had;
    had.reserve(stock.size());
    for (const StockPiece& piece : stock) {
        had.push_back(piece.count.value_or(0.0));
    }
    const parts::Job job{view,
                         stock,
                         list,
                         had,
                         wishes.prices,
                         wishes.thermometer,
                         wishes.from_box,
                         solution,
                         findings};
    list.joints = joints_of(resolved);
    list.from_box = wishes.from_box;
    parts::stretches(job);
    parts::growth(job);
    parts::cuts(job);
    parts::settle_growth(job);
    parts::pipe_lines(job);
    parts::small_lines(job);
    parts::leftovers(job);
    parts::price_lines(job);
    for (const PartsLine& line : list.lines) {
        list.weight_kg += line.weight_kg;
    }
    list.assumed.emplace_back("elbows and tees of usual build: hold a real one against the figures "
                              "before cutting");
    const auto shown = [&](double length_m) { return view.show(length_m, Kind::length); };
    const bool adapted = std::any_of(list.joints.joints.begin(),
                                     list.joints.joints.end(),
                                     [](const Joint& j) { return !j.bought_adapter().empty(); });
    const bool reduced =
        std::any_of(view.pieces.begin(), view.pieces.end(), [](const checking::Piece& piece) {
            return piece.run_part->changes_size() && !piece.part->taper_length_m;
        });
    if (adapted || reduced) {
        list.assumed.emplace_back("an adapter, and a reducer of which the file tells no length, "
                                  "adds "
                                  + shown(parts::adapter_lays_m) + " to the run (judgement)");
    }
    if (std::any_of(view.pieces.begin(), view.pieces.end(), [&](const checking::Piece& piece) {
            return parts::takes_a_tee(job, piece);
        })) {
        list.assumed.emplace_back("a draft regulator stands on a tee, which the file does not "
                                  "name: the cuts leave room for one of usual build");
    }
    if (!list.cuts.empty()) {
        list.assumed.emplace_back("each cut takes "
                                  + shown(catalog::default_of(DefaultId::cut_loss_m).value)
                                  + "; of several pieces in a straight none lays less than "
                                  + shown(parts::stub_m) + " (judgement)");
    }
    if (std::any_of(list.stretches.begin(), list.stretches.end(), [](const PipeStretch& s) {
            return s.to_top && (s.kind == WallKind::insulated || s.kind == WallKind::double_wall);
        })) {
        list.assumed.emplace_back("what cannot be cut may end up to "
                                  + shown(parts::taller_is_fine_m)
                                  + " higher at the chimney top (judgement)");
    }
    for (const PartEnds& ends : list.joints.parts) {
        if (ends.heater.assumed || ends.chimney.assumed) {
            list.assumed.emplace_back(
                "ends of pipe as usual for their wall (the crimped end towards the heater); say "
                "`heater_end` and `chimney_end` where yours differ");
            break;
        }
    }
}

} // namespace

PartsList parts_list(const Installation& written,
                     const Case& resolved,
                     const Solution& solution,
                     const PartsWishes& wishes) {
    const Checked checked = checks_of_file(written, resolved, solution);
    PartsList list = told(checked, resolved.units);
    fill(written, resolved, solution, wishes, checked.findings, list);
    return list;
}

PartsList
parts_list(const Installation& written, const Assessment& assessment, const PartsWishes& wishes) {
    const Case& resolved = assessment.installation;
    PartsList list =
        told({assessment.body, assessment.checks, assessment.findings}, resolved.units);
    fill(written, resolved, assessment.solution, wishes, assessment.findings, list);
    return list;
}

} // namespace fluewright
