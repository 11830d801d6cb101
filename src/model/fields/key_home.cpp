#include "fluewright/model/fields/fields.hpp"

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

} // namespace

std::vector<std::string> homes_of_key(std::string_view key) {
    Installation installation;
    Homes homes;
    look_for_key(installation, key, "", homes);
    return homes;
}

} // namespace fluewright
