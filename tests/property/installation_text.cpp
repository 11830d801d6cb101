#include "installation_text.hpp"

#include "fluewright/model/fields/fields.hpp"

#include <fmt/format.h>
#include <string_view>
#include <type_traits>
#include <vector>

namespace fluewright::property {
namespace {

std::string joined(const std::vector<std::string>& items, std::string_view between) {
    std::string text;
    for (const std::string& item : items) {
        text += text.empty() ? "" : between;
        text += item;
    }
    return text;
}

class Writer {
public:
    template <class T>
    std::string object(T& value) {
        std::vector<std::string> members;
        const unsigned kinds = kinds_of(value);
        for (const Field<T>& field : fields<T>()) {
            if ((field.info.parts & kinds) == 0U) {
                continue;
            }
            if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
                const auto place = choice->get(value);
                add(members,
                    field.info,
                    place ? Word{std::string{choice->words[*place]}} : std::nullopt);
            } else {
                std::visit(
                    [&](auto member) {
                        if constexpr (std::is_member_pointer_v<decltype(member)>) {
                            add(members, field.info, value.*member);
                        }
                    },
                    field.member);
            }
        }
        for_each_child(value, [&](const ChildInfo& info, auto& child) {
            if (std::string text = child_text(child); text.size() > 2) {
                members.push_back(fmt::format("\"{}\": {}", info.key, text));
            }
        });
        return fmt::format("{{{}}}", joined(members, ", "));
    }

private:
    static std::string number(const FieldInfo& info, double value) {
        return info.kind == Kind::number ? fmt::format("{}", value)
                                         : fmt::format("\"{}\"", write_quantity(value, info.kind));
    }

    static void add(std::vector<std::string>& members, const FieldInfo& info, const Given& given) {
        if (given) {
            members.push_back(fmt::format("\"{}\": {}", info.key, number(info, *given)));
        }
    }

    static void add(std::vector<std::string>& members, const FieldInfo& info, const Word& word) {
        if (word) {
            members.push_back(fmt::format("\"{}\": \"{}\"", info.key, *word));
        }
    }

    static void add(std::vector<std::string>& members, const FieldInfo& info, const Flag& flag) {
        if (flag) {
            members.push_back(fmt::format("\"{}\": {}", info.key, *flag));
        }
    }

    static void add(std::vector<std::string>& members, const FieldInfo& info, const HighLow& pair) {
        std::vector<std::string> ends;
        if (pair.low) {
            ends.push_back(fmt::format("\"low\": {}", number(info, *pair.low)));
        }
        if (pair.high) {
            ends.push_back(fmt::format("\"high\": {}", number(info, *pair.high)));
        }
        if (!ends.empty()) {
            members.push_back(fmt::format("\"{}\": {{{}}}", info.key, joined(ends, ", ")));
        }
    }

    template <class T>
    std::string child_text(T& child) {
        return object(child);
    }

    template <class T>
    std::string child_text(std::vector<T>& list) {
        std::vector<std::string> texts;
        for (T& entry : list) {
            if constexpr (Named<T>) {
                texts.push_back(fmt::format("\"{}\": {}", entry.id, object(entry)));
            } else {
                texts.push_back(object(entry));
            }
        }
        return Named<T> ? fmt::format("{{{}}}", joined(texts, ", "))
                        : fmt::format("[{}]", joined(texts, ",\n  "));
    }
};

} // namespace

std::string file_text(const Installation& installation) {
    Installation copy = installation;
    return Writer{}.object(copy);
}

} // namespace fluewright::property
