#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/words_at.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// Every kind of object a file may hold, each with the keys that lead to it.
template <class T, class Visit>
void each_object(T& object, const std::string& path, const Visit& visit);

template <class T, class Visit>
void each_object(std::vector<T>& /*list*/, const std::string& path, const Visit& visit) {
    T entry;
    each_object(entry, path, visit);
}

template <class T, class Visit>
void each_object(T& object, const std::string& path, const Visit& visit) {
    for_each_child(object, [&](const ChildInfo& child, auto& member) {
        each_object(member, (path.empty() ? "" : path + '.') + std::string{child.key}, visit);
    });
    visit(object, path);
}

} // namespace

std::vector<Kind> kinds_of_number(std::string_view key) {
    std::vector<Kind> kinds;
    Installation installation;
    each_object(installation, "", [&]<class T>(T& /*object*/, const std::string& /*path*/) {
        for (const auto& field : fields<T>()) {
            const bool number = std::holds_alternative<Given T::*>(field.member)
                                || std::holds_alternative<HighLow T::*>(field.member);
            if (number && field.info.key == key
                && std::find(kinds.begin(), kinds.end(), field.info.kind) == kinds.end()) {
                kinds.push_back(field.info.kind);
            }
        }
    });
    return kinds;
}

bool is_word_key(std::string_view key) {
    bool found = false;
    Installation installation;
    each_object(installation, "", [&]<class T>(T& /*object*/, const std::string& /*path*/) {
        for (const auto& field : fields<T>()) {
            const bool free_text = std::holds_alternative<Word T::*>(field.member)
                                   && field.info.words == Words::any_text;
            const bool number = std::holds_alternative<Given T::*>(field.member)
                                || std::holds_alternative<HighLow T::*>(field.member);
            found = found || (field.info.key == key && !free_text && !number);
        }
    });
    return found;
}

std::vector<std::string> homes_of_key(std::string_view key) {
    std::vector<std::string> homes;
    Installation installation;
    each_object(installation, "", [&]<class T>(T& object, const std::string& path) {
        bool here = find_field<T>(key) != nullptr;
        for_each_child(object, [&](const ChildInfo& child, auto& /*member*/) {
            here = here || child.key == key;
        });
        if (here && !path.empty()) {
            homes.push_back(path);
        }
    });
    return homes;
}

} // namespace fluewright
