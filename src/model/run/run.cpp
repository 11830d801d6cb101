#include "fluewright/model/run/run.hpp"

#include <algorithm>
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

StraightShape shape_of(const Part& written) {
    if (written.part != PartKind::straight) {
        return {};
    }
    StraightShape shape;
    if (written.across_m) {
        shape.plan_m = *written.across_m;
        shape.rise_m = written.rise_m.value_or(written.slope.value_or(0.0) * shape.plan_m);
        shape.length_m = std::hypot(shape.plan_m, shape.rise_m);
    } else {
        shape.rise_m = written.up_m ? *written.up_m : -written.down_m.value_or(0.0);
        shape.length_m = std::abs(shape.rise_m);
    }
    shape.lie = lie_of(shape.length_m, shape.rise_m);
    return shape;
}

double rise_of(std::span<const Part> written) {
    double sum_m = 0.0;
    for (const Part& part : written) {
        sum_m += shape_of(part).rise_m;
    }
    return sum_m;
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
               ? "the chimney top"
               : std::string{name(part.kind)} + " " + std::to_string(part.index + 1);
}

std::string Run::label_at(int index) const {
    if (index < 0) {
        return "the outlet";
    }
    const RunPart* found = part(index);
    return found == nullptr ? "the chimney top" : label(*found);
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

const RunPart* Run::last_straight() const {
    const auto last = std::find_if(
        parts.rbegin(), parts.rend(), [](const RunPart& part) { return part.has_length(); });
    return last == parts.rend() ? nullptr : &*last;
}

bool has_walls_outdoors(const Run& run, const Given& top_above_roof_m) {
    constexpr double turns_out_rad = 1.0;
    constexpr double slack_m = 0.5; // the low side of a chimney stands deeper than its high side
    double outdoors_m = 0.0;
    double turned_rad = 0.0; // since the last part with a length
    const RunPart* before = nullptr;
    bool sideways = false;
    for (const RunPart& part : run.parts) {
        turned_rad += part.turn_rad;
        if (!part.has_length()) {
            continue;
        }
        if (part.in_chimney() && part.zone.value == Zone::outdoors) {
            const bool first = outdoors_m <= 0.0;
            const bool aside = before == nullptr || before->level() || turned_rad > turns_out_rad;
            sideways = sideways || (first && aside);
            outdoors_m += part.length_m;
        }
        before = &part;
        turned_rad = 0.0;
    }
    return sideways || (top_above_roof_m && outdoors_m > *top_above_roof_m + slack_m);
}

} // namespace fluewright
