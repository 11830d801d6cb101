#include "view.hpp"

namespace fluewright::checking {

bool is_level(const Section& section) {
    return section.length_m > 0.0 && section.rise_m < 0.5 * section.length_m;
}

bool is_upright(const Section& section) {
    return section.length_m > 0.0 && !is_level(section);
}

bool Piece::level() const {
    return is_level(*section);
}

std::string Piece::key(std::string_view name) const {
    return "/run/" + std::to_string(index) + "/" + std::string{name};
}

std::size_t chimney_start(const Case& installation) {
    const auto& sections = installation.sections;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const bool chimney_wall = is_chimney_wall(installation.walls[sections[i].wall].kind);
        if (is_upright(sections[i]) && (chimney_wall || sections[i].zone != Zone::room)) {
            return i;
        }
    }
    return sections.size();
}

std::vector<Piece> pieces_of(const Installation& written, const Case& installation) {
    std::vector<Piece> pieces;
    pieces.reserve(written.run.size());
    const std::size_t chimney_from = chimney_start(installation);
    double height_m = 0.0;
    for (std::size_t i = 0; i < installation.sections.size(); ++i) {
        const Section& section = installation.sections[i];
        height_m += section.rise_m;
        const auto index = static_cast<std::size_t>(section.part);
        if (section.part < 0 || index >= written.run.size()) {
            continue;
        }
        const Piece piece{section.part,
                          &written.run[index],
                          &section,
                          &installation.walls[section.wall],
                          i >= chimney_from,
                          height_m};
        // A sudden step is a section of its own in front of the part that makes it.
        if (!pieces.empty() && pieces.back().index == section.part) {
            pieces.back() = piece;
        } else {
            pieces.push_back(piece);
        }
    }
    return pieces;
}

std::string place_of(const Section& section) {
    if (section.part < 0) {
        return "the outlet";
    }
    if (section.kind == PartKind::cap) {
        return "the mouth";
    }
    return std::string{name(section.kind)} + " " + std::to_string(section.part + 1);
}

View::View(const Installation& in, const Case& c, const Solution* solution, bool words)
    : written{in}, installation{c}, with_words{words}, pieces{pieces_of(in, c)}, solution_{
                                                                                     solution} {}

const JointReport& View::joints() const {
    if (!joints_) {
        joints_ = joints_of(written, installation);
    }
    return *joints_;
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
    return std::string{name(state.kind)} + ", " + installation.weathers[state.weather].name;
}

} // namespace fluewright::checking
