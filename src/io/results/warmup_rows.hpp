#pragma once

#include "fluewright/io/report/report_warmup.hpp"
#include "record.hpp"

/// The warm-up at one time.
namespace fluewright::results {

struct CourseRow {
    const Case& installation;
    const WarmupInWeather& in;

    [[nodiscard]] const WeatherCase& weather() const { return installation.weathers[in.weather]; }
};

struct MomentRow {
    const CourseRow& course;
    const WarmupMoment& of;
};

template <>
const Record<MomentRow>& record_of<MomentRow>();

} // namespace fluewright::results
