"""Pressure of houses and idle flues, by the balances that the table names."""

EXPONENT = 0.65
AIR_KG_M3 = 1.2
GAS_J_KGK = 287.05
PRESSURE_PA = 101325.0
ZERO_K = 273.15


def density(celsius):
    return PRESSURE_PA / (GAS_J_KGK * (celsius + ZERO_K))


def house_pressure(source, volume_m3, changes_50_pa_1_h, fan_l_s):
    """Q = C dp^0.65, C from the flow at 50 Pa."""
    at_50_pa = volume_m3 * changes_50_pa_1_h / 3600.0
    return -50.0 * (fan_l_s / 1000.0 / at_50_pa) ** (1.0 / EXPONENT)


def turning_temperature(source, outdoor_c, flue_height_m, neutral_m):
    """rho_f = rho_o - (rho_o - rho_i) h/H, the room at 20 degC."""
    outdoor, room = density(outdoor_c), density(20.0)
    flue = outdoor - (outdoor - room) * neutral_m / flue_height_m
    return PRESSURE_PA / (GAS_J_KGK * flue) - ZERO_K


def neutral_share(source, outdoor_c, room_c):
    """Two equal openings, one at the floor and one at the top: what comes in goes out."""
    outdoor, room = outdoor_c + ZERO_K, room_c + ZERO_K
    return 1.0 / (1.0 + (room / outdoor))


def opening_pressure(source, flow_l_s, area_cm2):
    """dp = rho/2 (Q/(0.6 A))^2"""
    return AIR_KG_M3 / 2.0 * (flow_l_s / 1000.0 / (0.6 * area_cm2 * 1e-4)) ** 2


CHECKS = dict(house_pressure=house_pressure, turning_temperature=turning_temperature,
              neutral_share=neutral_share, opening_pressure=opening_pressure)
