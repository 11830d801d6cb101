#include "results.hpp"

#include <algorithm>

namespace fluewright::results {
namespace {

void add_with_held(const RecordInfo& record, std::vector<const RecordInfo*>& all) {
    if (std::find(all.begin(), all.end(), &record) != all.end()) {
        return;
    }
    all.push_back(&record);
    for (const ColumnInfo& column : record.columns) {
        if (column.shape.record) {
            add_with_held(column.shape.record(), all);
        }
    }
}

} // namespace

std::vector<CommandResult> command_results() {
    return {{"check", {&check_result(), &method_result()}},
            {"size", {&size_result()}},
            {"compare", {&compare_result()}},
            {"sweep", {&sweep_result()}},
            {"improve", {&improve_result()}},
            {"diagnose", {&diagnose_result()}},
            {"parts", {&parts_result()}},
            {"warmup", {&warmup_result()}},
            {"catalog", catalog_results()}};
}

std::vector<const RecordInfo*> all_records() {
    std::vector<const RecordInfo*> all;
    add_with_held(answer_record(), all);
    for (const CommandResult& result : command_results()) {
        for (const RecordInfo* record : result.records) {
            add_with_held(*record, all);
        }
    }
    add_with_held(faults_record(), all);
    add_with_held(batch_record(), all);
    return all;
}

} // namespace fluewright::results
