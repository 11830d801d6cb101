"""Saturation of water by IAPWS-IF97, and viscosity and conductivity of thin vapour by the IAPWS
releases of 2008 and 2011, from the iapws library."""

from iapws._iapws import _ThCond, _Viscosity
from iapws.iapws97 import _PSat_T, _TSat_P

from table import Table

COMMON = dict(source="iapws-library", mark="computed")
NO_DENSITY = 1e-6


def add_saturation(rows, celsius):
    pressure_pa = _PSat_T(celsius + 273.15) * 1e6
    rows.add("saturation_pressure", dict(t_c=celsius), pressure_pa, tolerance="0.003",
             tolerance_kind="relative", reason="method: closed form of the European standard",
             place="IF97 region 4", topic="Saturation pressure of water")
    rows.add("water_dew_point", dict(vapour_pa="%.10g" % pressure_pa), celsius, tolerance="0.05",
             tolerance_kind="absolute", reason="method: closed form of the European standard",
             place="IF97 region 4", topic="Water dew point")


def add_share(rows, share, pressure_pa):
    vapour_pa = share * pressure_pa
    rows.add("water_dew_point", dict(vapour_pa="%g" % vapour_pa),
             _TSat_P(vapour_pa * 1e-6) - 273.15, tolerance="0.05", tolerance_kind="absolute",
             reason="method: closed form of the European standard", place="IF97 region 4",
             topic="Water dew point")


def add_vapour(rows, kelvin):
    inputs = dict(species="H2O", t_k=kelvin)
    below_fit = kelvin < 373
    rows.add("species_viscosity", inputs, _Viscosity(NO_DENSITY, kelvin) * 1e6,
             tolerance="0.012" if below_fit else "0.006", tolerance_kind="relative",
             reason="method: the fit starts at 373 K" if below_fit else "method: stated error of "
             "the fit", place="IAPWS release 2008 on viscosity", topic="Viscosity of gases")
    rows.add("species_conductivity", inputs, _ThCond(NO_DENSITY, kelvin) * 1e3,
             tolerance="0.005", tolerance_kind="relative",
             reason="method: stated error of the cubic fit",
             place="IAPWS release 2011 on thermal conductivity", topic="Conductivity of gases")


def table():
    rows = Table("water_iapws", "WA", **COMMON)
    for celsius in range(20, 81, 3):
        add_saturation(rows, celsius)
    for pressure_pa in (101325, 89875):
        for share in (0.03, 0.04, 0.06, 0.08, 0.10, 0.12, 0.14, 0.16, 0.18, 0.20):
            add_share(rows, share, pressure_pa)
    for kelvin in range(300, 1001, 50):
        add_vapour(rows, kelvin)
    return rows


if __name__ == "__main__":
    table().write()
