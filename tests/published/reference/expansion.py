"""Lengthening of steel by EN 1993-1-2, in thousandths."""


def expansion_carbon_steel(source, t_c):
    return 1e3 * (1.2e-5 * t_c + 0.4e-8 * t_c ** 2 - 2.416e-4)


def expansion_stainless_steel(source, t_c):
    return 1e3 * (16.0 + 4.79e-3 * t_c - 1.243e-6 * t_c ** 2) * (t_c - 20.0) * 1e-6


CHECKS = dict(expansion_carbon_steel=expansion_carbon_steel,
              expansion_stainless_steel=expansion_stainless_steel)
