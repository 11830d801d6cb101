#pragma once

#include "answer.hpp"
#include "fluewright/io/results/columns.hpp"

/// What each command holds under "result", for the schema and docs/output.md.
namespace fluewright::results {

[[nodiscard]] const RecordInfo& check_result();
[[nodiscard]] const RecordInfo& method_result();
[[nodiscard]] const RecordInfo& size_result();
[[nodiscard]] const RecordInfo& sweep_result();
[[nodiscard]] const RecordInfo& compare_result();
[[nodiscard]] const RecordInfo& improve_result();
[[nodiscard]] const RecordInfo& diagnose_result();
[[nodiscard]] const RecordInfo& parts_result();
/// Of CSV only.
[[nodiscard]] const RecordInfo& shop_record();
[[nodiscard]] const RecordInfo& warmup_result();
/// One for each table of the catalog, and the list of tables.
[[nodiscard]] std::vector<const RecordInfo*> catalog_results();

} // namespace fluewright::results
