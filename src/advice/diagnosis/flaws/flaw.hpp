#pragma once

#include "fluewright/advice/trial/change.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// What a flaw of a design is told by: how far it goes, and the ways to take it away.
namespace fluewright::diagnosis {

/// One way to take a flaw away. Of the changes those that do something here are made, in this
/// order.
using Cure = std::vector<Change>;

/// How far an installation has a flaw, and the ways to take it away; none: it does not have it.
struct Flaw {
    double grade{}; ///< 0: only just no longer sound, 1: glaring
    std::vector<Cure> cures;
    double weight{1.0};
};

/// 0 at the value that is sound still, 1 at one that is glaring and beyond.
[[nodiscard]] inline double grade(double value, double sound, double glaring) {
    return std::clamp((value - sound) / (glaring - sound), 0.0, 1.0);
}

template <class... Changes>
[[nodiscard]] Cure cure_of(Changes... changes) {
    Cure cure;
    (cure.emplace_back(std::move(changes)), ...);
    return cure;
}

template <class... Ways>
[[nodiscard]] Flaw flaw(double grade, Ways... made) {
    Flaw found{.grade = grade, .cures = {}};
    (found.cures.push_back(std::move(made)), ...);
    return found;
}

[[nodiscard]] inline Remedy remedy(RemedyKind kind, double amount = 0.0, double other = 0.0) {
    return {.kind = kind, .amount = amount, .other = other};
}

[[nodiscard]] inline Remedy remedy(RemedyKind kind, double amount, std::string_view word) {
    return {.kind = kind, .amount = amount, .word = std::string{word}};
}

} // namespace fluewright::diagnosis
