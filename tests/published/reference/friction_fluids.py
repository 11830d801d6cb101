"""Friction factors of the fluids library: Colebrook solved exactly, Churchill's formula as coded
there, and Churchill held against Colebrook."""

from fluids.friction import Churchill_1977, Colebrook

from table import Table

ROUGHNESS = [0.0, 1e-5, 1e-4, 5e-4, 1e-3, 2e-3, 5e-3, 0.00667, 0.01, 0.0133, 0.02, 0.0333, 0.05]
TURBULENT = [4e3, 5e3, 7e3, 1e4, 1.5e4, 2e4, 3e4, 5e4, 7e4, 1e5, 2e5, 5e5, 1e6]
SLOW = [100.0, 500.0, 1000.0, 1500.0, 2000.0, 2300.0, 2700.0, 3300.0]
COMMON = dict(tolerance_kind="relative", source="fluids-library", mark="computed")


def table():
    rows = Table("friction_fluids", "FR", **COMMON)
    for re in TURBULENT:
        for roughness in ROUGHNESS:
            inputs = dict(re="%g" % re, rel_roughness="%g" % roughness)
            rows.add("friction_colebrook", inputs, Colebrook(re, roughness), tolerance="1e-9",
                     reason="method: same equation, both solved to round-off",
                     place="friction.Colebrook", topic="Friction factor: Colebrook")
            rows.add("friction_churchill", inputs, Colebrook(re, roughness), tolerance="0.035",
                     reason="method: an explicit formula against the implicit equation it "
                            "approximates",
                     place="friction.Colebrook", topic="Friction factor: Churchill for Colebrook")
    for re in SLOW + TURBULENT:
        for roughness in ROUGHNESS:
            inputs = dict(re="%g" % re, rel_roughness="%g" % roughness)
            rows.add("friction_churchill", inputs, Churchill_1977(re, roughness), tolerance="1e-9",
                     reason="method: same formula, other code", place="friction.Churchill_1977",
                     topic="Friction factor: Churchill")
    return rows


if __name__ == "__main__":
    table().write()
