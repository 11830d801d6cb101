#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/study/tolerance_study.hpp"
#include "fluewright/advice/upkeep/trade.hpp"

#include <string>
#include <string_view>

/// The whole answer as a page to keep, print and hand over.
namespace fluewright {

struct PageOptions {
    std::string_view version{};         ///< of the program
    std::string_view file{};            ///< as the user named it
    bool size_searched{true};           ///< otherwise the size line says that it was not computed
    const TradeAdvice* trade{};         ///< hot surfaces, heat and upkeep
    const PartsList* parts{};           ///< what to buy and cut
    const ToleranceStudy* tolerances{}; ///< where the file gives any
};

/// One HTML page that holds all it needs: verdict by kind of harm, drawing, conditions, profile,
/// size, findings, requirements, parts and cut sheet, checks with their sources, what was assumed
/// and understood, cautions. The words and tables are those of the text report, by its writers.
/// Nothing is fetched and no script runs; it prints on A4 and Letter. Well-formed as XML too.
[[nodiscard]] std::string
report_page(const Installation& written, const Assessment& assessment, const PageOptions& options);

} // namespace fluewright
