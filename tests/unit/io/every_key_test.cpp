#include "catch.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <functional>
#include <string>
#include <type_traits>
#include <vector>

using namespace fluewright;

namespace {

/// One key of the file: its row, and a file that holds nothing but it and what stands round it.
struct Key {
    std::string pointer;
    FieldInfo info;
    bool number{};
    bool flag{};
    bool pair{};                                         ///< may be given for low and high fire
    std::function<std::string(const std::string&)> with; ///< the members of its object: whole text
};

/// Every key that the table has, found by walking through it, so that a new one joins by itself.
class Keys {
public:
    Keys() {
        Installation whole;
        walk(whole, "", [](const std::string& members) { return "{" + members + "}"; });
    }

    std::vector<Key> all;

private:
    using Round = std::function<std::string(const std::string&)>;

    template <class T>
    void walk(T& object, const std::string& pointer, const Round& round) {
        for (const Field<T>& field : fields<T>()) {
            Key key;
            key.pointer = pointer + '/' + std::string{field.info.key};
            key.info = field.info;
            key.pair = std::holds_alternative<HighLow T::*>(field.member);
            key.number = key.pair || std::holds_alternative<Given T::*>(field.member);
            key.flag = std::holds_alternative<Flag T::*>(field.member);
            key.with = [round, kind = kind_before(field)](const std::string& members) {
                return round(kind + members);
            };
            all.push_back(std::move(key));
        }
        for_each_child(object, [&](const ChildInfo& child, auto& member) {
            enter(member, child, pointer + '/' + std::string{child.key}, round);
        });
    }

    /// A part has the keys of its kind only.
    template <class T>
    static std::string kind_before(const Field<T>& field) {
        if constexpr (std::is_same_v<T, Part>) {
            if (field.info.key != "part") {
                for (const std::string_view kind : part_kind::names()) {
                    if ((part_kind::bit(*from_word<PartKind>(kind)) & field.info.parts) != 0U) {
                        return fmt::format("\"part\": \"{}\", ", kind);
                    }
                }
            }
        }
        return {};
    }

    template <class T>
    void enter(T& object, const ChildInfo& child, const std::string& pointer, const Round& round) {
        walk(object, pointer, [round, key = std::string{child.key}](const std::string& members) {
            return round(fmt::format("\"{}\": {{{}}}", key, members));
        });
    }

    template <class T>
    void enter(std::vector<T>& /*list*/,
               const ChildInfo& child,
               const std::string& pointer,
               const Round& round) {
        T entry;
        walk(entry,
             pointer + (Named<T> ? "/own" : "/0"),
             [round, key = std::string{child.key}](const std::string& members) {
                 return round(fmt::format(
                     Named<T> ? "\"{}\": {{\"own\": {{{}}}}}" : "\"{}\": [{{{}}}]", key, members));
             });
    }
};

/// The faults that a key with this value has itself; others of so bare a file do not count.
std::vector<Fault> faults_of(const Key& key, const std::string& members) {
    const ReadResult read = read_installation(key.with(members));
    REQUIRE_FALSE(read.has_value()); // such a file lacks its appliance, or its run
    std::vector<Fault> own;
    for (const Diagnostic& diagnostic : read.error()) {
        const std::string_view pointer = diagnostic.fault.pointer;
        if (pointer == key.pointer || pointer.starts_with(key.pointer + '/')) {
            own.push_back(diagnostic.fault);
        }
    }
    return own;
}

std::string member(const Key& key, const std::string& value) {
    return fmt::format("\"{}\": {}", key.info.key, value);
}

std::string number_text(const Key& key, double si) {
    return key.info.kind == Kind::number ? fmt::format("{}", si)
                                         : fmt::format("\"{}\"", write_quantity(si, key.info.kind));
}

void check_taken(const Key& key, const std::string& value) {
    INFO(key.pointer << " = " << value);
    for (const Fault& fault : faults_of(key, member(key, value))) {
        // What is wrong with a place on the run, or with a name of the catalog, is another matter.
        UNSCOPED_INFO(fault.message);
        CHECK(fault.message.find("outside") == std::string::npos);
        CHECK(fault.message.find("is not ") == std::string::npos);
        CHECK(fault.message.find("must be") == std::string::npos);
    }
}

void check_refused(const Key& key, const std::string& value) {
    INFO(key.pointer << " = " << value);
    const std::vector<Fault> faults = faults_of(key, member(key, value));
    for (const Fault& fault : faults) {
        UNSCOPED_INFO(fault.pointer << ": " << fault.message);
    }
    CHECK(faults.size() == 1);
}

/// Texts of a catalog name or a place on the run that are well formed need not be known.
bool is_closed(const Key& key) {
    return key.info.words == Words::choices;
}

} // namespace

