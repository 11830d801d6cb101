"""What becomes of an appliance of which a file says next to nothing: fuel as fired, fires, needed draft
and lining, theory eq. 7 and 11 to 13. Constants are entered a second time."""

import second_copy
import state_constants as known
from march_gas import MOLAR, Gas, burnt, saturation_pa
from march_wall import GRAVITY
from state_flue import enthalpy, temperature
from table import Table

CLOSE = 1e-8
PRESSURE = 101325.0
LATENT_MJ_KG, WATER_PER_HYDROGEN = 2.4426, 8.937
BURN_RATE_DRY_KG_S = 0.000833
FUEL = {"wood": "wood", "pellets": "pellets", "coal": "bituminous coal", "oil": "fuel oil no. 2",
        "gas": "natural gas"}


def net_heat(fuel):
    """MJ per kg as fired, at the usual moisture."""
    _, hydrogen, _, _, _, gross, moisture = second_copy.FUELS[fuel]
    wet, h = moisture / 100.0, hydrogen / 100.0
    return gross * (1 - wet) - LATENT_MJ_KG * (wet + WATER_PER_HYDROGEN * h * (1 - wet))


def gas_of(fuel, ratio):
    """The gas, and kg of it per kg of fuel as fired."""
    wet = second_copy.FUELS[fuel][6] / 100.0
    vapour = known.ROOM_HUMIDITY * saturation_pa(known.ROOM_K)
    humidity = 18.01528 / 28.9651 * vapour / (PRESSURE - vapour)
    moles = burnt(second_copy.fuels()[fuel], wet, None, humidity, ratio)
    return Gas(moles / moles.sum(), PRESSURE), (moles @ MOLAR) * (1 - wet)


def room_density():
    vapour = known.ROOM_HUMIDITY * saturation_pa(known.ROOM_K)
    return (PRESSURE - (1 - 18.01528 / 28.9651) * vapour) / (
        8.314462618 / 28.9651e-3 * known.ROOM_K)


def ratio_by_opening(fuel, door, rate, share):
    """Air that enters an open front as fast as a fire of this share asks, over the least for the fuel."""
    wet = second_copy.FUELS[fuel][6] / 100.0
    one, two = (burnt(second_copy.fuels()[fuel], wet, None, 0.0, n) @ MOLAR * (1 - wet)
                for n in (1.0, 2.0))
    velocity = known.FACE_M_S * share ** (1 / 3)
    return velocity * door[0] * door[1] * room_density() / (rate * (two - one))


def needed_by_gas(kind, door, gas, t, flow):
    """What an open front or a draft hood asks at an outlet of 150 mm."""
    density = gas.density(t)
    head = 0.5 * (flow / (0.25 * 3.141592653589793 * 0.15 ** 2)) ** 2 / density
    if kind == "draft-hood":
        return 1.5 * head
    sill = max(0.0, known.OUTLET_HEIGHT_M - door[1] - known.TOP_BELOW_OUTLET_M)
    below = known.OUTLET_HEIGHT_M - sill - door[1]
    return known.VELOCITY_HEADS * head - (room_density() - density) * GRAVITY * below


def add(rows, name, inputs, high_kg_s, air_known=False):
    """The fires of an appliance by its burn rate at high fire; whether the air of that is known."""
    kind, group = name.split("/")
    fuel = FUEL[group]
    figures = second_copy.APPLIANCES[name]
    ratios, efficiency, unburned, needed = (figures[0:2], figures[2], figures[3:5], figures[5:7])
    inputs = dict(type=kind, fuel=fuel, **inputs)
    for end in (0, 1):
        rate = high_kg_s * (figures[7] / 100.0 if end else 1.0)
        side = inputs.get("door_m")
        door = (side, side) if side else (known.DOOR_WIDTH_M, known.DOOR_HEIGHT_M)
        ratio = ratios[end]
        if kind == "fireplace" and not (air_known and end == 0):
            ratio = ratio_by_opening(fuel, door, rate, figures[7] / 100.0 if end else 1.0)
        gas, per_fuel = gas_of(fuel, ratio)
        flow = rate * per_fuel
        heat = rate * net_heat(fuel) * 1e6
        rise = (1 - efficiency / 100.0 - unburned[end] / 100.0) * heat / flow
        t = temperature(gas, enthalpy(gas, known.ROOM_K) + rise)
        fire = dict(inputs, fire=("high", "low")[end])
        rows.add("appliance_gas_flow", fire, "%.7g" % (1e3 * flow), topic="Appliances: gas flow")
        rows.add("appliance_gas_temperature", fire, "%.7g" % (t - 273.15), tolerance="0.0002",
                 topic="Appliances: gas at the outlet")
        rows.add("appliance_heat_output", fire, "%.7g" % (1e-3 * efficiency / 100.0 * heat),
                 topic="Appliances: useful heat")
        if kind in ("fireplace", "draft-hood"):
            rows.add("appliance_draft_needed", fire,
                     "%.7g" % needed_by_gas(kind, door, gas, t, flow), tolerance="0.001",
                     topic="Appliances: needed draft")
        elif needed[end]:
            rows.add("appliance_draft_needed", fire, needed[end],
                     topic="Appliances: needed draft")
    area, mass = figures[10:12]
    if area:
        inputs.setdefault("door_m", 0.4)
        rows.add("appliance_lining_transfer", inputs, known.LINING_W_M2K * area,
                 topic="Appliances: lining to air")
        rows.add("appliance_lining_heat", inputs, 1e-3 * known.LINING_J_KGK * mass,
                 topic="Appliances: heat of the lining")


def table():
    rows = Table("appliances_scipy", "AP", source="scipy-library", mark="computed",
                 tolerance="0.0005", tolerance_kind="relative", place="optimize.brentq",
                 reason="method: same equations, other code without fits")
    for fuel in second_copy.FUELS:
        # A boiler burns everything; the heat it is given tells nothing of the fuel.
        rows.add("fuel_net_heat", dict(type="boiler", fuel=fuel, heat_input_kw=20),
                 "%.8g" % net_heat(fuel), topic="Fuels: net heat as fired")
        wet = second_copy.FUELS[fuel][6] / 100.0
        gas = burnt(second_copy.fuels()[fuel], wet, None, 0.0, 1.5) @ MOLAR * (1 - wet)
        # So close that a trace of nitrogen or sulphur tells.
        rows.add("fuel_gas", dict(type="boiler", fuel=fuel, heat_input_kw=20), "%.11g" % gas,
                 tolerance="0.0000002", topic="Fuels: gas at one and a half times the air")
    for name, figures in second_copy.APPLIANCES.items():
        density, hours = figures[8:10]
        heat = net_heat(FUEL[name.split("/")[1]]) * 1e6
        if density:
            add(rows, name, dict(firebox_l=60), 0.06 * density / (hours * 3600.0))
        else:
            add(rows, name, dict(heat_input_kw=20), 20e3 / heat)
    add(rows, "stove/wood", {},
        BURN_RATE_DRY_KG_S / (1 - second_copy.FUELS["wood"][6] / 100.0))
    per_fuel = gas_of("wood", second_copy.APPLIANCES["fireplace/wood"][0])[1]
    add(rows, "fireplace/wood", dict(door_m=0.7), known.FACE_M_S * 0.49 * room_density() / per_fuel,
        air_known=True)
    return rows


if __name__ == "__main__":
    table().write()
