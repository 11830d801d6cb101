#include "fluewright/model/fields/fields.hpp"

#include <algorithm>

namespace fluewright {
namespace {

using Homes = std::vector<std::string>;

template <class T>
void look_for_key(T& object, std::string_view key, const std::string& path, Homes& homes);

template <class T>
void look_for_key(std::vector<T>& /*list*/,
                  std::string_view key,
                  const std::string& path,
                  Homes& homes) {
    T entry;
    look_for_key(entry, key, path, homes);
}

template <class T>
void look_for_key(T& object, std::string_view key, const std::string& path, Homes& homes) {
    bool here = find_field<T>(key) != nullptr;
    for_each_child(object, [&](const ChildInfo& child, auto& member) {
        here = here || child.key == key;
        std::string below = path;
        below += path.empty() ? "" : ".";
        below += child.key;
        look_for_key(member, key, below, homes);
    });
    if (here && !path.empty()) {
        homes.push_back(path);
    }
}

using NumberKinds = std::vector<Kind>;

template <class T>
void look_for_kinds(T& object, std::string_view key, NumberKinds& kinds);

template <class T>
void look_for_kinds(std::vector<T>& /*list*/, std::string_view key, NumberKinds& kinds) {
    T entry;
    look_for_kinds(entry, key, kinds);
}

template <class T>
void look_for_kinds(T& object, std::string_view key, NumberKinds& kinds) {
    for (const auto& field : fields<T>()) {
        const bool number = std::holds_alternative<Given T::*>(field.member)
                            || std::holds_alternative<HighLow T::*>(field.member);
        if (number && field.info.key == key
            && std::find(kinds.begin(), kinds.end(), field.info.kind) == kinds.end()) {
            kinds.push_back(field.info.kind);
        }
    }
    for_each_child(object, [&](const ChildInfo& /*child*/, auto& member) {
        look_for_kinds(member, key, kinds);
    });
}

} // namespace

std::vector<Kind> kinds_of_number(std::string_view key) {
    Installation installation;
    NumberKinds kinds;
    look_for_kinds(installation, key, kinds);
    return kinds;
}

std::vector<std::string> homes_of_key(std::string_view key) {
    Installation installation;
    Homes homes;
    look_for_key(installation, key, "", homes);
    return homes;
}

} // namespace fluewright
