#pragma once

#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/model/run/case.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Which changes could do something to an installation: by topic, each in the file of its name.
namespace fluewright {

/// Gathers the changes that do something to one installation.
class Offer {
public:
    Offer(const Installation& written, const Case& present);

    std::vector<Remedy> take() && { return std::move(remedies_); }

    void passage(); ///< remedy_offer.cpp
    void fire();    ///< offer_fire.cpp
    void shape();   ///< remedy_offer.cpp
    void pipe();    ///< offer_pipe.cpp
    void damper();  ///< remedy_offer.cpp

private:
    void add(Remedy remedy);

    [[nodiscard]] std::string show(double value, Kind kind) const {
        return format_quantity(value, kind, case_.units);
    }

    [[nodiscard]] bool us() const { return case_.units == UnitSystem::us; }

    void sizes(RemedyKind kind, std::size_t begin, std::size_t end, std::string_view what);
    void raise();
    void house();
    void hearth();
    void liners();
    void caps();

    Installation before_;    ///< spelled out
    std::optional<Run> run_; ///< of before_, part for part
    const Case& case_;
    std::vector<Remedy> remedies_;
};

} // namespace fluewright
