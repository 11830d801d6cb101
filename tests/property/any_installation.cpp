#include "any_installation.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace fluewright::property {
namespace {

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
    const double span = info.highest - info.lowest;
    double value = info.highest - span * random.between(0.0, 1.0);
    if (random.chance(0.1)) {
        value = info.highest;
    } else if (random.chance(0.1) && !info.above_lowest) {
        value = info.lowest;
    } else if (random.chance(0.3)) {
        // Near the lower end by its logarithm: a hair over nought is where quotients break.
        value = info.lowest + span * random.between_by_ratio(1e-9, 1.0);
    }
    return info.whole ? std::max(std::ceil(info.lowest), std::floor(value)) : value;
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

std::string any_word(const Installation& whole, Words words, Random& random) {
    switch (words) {
    case Words::fuels:
        return !whole.fuels.empty() && random.chance(0.3) ? any_id(whole.fuels, random)
                                                          : any_id(catalog::fuels(), random);
    case Words::walls:
        return !whole.walls.empty() && random.chance(0.3) ? any_id(whole.walls, random)
                                                          : any_id(catalog::walls(), random);
    case Words::fittings:
        return !whole.fittings.empty() && random.chance(0.3) ? any_id(whole.fittings, random)
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

class Collector {
public:
    explicit Collector(Installation& whole) : whole_{whole} { add_object(whole, ""); }

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
                            [&, &whole = whole_](Random& random) {
                                value = any_word(whole, info.words, random);
                            },
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

    Installation& whole_;
};

} // namespace

std::vector<AnyPlace> any_places(Installation& whole) {
    Collector collected{whole};
    return std::move(collected.list);
}

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
    for (AnyPlace& place : any_places(made)) {
        if (random.chance(share)) {
            place.set(random);
        }
    }
    return made;
}

} // namespace fluewright::property