TEST_CASE("every number is taken at both limits and just inside, and refused just beyond") {
    for (const Key& key : Keys{}.all) {
        if (!key.number) {
            continue;
        }
        const FieldInfo& info = key.info;
        const double span = info.highest - info.lowest;
        const double hair = info.whole ? 1.0 : 1e-4 * span;
        REQUIRE(span > 0.0);
        if (info.above_lowest) {
            check_refused(key, number_text(key, info.lowest));
        } else {
            check_taken(key, number_text(key, info.lowest));
        }
        check_taken(key, number_text(key, info.highest));
        check_taken(key, number_text(key, info.lowest + hair));
        check_taken(key, number_text(key, info.highest - hair));
        check_refused(key, number_text(key, info.lowest - hair));
        check_refused(key, number_text(key, info.highest + hair));
        if (info.whole) {
            check_refused(key, number_text(key, info.lowest + 0.5));
        }
        if (key.pair) {
            const std::string high = number_text(key, info.highest);
            check_refused(key,
                          fmt::format("{{\"low\": {}}}", number_text(key, info.highest + hair)));
            check_refused(key, fmt::format("{{\"high\": {}, \"mean\": {}}}", high, high));
            check_refused(key, "{}");
        }
    }
}

TEST_CASE("every key refuses what is of the wrong kind, with one fault at its place") {
    for (const Key& key : Keys{}.all) {
        for (const char* wrong : {"null", "[]", "[1]"}) {
            check_refused(key, wrong);
        }
        if (!key.pair) {
            check_refused(key, "{}");
        }
        if (key.flag) {
            check_taken(key, "true");
            check_taken(key, "false");
            check_refused(key, "\"true\"");
            check_refused(key, "1");
            continue;
        }
        check_refused(key, "true");
        if (key.number) {
            check_refused(key, "\"\"");
            check_refused(key, "\"a few\"");
            if (key.info.kind != Kind::number) {
                check_refused(key, "7"); // lacks its unit
            }
            continue;
        }
        check_refused(key, "\"\"");
        check_refused(key, "7.5");
        check_refused(key, '"' + std::string(longest_text + 1, 'x') + '"');
        if (is_closed(key)) {
            check_refused(key, "\"no such word\"");
            for (const std::string_view word : key.info.choices) {
                check_taken(key, fmt::format("\"{}\"", word));
            }
        }
    }
}

TEST_CASE("every key that stands twice is refused once, and one that is required is required for") {
    std::size_t required = 0;
    for (const Key& key : Keys{}.all) {
        if (key.info.key == "part") {
            continue; // decides which other keys there are
        }
        const std::string value = key.flag         ? std::string{"true"}
                                  : key.number     ? number_text(key, key.info.highest)
                                  : is_closed(key) ? fmt::format("\"{}\"", key.info.choices.front())
                                                   : std::string{"\"any\""};
        const std::vector<Fault> faults =
            faults_of(key, member(key, value) + ", " + member(key, value));
        INFO(key.pointer);
        CHECK(std::count_if(faults.begin(),
                            faults.end(),
                            [](const Fault& fault) {
                                return fault.message.find("appears twice") != std::string::npos;
                            })
              == 1);
        if (!key.info.required) {
            continue;
        }
        ++required;
        const ReadResult without = read_installation(key.with("\"id\": \"x\""));
        REQUIRE_FALSE(without.has_value());
        CHECK(std::any_of(
            without.error().begin(), without.error().end(), [&](const Diagnostic& diagnostic) {
                return diagnostic.fault.message.find(
                           fmt::format("lacks the key `{}`", key.info.key))
                       != std::string::npos;
            }));
    }
    CHECK(required > 3);
}

TEST_CASE("every list is bounded, and says by how much") {
    const auto run_of = [](std::size_t parts) {
        std::string text = R"({"appliance": {"type": "stove"}, "run": [)";
        for (std::size_t i = 0; i < parts; ++i) {
            text += i == 0 ? "{}" : ", {}";
        }
        return text + "]}";
    };
    const ReadResult long_run = read_installation(run_of(201));
    REQUIRE_FALSE(long_run.has_value());
    REQUIRE(long_run.error().size() == 1);
    CHECK(long_run.error().front().fault.pointer == "/run");
    CHECK(long_run.error().front().fault.message == "`run` has 201 entries, more than 200");
    Installation whole;
    for_each_child(whole, [](const ChildInfo& child, const auto& list) {
        if constexpr (requires { list.size(); }) {
            INFO(child.key);
            CHECK(child.most > 0);
        }
    });
}

TEST_CASE("a file of wrong entries takes no longer than it is long") {
    // Each fault names its place; to count to it from the beginning of the list took half a minute.
    std::string text = R"({"appliance": {"type": "stove"}, "run": [7)";
    for (int i = 0; i < 400'000; ++i) {
        text += ",7";
    }
    const ReadResult read = read_installation(text + "]}");
    REQUIRE_FALSE(read.has_value());
    CHECK(read.error().size() == 1);
    std::string keys = "{";
    for (int i = 0; i < 100'000; ++i) {
        keys += fmt::format("{}\"k{}\": 7", i == 0 ? "" : ",", i);
    }
    const ReadResult unknown = read_installation(keys + "}");
    REQUIRE_FALSE(unknown.has_value());
    CHECK(unknown.error().size() <= 1000);
}
