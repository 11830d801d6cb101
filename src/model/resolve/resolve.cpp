#include "fluewright/model/resolve/resolve.hpp"

#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "resolving.hpp"

namespace fluewright {

double Case::total_rise_m() const {
    return run.rise_m();
}

namespace resolving {

void CaseWork::assume(std::string_view pointer,
                      std::string_view what,
                      Kind kind,
                      double value,
                      std::string_view source,
                      std::string_view mark) const {
    made.assumptions.push_back({.pointer = std::string{pointer},
                                .what = std::string{what},
                                .kind = kind,
                                .value = value,
                                .word = {},
                                .source = source,
                                .mark = mark});
}

void CaseWork::assume_word(std::string_view pointer,
                           std::string_view what,
                           std::string_view word,
                           std::string_view source,
                           std::string_view mark) const {
    made.assumptions.push_back({.pointer = std::string{pointer},
                                .what = std::string{what},
                                .kind = Kind::number,
                                .value = 0.0,
                                .word = std::string{word},
                                .source = source,
                                .mark = mark});
}

double CaseWork::value_or_default(const Given& given,
                                  std::string_view pointer,
                                  std::string_view what,
                                  Kind kind,
                                  DefaultId default_id) const {
    if (given) {
        return *given;
    }
    const catalog::Default& row = catalog::default_of(default_id);
    assume(pointer, what, kind, row.value, row.source, row.mark);
    return row.value;
}

void CaseWork::fault(std::string_view pointer,
                     std::string_view message,
                     std::string_view help) const {
    faults.push_back({.pointer = std::string{pointer},
                      .message = std::string{message},
                      .found = {},
                      .allowed = {},
                      .help = std::string{help}});
}

} // namespace resolving

Result<Case, Faults> resolve(const Installation& installation) {
    Faults faults = check_installation(installation);
    if (!faults.empty()) {
        return Failure{std::move(faults)};
    }
    Case made;
    const resolving::CaseWork work{installation, made, faults};
    made.title = installation.title.value_or("");
    made.units = units_of(installation);
    resolving::site(work);
    resolving::appliance(work);
    resolving::kindling(work);
    resolving::house(work);
    resolving::top_wind(work);
    resolving::run(work);
    made.walls_outdoors = has_walls_outdoors(made.run, installation.site.roof.top_above_roof_m);
    resolving::burn(work);
    resolving::joints(work);
    resolving::probe(work);
    if (!faults.empty()) {
        return Failure{std::move(faults)};
    }
    return made;
}

} // namespace fluewright
