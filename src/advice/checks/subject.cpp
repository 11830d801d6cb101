#include "subject.hpp"

namespace fluewright::checking {

Subject::Subject(const View& of, CheckResults& results)
    : view{of}, resolved{of.resolved}, results_{results} {}

CheckResult* Subject::hold(std::size_t own_check, bool met, const Held& held, const Where& where) {
    Made& made = made_[own_check];
    made.done = true;
    if (met) {
        const bool nearer =
            made.nearest < 0
            || results_[static_cast<std::size_t>(made.nearest)].weight < held.weight;
        if (!with_words() || made.failed || !nearer) {
            return nullptr;
        }
    }
    made.failed = made.failed || !met;
    const bool again = met && made.nearest >= 0;
    CheckResult& result =
        again ? results_[static_cast<std::size_t>(made.nearest)] : results_.emplace_back();
    if (met && !again) {
        made.nearest = static_cast<int>(results_.size()) - 1;
    }
    result.check = &checks()[own_check];
    result.outcome = met ? CheckOutcome::met : CheckOutcome::not_met;
    result.place = where.section != nullptr ? resolved.run.label_at(where.section->part)
                                            : std::string{where.place};
    result.part = where.section != nullptr ? where.section->part : -1;
    result.state = where.state != nullptr ? view.words(*where.state) : std::string{};
    result.kind = held.kind;
    result.figure = held.figure;
    result.limit = held.limit;
    result.weight = held.weight;
    last_ = met ? last_ : held;
    return met ? nullptr : &result;
}

double Subject::wind_on_top_pa(const StateResult& state) const {
    return surroundings_of(resolved, state.weather, Fire::burning).top_pressure_pa;
}

std::string Subject::show(double value, Kind kind) const {
    if (!with_words() || !last_.figure || !last_.limit || kind != last_.kind) {
        return view.show(value, kind);
    }
    // A message may tell both with their signs turned: so far below outdoors.
    for (const double sign : {1.0, -1.0}) {
        const double figure = sign * *last_.figure;
        const double limit = sign * *last_.limit;
        if (value == figure || value == limit) {
            const ShownApart apart = format_apart(figure, limit, kind, resolved.units);
            return value == figure ? apart.figure : apart.limit;
        }
    }
    return view.show(value, kind);
}

} // namespace fluewright::checking
