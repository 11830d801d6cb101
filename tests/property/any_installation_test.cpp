#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "trial.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <string>
#include <vector>

using namespace fluewright;
using namespace fluewright::property;

namespace {

/// A place of an installation that may be set to something the field table allows, or to something
/// it does not.
struct AnyPlace {
    std::string pointer;
    std::function<void(Random&)> set;
    std::function<void(Random&)> spoil; ///< empty where nothing is wrong, as for a flag
};

double wrong_number(const FieldInfo& info, Random& random) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    const double span = info.highest - info.lowest;
    const std::array wrong{std::numeric_limits<double>::quiet_NaN(),
                           infinity,
                           -infinity,
                           std::numeric_limits<double>::max(),
                           info.lowest - random.between_by_ratio(1e-6, 1e3) * span,
                           info.highest + random.between_by_ratio(1e-6, 1e3) * span};
    return random.one_of(wrong);
}

double allowed_number(const FieldInfo& info, Random& random) {
    if (random.chance(0.1)) {
        return info.highest;
    }
    return random.chance(0.1) && !info.above_lowest
               ? info.lowest
               : info.highest - (info.highest - info.lowest) * random.between(0.0, 1.0);
}

/// A name in letters and blanks of its own.
std::string retyped(std::string text, Random& random) {
    for (char& letter : text) {
        if (random.chance(0.3) && letter >= 'a' && letter <= 'z') {
            letter = static_cast<char>(letter - 'a' + 'A');
        }
    }
    return random.chance(0.2) ? "  " + text + "\t" : text;
}

template <class Rows>
std::string any_id(const Rows& rows, Random& random) {
    return retyped(std::string{random.one_of(rows).id}, random);
}

class AnyPlaces {
public:
    explicit AnyPlaces(Installation& whole) : whole_{whole} { add_object(whole, ""); }

    std::vector<AnyPlace> list;

private:
    template <class T>
    void add_object(T& object, const std::string& pointer) {
        for (const Field<T>& field : fields<T>()) {
            if ((field.info.parts & kinds_of(object)) != 0U) {
                add_field(object, field, pointer + '/' + std::string{field.info.key});
            }
        }
        for_each_child(object, [&](const ChildInfo& child, auto& member) {
            add_child(member, pointer + '/' + std::string{child.key});
        });
    }

    template <class T>
    void add_child(T& object, const std::string& pointer) {
        add_object(object, pointer);
    }

    template <class T>
    void add_child(std::vector<T>& entries, const std::string& pointer) {
        for (std::size_t i = 0; i < entries.size(); ++i) {
            std::string step = std::to_string(i);
            if constexpr (Named<T>) {
                step = pointer_step(entries[i].id);
            }
            add_object(entries[i], pointer + '/' + step);
        }
    }

    void add_number(Given& number, const FieldInfo& info, const std::string& pointer) {
        list.push_back({pointer,
                        [&](Random& random) { number = allowed_number(info, random); },
                        [&](Random& random) { number = wrong_number(info, random); }});
    }

    template <class T>
    void add_field(T& object, const Field<T>& field, const std::string& pointer) {
        const FieldInfo& info = field.info;
        if (const auto* given = std::get_if<Given T::*>(&field.member)) {
            add_number(object.**given, info, pointer);
        } else if (const auto* pair = std::get_if<HighLow T::*>(&field.member)) {
            add_number((object.**pair).low, info, pointer + "/low");
            add_number((object.**pair).high, info, pointer + "/high");
        } else if (const auto* flag = std::get_if<Flag T::*>(&field.member)) {
            Flag& value = object.**flag;
            list.push_back({pointer, [&](Random& random) { value = random.chance(0.5); }, {}});
        } else if (const auto* word = std::get_if<Word T::*>(&field.member)) {
            Word& value = object.**word;
            list.push_back({pointer,
                            [&](Random& random) { value = any_word(info.words, random); },
                            [&](Random& random) {
                                const bool closed =
                                    info.words != Words::any_text && info.words != Words::materials;
                                value = closed && random.chance(0.5) ? "no such name" : "";
                            }});
        } else if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
            list.push_back({pointer,
                            [&, choice](Random& random) {
                                choice->set(object,
                                            place_of(random.one_of(info.choices), choice->words));
                            },
                            [&, choice](Random& random) {
                                choice->set(object, choice->words.size() + random.index(100));
                            }});
        }
    }

    std::string any_word(Words words, Random& random) const {
        switch (words) {
        case Words::fuels:
            return !whole_.fuels.empty() && random.chance(0.3) ? any_id(whole_.fuels, random)
                                                               : any_id(catalog::fuels(), random);
        case Words::walls:
            return !whole_.walls.empty() && random.chance(0.3) ? any_id(whole_.walls, random)
                                                               : any_id(catalog::walls(), random);
        case Words::fittings:
            return !whole_.fittings.empty() && random.chance(0.3)
                       ? any_id(whole_.fittings, random)
                       : any_id(catalog::fittings(), random);
        case Words::clay_liners:
            return any_id(catalog::clay_liners(), random);
        case Words::materials:
            return random.chance(0.2) ? "Air Gap" : any_id(catalog::materials(), random);
        case Words::any_text:
        case Words::choices:
            break;
        }
        return "any text";
    }

    Installation& whole_;
};

