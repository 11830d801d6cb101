#include "view.hpp"

#include "fluewright/advice/opening_words.hpp"

namespace fluewright::checking {

std::vector<Piece> pieces_of(const Installation& written, const Case& resolved) {
    std::vector<Piece> pieces;
    pieces.reserve(resolved.run.parts.size());
    for (const RunPart& part : resolved.run.parts) {
        pieces.push_back({part.index,
                          &written.run[static_cast<std::size_t>(part.index)],
                          &resolved.sections[part.section],
                          &resolved.walls[part.wall],
                          &part,
                          part.in_chimney(),
                          part.top_height_m});
    }
    return pieces;
}

View::View(const Installation& in,
           const Case& c,
           const Solution* solution,
           bool words,
           std::string_view whose)
    : written{in}, resolved{c}, with_words{words}, body{whose}, pieces{pieces_of(in, c)},
      solution_{solution}, file_units_{units_of(in)} {}

const JointReport& View::joints() const {
    if (!joints_) {
        joints_ = joints_of(resolved);
    }
    return *joints_;
}

bool View::same_as_printed(double figure, double other, Kind kind) const {
    return format_quantity(figure, kind, file_units_) == format_quantity(other, kind, file_units_);
}

bool View::reaches(double figure, double limit, Kind kind) const {
    constexpr double as_typed = 1e-12;
    constexpr double half_a_millimetre = 5e-4;  // documents round inches so
    constexpr double shortest_rounded_m = 0.02; // a sheet or a slit is not rounded so
    const bool rounds = kind == Kind::length && limit > shortest_rounded_m;
    const double rounding = rounds ? half_a_millimetre : as_typed;
    return figure >= limit - rounding || same_as_printed(figure, limit, kind);
}

bool View::solid_fuel() const {
    const FuelGroup group = heater().fuel_group;
    return group == FuelGroup::wood || group == FuelGroup::pellets || group == FuelGroup::coal;
}

namespace {

std::vector<const Piece*> stretch(const std::vector<Piece>& pieces, bool in_chimney) {
    std::vector<const Piece*> list;
    for (const Piece& piece : pieces) {
        if (piece.in_chimney == in_chimney && piece.section->kind != PartKind::cap) {
            list.push_back(&piece);
        }
    }
    return list;
}

} // namespace

std::vector<const Piece*> View::connector() const {
    return stretch(pieces, false);
}

std::vector<const Piece*> View::chimney() const {
    return stretch(pieces, true);
}

std::string View::words(const StateResult& state) const {
    return std::string{condition_word(resolved, state.kind)} + ", "
           + resolved.weathers[state.weather].name;
}

} // namespace fluewright::checking
