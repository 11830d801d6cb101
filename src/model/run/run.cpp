#include "fluewright/model/run/run.hpp"

#include <cmath>

namespace fluewright {

Lie lie_of(double length_m, double rise_m) {
    if (length_m <= 0.0) {
        return Lie::none;
    }
    const double share = std::abs(rise_m) / length_m;
    if (share < level_share_most) {
        return Lie::level;
    }
    return share < upright_share_least ? Lie::sloped : Lie::upright;
}

std::string RunPart::pointer(std::string_view key) const {
    return "/run/" + std::to_string(index) + "/" + std::string{key};
}

std::optional<bool> RunPart::goes_through(Passage passage) const {
    if (passage == Passage::attic && zone.given && zone.value == Zone::attic) {
        return true;
    }
    if (written.passes) {
        return *written.passes == passage;
    }
    return std::nullopt;
}

std::string label(const RunPart& part) {
    return part.kind == PartKind::cap
               ? "the mouth"
               : std::string{name(part.kind)} + " " + std::to_string(part.index + 1);
}

std::string Run::label_at(int index) const {
    if (index < 0) {
        return "the outlet";
    }
    const RunPart* found = part(index);
    return found == nullptr ? "the mouth" : label(*found);
}

std::vector<const RunPart*> Run::of(Stretch stretch) const {
    std::vector<const RunPart*> list;
    for (const RunPart& part : parts) {
        if (part.stretch.value == stretch && part.kind != PartKind::cap) {
            list.push_back(&part);
        }
    }
    return list;
}

std::size_t Run::chimney_start() const {
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (parts[i].in_chimney()) {
            return i;
        }
    }
    return parts.size();
}

Run::Turns Run::turns(Stretch stretch) const {
    Turns turns;
    for (const RunPart& part : parts) {
        if (part.stretch.value == stretch && part.turn_rad > 0.0) {
            turns.sum_rad += part.turn_rad;
            turns.last = &part;
            ++turns.count;
        }
    }
    return turns;
}

const RunPart* Run::straight_before(const RunPart& part) const {
    for (auto i = static_cast<std::size_t>(part.index); i-- > 0;) {
        if (parts[i].has_length()) {
            return &parts[i];
        }
    }
    return nullptr;
}

const RunPart* Run::straight_behind(const RunPart& part) const {
    for (auto i = static_cast<std::size_t>(part.index) + 1; i < parts.size(); ++i) {
        if (parts[i].has_length()) {
            return &parts[i];
        }
    }
    return nullptr;
}

} // namespace fluewright
