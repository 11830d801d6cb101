#include "fluewright/advice/assessment.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "registry.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace published {
namespace {

using namespace fluewright;
using Json = nlohmann::ordered_json;

/// Installations by name, in ../kinds.json.
const Json& installations() {
    static const Json all = [] {
        std::ifstream file(std::filesystem::path(FLUEWRIGHT_TREE) / "tests/published/kinds.json");
        return Json::parse(file);
    }();
    return all;
}

/// The answer of `check` to one of them; each is worked out once.
const Assessment& answer_to(const std::string& name) {
    static std::map<std::string, Assessment> known;
    const auto found = known.find(name);
    if (found != known.end()) {
        return found->second;
    }
    auto read = read_installation(installations().at(name).dump(), name);
    if (!read) {
        throw std::runtime_error(name + ": " + diagnostics_text(read.error()));
    }
    AssessOptions options;
    options.size_search = false;
    auto made = assess(read.value(), options);
    if (!made) {
        throw std::runtime_error(name + ": " + made.error().front().message);
    }
    return known.emplace(name, std::move(made).value()).first->second;
}

/// 1 where a kind of harm passes, 0 where it falls short, 2 where the file does not tell enough.
double outcome_of(const Inputs& in) {
    const Assessment& answer = answer_to(in.text("installation"));
    for (const HarmVerdict& v : answer.verdict.harms) {
        if (name(v.harm) == in.text("harm")) {
            return v.outcome == HarmOutcome::falls_short   ? 0.0
                   : v.outcome == HarmOutcome::cannot_tell ? 2.0
                                                           : 1.0;
        }
    }
    throw std::runtime_error("no such harm");
}

/// How many findings of a matter there are: 1 for any.
double finds(const Inputs& in) {
    const Assessment& answer = answer_to(in.text("installation"));
    const std::string& id = in.text("finding");
    return std::any_of(answer.findings.begin(),
                       answer.findings.end(),
                       [&](const Finding& f) { return f.matter->id == id; })
               ? 1.0
               : 0.0;
}

/// The same of dangers.
double endangers(const Inputs& in) {
    const Assessment& answer = answer_to(in.text("installation"));
    const std::string& id = in.text("finding");
    return std::any_of(answer.findings.begin(),
                       answer.findings.end(),
                       [&](const Finding& f) {
                           return f.matter->id == id && f.severity == Severity::danger;
                       })
               ? 1.0
               : 0.0;
}

} // namespace

void add_kind_checks(Registry& registry) {
    registry["kind_outcome"] = {"outcome", "1", outcome_of};
    registry["kind_finding"] = {"found", "1", finds};
    registry["kind_danger"] = {"found", "1", endangers};
}

} // namespace published
