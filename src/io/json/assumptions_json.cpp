#include "assumptions_json.hpp"

#include "fluewright/core/quantity/quantity.hpp"
#include "json_number.hpp"

#include <string>

namespace fluewright::report {

json::Value assumptions_json(std::span<const Assumption> assumptions) {
    using Json = json::Value;
    Json list = Json::array();
    for (const Assumption& a : assumptions) {
        Json json{{"pointer", a.pointer}, {"what", a.what}};
        if (a.word.empty()) {
            json["value" + std::string{json_suffix(a.kind)}] = json_number(a.value);
        } else {
            json["word"] = a.word;
        }
        json["source"] = a.source;
        json["mark"] = a.mark;
        list.push_back(std::move(json));
    }
    return list;
}

} // namespace fluewright::report
