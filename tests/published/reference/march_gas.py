"""Flue gas for the reference march: combustion by element balance, heat capacity by the NASA
polynomials, transport by the single-gas fits and Wilke's rule, radiation by Leckner. Written apart
from the program; only published coefficients are the same."""

import math

import numpy as np

GAS_CONSTANT = 8.314462618
NAMES = ("N2", "O2", "CO2", "H2O", "Ar", "SO2")
MOLAR = np.array([28.0134, 31.9988, 44.0095, 18.01528, 39.948, 64.0638]) * 1e-3
# Dry air of the US standard atmosphere, its traces left out and the rest made whole.
AIR = np.array([0.78084, 0.209476, 0.000319, 0.0, 0.009365, 0.0])
AIR /= AIR.sum()
AIR_GAS = GAS_CONSTANT / 28.9651e-3

# NASA TP-2002-211556, 200 to 1000 K, cp/R in powers T^-2 .. T^4.
NASA = np.array([
    [2.210371497e+04, -3.818461820e+02, 6.082738360e+00, -8.530914410e-03, 1.384646189e-05,
     -9.625793620e-09, 2.519705809e-12],
    [-3.425563420e+04, 4.847000970e+02, 1.119010961e+00, 4.293889240e-03, -6.836300520e-07,
     -2.023372700e-09, 1.039040018e-12],
    [4.943650540e+04, -6.264116010e+02, 5.301725240e+00, 2.503813816e-03, -2.127308728e-07,
     -7.689988780e-10, 2.849677801e-13],
    [-3.947960830e+04, 5.755731020e+02, 9.317826530e-01, 7.222712860e-03, -7.342557370e-06,
     4.955043490e-09, -1.336933246e-12],
    [0.0, 0.0, 2.5, 0.0, 0.0, 0.0, 0.0],
    [-5.310842140e+04, 9.090311670e+02, -2.356891244e+00, 2.204449885e-02, -2.510781471e-05,
     1.446300484e-08, -3.369070940e-12]])
POWERS = np.arange(-2, 5)

# NASA TM-4513: ln(mu/0.1 uPa s) = A ln T + B/T + C/T^2 + D, 300 to 1000 K.
VISCOSITY = np.array([
    [0.62526577, -31.779652, -1640.7983, 1.7454992], [0.60916180, -52.244847, -599.74009, 2.0410801],
    [0.51137258, -229.51321, 13710.678, 2.7075538], [0.50019557, -697.12796, 88163.892, 3.0836508],
    [0.61205763, -67.714354, 190.40660, 2.1588272], [0.53157084, -295.89873, 21224.840, 2.5975549]])
# Conductivity in mW/(m K), cubic in T/1000 K up to 1100 K.
CONDUCTIVITY = np.array([
    [1.5120, 93.3542, -43.8546, 14.3804], [0.3373, 97.4012, -37.9844, 11.8072],
    [-6.4553, 72.5173, 19.6585, -15.0520], [4.4019, 18.4418, 104.4173, -31.5140],
    [0.6653, 66.3728, -33.7374, 10.2940], [0.6560, 9.9413, 80.9461, -48.6312]])

# Leckner 1972 as tabulated by Modest: ln eps in powers of log10(p L / bar cm) (rows) and T/1000 K.
LECKNER_WATER = np.array([[-2.2118, -1.1987, 0.035596], [0.85667, 0.93048, -0.14391],
                          [-0.10838, -0.17156, 0.045915]])
LECKNER_DIOXIDE = np.array([[-3.9893, 2.7669, -2.1081, 0.39163],
                            [1.2710, -1.1090, 1.0195, -0.21897],
                            [-0.23678, 0.19731, -0.19544, 0.044644]])


def saturation_pa(kelvin):
    """Vapour pressure of water by the short formula the European standard gives."""
    celsius = kelvin - 273.15
    return math.exp(23.6448 - 4077.9 / (celsius + 236.67))