/// An installation with entries in every list, most of which the generator of plausible ones leaves
/// empty, and some of whose values are drawn anew from the table.
Installation any_installation(Random& random, std::uint64_t seed) {
    Installation made = random_installation(seed);
    const auto lengthen = [&](auto& entries) {
        // An entry lacks what it must have until that is drawn for it.
        if (random.chance(0.04)) {
            entries.emplace_back();
        }
    };
    lengthen(made.run);
    lengthen(made.site.weather);
    lengthen(made.site.roof.near);
    lengthen(made.site.house.fans);
    lengthen(made.site.house.openings);
    lengthen(made.observed);
    lengthen(made.burn);
    lengthen(made.building.parts);
    lengthen(made.stock);
    const auto name_one = [&](auto& entries, const char* name) {
        lengthen(entries);
        if (!entries.empty() && entries.back().id.empty()) {
            entries.back().id = name;
        }
    };
    name_one(made.fuels, "my own fuel");
    name_one(made.walls, "my own wall");
    name_one(made.fittings, "my own fitting");
    const double share = random.one_of(std::array{0.0, 0.003, 0.02, 0.3});
    // The kind of a part decides which keys it has, so the kinds come first.
    for (Part& part : made.run) {
        if (!part.part || random.chance(0.1 * share)) {
            part.part = static_cast<PartKind>(random.index(part_kind::names().size()));
        }
    }
    for (AnyPlace& place : AnyPlaces{made}.list) {
        if (random.chance(share)) {
            place.set(random);
        }
    }
    return made;
}

bool are_finite(const Assessment& a) {
    return std::all_of(
        a.solution.states.begin(), a.solution.states.end(), [](const StateResult& state) {
            return std::isfinite(state.draft_pa + state.draft_needed_pa + state.capacity_kg_s
                                 + state.gas_flow_kg_s + state.gas_temperature_k
                                 + state.flow.outlet_pressure_pa + state.flow.heat_loss_w);
        });
}

} // namespace

TEST_CASE("any installation built in code is a fault with its place, or has a finite answer") {
    constexpr std::uint64_t count = some * 6;
    std::size_t answered = 0;
    std::size_t refused = 0;
    for (std::uint64_t seed = 0; seed < count; ++seed) {
        Random random{seed * 7919 + 17};
        const Installation written = any_installation(random, seed);
        AssessOptions options;
        options.size_search = false;
        const Result<Assessment, Faults> assessed = assess(written, options);
        if (assessed) {
            ++answered;
            INFO("seed " << seed << "\n" << file_text(written));
            for (const StateResult& state : assessed->solution.states) {
                UNSCOPED_INFO(name(state.kind)
                              << ": " << state.draft_pa << " Pa, " << state.gas_flow_kg_s
                              << " kg/s, " << state.gas_temperature_k << " K, "
                              << state.flow.heat_loss_w << " W");
            }
            REQUIRE(are_finite(*assessed));
            continue;
        }
        ++refused;
        REQUIRE_FALSE(assessed.error().empty());
        for (const Fault& fault : assessed.error()) {
            INFO("seed " << seed << ": " << fault.message);
            REQUIRE(fault.pointer.starts_with('/'));
            REQUIRE_FALSE(fault.message.empty());
        }
    }
    // Neither outcome is rare, or the test says little.
    REQUIRE(answered > count / 8);
    REQUIRE(refused > count / 8);
}

TEST_CASE("every wrong value is refused where it stands") {
    std::size_t held = 0;
    for (std::uint64_t seed = 0; seed < some * 6; ++seed) {
        Random random{seed * 104729 + 5};
        Installation written = any_installation(random, seed);
        if (!resolve(written)) {
            continue; // names are looked up only where the values are right
        }
        ++held;
        AnyPlaces places{written};
        const AnyPlace* place = nullptr;
        do {
            place = &random.one_of(places.list);
        } while (!place->spoil);
        place->spoil(random);
        const Result<Case, Faults> made = resolve(written);
        INFO("seed " << seed << ": " << place->pointer);
        REQUIRE_FALSE(made.has_value());
        for (const Fault& fault : made.error()) {
            UNSCOPED_INFO(fault.pointer << ": " << fault.message);
        }
        REQUIRE(std::any_of(made.error().begin(), made.error().end(), [&](const Fault& fault) {
            return fault.pointer == place->pointer;
        }));
    }
    REQUIRE(held > some);
}
