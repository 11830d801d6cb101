"""The US Standard Atmosphere 1976 as coded in the fluids library."""

from fluids.atmosphere import ATMOSPHERE_1976

from table import Table

COMMON = dict(tolerance="1e-5", tolerance_kind="relative", source="fluids-library",
              place="atmosphere.ATMOSPHERE_1976", mark="computed", topic="Air pressure",
              reason="method: same equations; rounded constants")


def table():
    rows = Table("atmosphere_fluids", "AT", **COMMON)
    for altitude in (-300, 0, 100, 250, 300, 500, 750, 1000, 1250, 1500, 1750, 2000, 2500, 3000,
                     3500, 4000, 5000, 7000, 9000, 11000):
        rows.add("altitude_pressure", dict(altitude_m=altitude), ATMOSPHERE_1976(altitude).P)
    return rows


if __name__ == "__main__":
    table().write()
