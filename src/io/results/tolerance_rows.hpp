#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/study/tolerance_study.hpp"
#include "record.hpp"

/// What the spreads of the file do to the verdict.
namespace fluewright::results {

struct StudyRow {
    const Assessment& of;
    const ToleranceStudy& study;
};

template <>
const Record<StudyRow>& record_of<StudyRow>();

} // namespace fluewright::results
