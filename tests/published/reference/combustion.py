"""Balance of the elements of a fuel burned in dry air."""

CARBON, HYDROGEN, OXYGEN, NITROGEN, SULFUR = 12.011, 1.00794, 15.9994, 14.0067, 32.065
AIR = dict(n2=0.78084, o2=0.209476, ar=0.009365, co2=0.000319)
MASSES = dict(o2=31.9988, n2=28.0134, ar=39.948, co2=44.0095)
AIR_MASS = sum(AIR[gas] * MASSES[gas] for gas in AIR)
WATER = 18.01528


def moles(c, h, o, n, s):
    """Moles of the atoms in a gram of dry fuel given in per cent."""
    return (c / CARBON / 100.0, h / HYDROGEN / 100.0, o / OXYGEN / 100.0, n / NITROGEN / 100.0,
            s / SULFUR / 100.0)


def oxygen_needed(c, h, o, n, s):
    carbon, hydrogen, oxygen, _, sulfur = moles(c, h, o, n, s)
    return carbon + hydrogen / 4.0 + sulfur - oxygen / 2.0


def dry_gas(ratio, air, c, h, o, n, s):
    """Moles of CO2, O2 and all dry gas of a gram of dry fuel."""
    carbon, _, _, nitrogen, sulfur = moles(c, h, o, n, s)
    needed = oxygen_needed(c, h, o, n, s)
    blown = ratio * needed / air["o2"]
    dioxide = carbon + blown * air.get("co2", 0.0)
    left = (ratio - 1.0) * needed
    rest = nitrogen / 2.0 + sulfur + blown * (air["n2"] + air.get("ar", 0.0))
    return dioxide, left, dioxide + left + rest


def ratio_for(co2_pct, air, **fuel):
    low, high = 1.0, 100.0
    for _ in range(200):
        ratio = 0.5 * (low + high)
        dioxide, _, whole = dry_gas(ratio, air, **fuel)
        low, high = (ratio, high) if 100.0 * dioxide / whole > co2_pct else (low, ratio)
    return ratio


def air_ratio(source, co2_pct, **fuel):
    return ratio_for(co2_pct, AIR, **fuel)


def oxygen_dry(source, co2_pct, **fuel):
    _, left, whole = dry_gas(ratio_for(co2_pct, AIR, **fuel), AIR, **fuel)
    return 100.0 * left / whole


def air_mass(ratio, **fuel):
    return ratio * oxygen_needed(**fuel) / AIR["o2"] * AIR_MASS


def air_per_fuel(source, co2_pct, moisture_pct, **fuel):
    dry = 1.0 - moisture_pct / 100.0
    return dry * air_mass(ratio_for(co2_pct, AIR, **fuel), **fuel)


def gas_per_fuel(source, co2_pct, moisture_pct, **fuel):
    """Ash stays behind."""
    dry = 1.0 - moisture_pct / 100.0
    burned = sum(fuel.values()) / 100.0
    return dry * (burned + air_mass(ratio_for(co2_pct, AIR, **fuel), **fuel)) + moisture_pct / 100.0


def vapour_share(source, co2_pct, moisture_pct, **fuel):
    dry = 1.0 - moisture_pct / 100.0
    _, _, whole = dry_gas(ratio_for(co2_pct, AIR, **fuel), AIR, **fuel)
    water = dry * moles(**fuel)[1] / 2.0 + moisture_pct / 100.0 / WATER
    return 100.0 * water / (water + dry * whole)


def stoichiometric_air(source, moisture_pct, **fuel):
    return (1.0 - moisture_pct / 100.0) * air_mass(1.0, **fuel)


def greatest_co2(source, **fuel):
    dioxide, _, whole = dry_gas(1.0, AIR, **fuel)
    return 100.0 * dioxide / whole


def net_heating_value(source, moisture_pct, gross_mj_kg, h, **rest):
    dry = 1.0 - moisture_pct / 100.0
    water = dry * h / 100.0 * WATER / (2.0 * HYDROGEN) + moisture_pct / 100.0
    return dry * gross_mj_kg - 2.442 * water


def gross_heating_value_channiwala(source, c, h, o, n, s, ash):
    return 0.3491 * c + 1.1783 * h + 0.1005 * s - 0.1034 * o - 0.0151 * n - 0.0211 * ash


def gas_per_gross_heat(source, moisture_pct, gross_mj_kg, co2_pct, **fuel):
    """With nitrogen, argon counted to it, and oxygen alone in the air; of a kilogram of dry fuel."""
    carbon, _, _, nitrogen, sulfur = moles(**fuel)
    needed = oxygen_needed(**fuel)
    inert = needed * 79.05 / 20.95
    excess = carbon / (co2_pct / 100.0) - (carbon + sulfur + inert + nitrogen / 2.0)
    air = needed * MASSES["o2"] + inert * 28.16 + excess * 28.964
    water = moisture_pct / (100.0 - moisture_pct)
    return (sum(fuel.values()) / 100.0 + water + air) / gross_mj_kg



CHECKS = {name: value for name, value in list(globals().items()) if name in (
    "air_ratio", "oxygen_dry", "air_per_fuel", "gas_per_fuel", "vapour_share",
    "stoichiometric_air", "greatest_co2", "net_heating_value",
    "gross_heating_value_channiwala", "gas_per_gross_heat")}