def burnt(fuel, moisture, dioxide_dry, humidity, ratio=None):
    """Moles of wet flue gas of one kg of dry fuel; air is found from the CO2 of the dry gas, or
    is `ratio` times the least; kg water per kg dry air in `humidity`."""
    share = {key: float(fuel[key + "_pct"]) / 100.0
             for key in ("carbon", "hydrogen", "oxygen", "nitrogen", "sulphur")}
    carbon = share["carbon"] / 12.011e-3
    hydrogen = share["hydrogen"] / 1.00794e-3
    oxygen = share["oxygen"] / 15.9994e-3
    nitrogen = share["nitrogen"] / 14.0067e-3
    sulphur = share["sulphur"] / 32.065e-3
    burnt_oxygen = carbon + hydrogen / 4.0 + sulphur - oxygen / 2.0

    def gas(air):
        moles = air * AIR
        moles[0] += nitrogen / 2.0
        moles[1] -= burnt_oxygen
        moles[2] += carbon
        moles[5] += sulphur
        return moles

    least = burnt_oxygen / AIR[1]
    low, high = least, 1e3 * least
    for _ in range(200 if ratio is None else 0):
        air = 0.5 * (low + high)
        moles = gas(air)
        if moles[2] / moles.sum() > dioxide_dry:
            low = air
        else:
            high = air
    if ratio is not None:
        air = ratio * least
        moles = gas(air)
    water = moisture / (1.0 - moisture) + humidity * air * (AIR @ MOLAR)
    moles[3] = hydrogen / 2.0 + water / MOLAR[3]
    return moles


def products(fuel, moisture, dioxide_dry, humidity):
    """Mole fractions of the wet flue gas."""
    moles = burnt(fuel, moisture, dioxide_dry, humidity)
    return moles / moles.sum()


class Gas:
    """A mixture of given mole fractions at a pressure."""

    def __init__(self, fractions, pressure_pa):
        self.x = fractions
        self.pressure_pa = pressure_pa
        self.molar = fractions @ MOLAR
        self.gas_constant = GAS_CONSTANT / self.molar

    def density(self, t):
        return self.pressure_pa / (self.gas_constant * t)

    def specific_heat(self, t):
        return GAS_CONSTANT * (self.x @ (NASA @ t ** POWERS.astype(float))) / self.molar

    def transport(self, t):
        """Viscosity and conductivity by Wilke's rule."""
        a, b, c, d = VISCOSITY.T
        mu = 1e-7 * np.exp(a * math.log(t) + b / t + c / t ** 2 + d)
        k = 1e-3 * (CONDUCTIVITY @ (t / 1000.0) ** np.arange(4))
        ratio = np.sqrt(np.divide.outer(mu, mu)) * np.divide.outer(1.0 / MOLAR, 1.0 / MOLAR) ** 0.25
        phi = (1.0 + ratio) ** 2 / np.sqrt(8.0 * (1.0 + np.divide.outer(MOLAR, MOLAR)))
        weight = self.x / (phi @ self.x)
        return weight @ mu, weight @ k

    def _alone(self, t, length_m):
        """Emissivity of each gas alone at temperature t over a path, and the overlap of both."""
        bar = self.pressure_pa / 1e5
        tau = t / 1000.0
        water, dioxide = self.x[3] * bar, self.x[2] * bar
        cm = 100.0 * length_m

        def base(table, path):
            powers = tau ** np.arange(table.shape[1])
            return math.exp((table @ powers) @ math.log10(path) ** np.arange(3))

        def pressure(a, b, c, effective, best, path):
            return 1.0 - (a - 1.0) * (1.0 - effective) / (a + b - 1.0 + effective) * math.exp(
                -c * math.log10(best / path) ** 2)

        eps_w = base(LECKNER_WATER, water * cm) * pressure(
            2.144 if tau < 0.75 else 1.888 - 2.053 * math.log10(tau), 1.10 * tau ** -1.4, 0.5,
            bar + 2.56 * water / math.sqrt(tau), 13.2 * tau ** 2, water * cm)
        eps_c = base(LECKNER_DIOXIDE, dioxide * cm) * pressure(
            1.0 + 0.1 * tau ** -1.45, 0.23, 1.47, bar + 0.28 * dioxide,
            0.054 / tau ** 2 if tau < 0.7 else 0.225 * tau ** 2, dioxide * cm)
        z = water / (water + dioxide)
        both = (water + dioxide) * cm
        overlap = 0.0
        if both > 1.0:
            overlap = (z / (10.7 + 101.0 * z) - 0.0089 * z ** 10.4) * math.log10(both) ** 2.76
        return eps_w + eps_c, overlap

    def emissivity(self, t, diameter_m):
        alone, overlap = self._alone(t, 0.95 * diameter_m)
        return alone - overlap

    def absorptivity(self, t, wall_t, diameter_m):
        alone, overlap = self._alone(wall_t, 0.95 * diameter_m * wall_t / t)
        return math.sqrt(t / wall_t) * alone - overlap
