"""Acid dew point by the two published equations."""

from math import log

MMHG_PA = 133.322
ATM_PA = 101325.0


def acid_dew_point(source, vapour_pa, so3_pa):
    if source == "verhoff1974":
        water, acid = log(vapour_pa / MMHG_PA), log(so3_pa / MMHG_PA)
        return 1000.0 / (2.276 - 0.02943 * water - 0.0858 * acid + 0.0062 * water * acid) - 273.15
    # Okkes 1987, in log10 of atmospheres.
    water, acid = log(vapour_pa / ATM_PA, 10.0), log(so3_pa / ATM_PA, 10.0)
    return 203.25 + 27.6 * water + 10.83 * acid + 1.06 * (acid + 8.0) ** 2.19


CHECKS = dict(acid_dew_point=acid_dew_point)
