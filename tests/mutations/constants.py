"""Which constants the mutation run changes: numbers in the code of physics, march, states and warm-up,
and cells of the tables the physics reads."""

import csv
import re

SOURCES = ("src/physics", "src/model/march", "src/model/states", "src/model/warmup")
# Numbers of an equation's shape, not of nature.
SHAPE = {0.0, 0.5, 1.0, 2.0, 3.0, 4.0}
NUMBER = re.compile(r"(?<![\w.\"'])(\d+\.\d*(?:[eE][-+]?\d+)?|\d+[eE][-+]?\d+)(?![\w.\"'])")
# Constants of headers by the way the code names them; the last word is what is looked for.
HEADER = ("constants::gas_constant_j_molk", "constants::stefan_boltzmann_w_m2k4",
          "constants::gravity_m_s2", "constants::celsius_zero_k", "constants::standard_pressure_pa",
          "constants::water_latent_heat_25c_j_kg", "constants::dry_air_kg_mol",
          "constants::dry_air_g_mol", "constants::water_g_mol", "door_discharge", "discharge",
          "least_reynolds", "entry_scale", "entry_start_over_diameter", "tall_wall_factor_gas",
          "conductivity_reference_k", "rectangular_shape_factor", "tallest_gap_cell_m", "prandtl",
          "wall_emissivity", "beam_length_over_diameter", "air_gas_constant_j_kgk")
# Table: its columns that the physics reads.
TABLES = {
    "defaults": ("value",),
    "walls": ("inner_emissivity", "outer_emissivity", "roughness_mm"),
    "materials": ("conductivity_w_mk", "conductivity_slope_w_mk2", "density_kg_m3",
                  "specific_heat_j_kgk", "emissivity"),
    "fuels": ("carbon_pct", "hydrogen_pct", "oxygen_pct", "nitrogen_pct", "sulphur_pct",
              "gross_heating_value_dry_mj_kg", "default_moisture_pct"),
    "fittings": ("loss",),
    "appliance_defaults": ("air_ratio_high", "air_ratio_low", "efficiency_net_pct",
                           "unburned_share_high_pct", "unburned_share_low_pct",
                           "draft_needed_high_pa", "draft_needed_low_pa", "low_fire_share_pct",
                           "load_density_kg_m3", "burn_hours_high", "lining_area_m2",
                           "lining_mass_kg", "warmed_pipe_share_pct"),
}


class Mutant:
    def __init__(self, number, name, text):
        self.number, self.name, self.text = number, name, text
        self.place = None  # of a number in the code: (file, line)
        self.cell = None  # of a table: (table, row, member)


def code_only(line):
    """The line with comments and strings blanked out."""
    line = re.sub(r'"(?:\\.|[^"\\])*"', lambda m: "\1" * len(m.group()), line)
    return re.sub(r"//.*$", lambda m: "\1" * len(m.group()), line)


def rewritten(line, wrap):
    """The line with every constant in it wrapped, so that it can be changed when the program runs."""
    code = code_only(line)
    if re.match(r"\s*(#|static_assert|\*|template)", code) or "consteval" in code:
        return line
    spots = [(m.start(), m.end(), m.group()) for m in NUMBER.finditer(code)
             if float(m.group()) not in SHAPE]
    for name in HEADER:
        for m in re.finditer(r"(?<![\w:])(?:\w+::)*" + re.escape(name) + r"\b(?!\s*[={(])", code):
            if not any(a <= m.start() < b for a, b, _ in spots):
                spots.append((m.start(), m.end(), name))
    for begin, end, text in sorted(spots, reverse=True):
        line = line[:begin] + wrap(text, line[begin:end]) + line[end:]
    return re.sub(r"^(\s*)constexpr (?=(double|std::array<)[^()]* \w+\s*[={])", r"\1const ", line)


def table_rows(data, table):
    with open(data / (table + ".csv"), newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def thickened(mutant, factor):
    """The layers of a wall with one of them thicker."""
    parts, at = list(mutant.parts), int(mutant.cell[2][6:]) - 1
    name, millimetres = parts[at].rsplit(" ", 1)
    parts[at] = "%s %.9g" % (name, factor * float(millimetres))
    return "|".join(parts)


def read_by_physics(data):
    """Ids of the defaults that physics or model ask for; the others are limits of the advice."""
    text = "".join(file.read_text() for folder in ("physics", "model")
                   for file in (data.parent / "src" / folder).rglob("*.cpp"))
    return set(re.findall(r"DefaultId::(\w+)", text))


def table_mutants(data, first):
    """A mutant for each cell that is not nought."""
    found, asked = [], read_by_physics(data)
    for table, columns in TABLES.items():
        for row, cells in enumerate(table_rows(data, table)):
            if table == "defaults" and cells["id"] not in asked:
                continue
            parts = cells.get("layers", "").split("|") if table == "walls" else []
            for column in list(columns) + ["layer %d" % (i + 1) for i in range(len(parts))]:
                is_layer = column.startswith("layer ")
                text = parts[int(column[6:]) - 1] if is_layer else cells[column]
                if is_layer or float(text or 0) != 0:
                    one = Mutant(first + len(found), "%s: %s, %s" % (table, cells["id"], column),
                                 text)
                    one.cell = table, row, column
                    one.parts = parts
                    found.append(one)
    return found
