"""The figures of docs/theory.md that a file does not give, entered a second time. Who changes one in
data/defaults.csv, data/appliance_defaults.csv or the code changes it here, too, with its source in
hand."""

# Air where the file is silent (section 1).
ROOM_K = 293.15
ROOM_HUMIDITY = 0.5
OUTDOOR_HUMIDITY = 0.8
ATTIC_SHARE = CHASE_SHARE = 0.5

# Wind at the chimney top (30) and at the house (31).
MOUTH_OPEN, MOUTH_CAPPED, MOUTH_ADVERSE = -0.4, -0.5, 0.4
HOUSE_WIND_SHARE = 0.6
WINDWARD, LEE, SIDES = 0.6, -0.3, -0.65

# The house (31).
LEAK_EXPONENT = 0.65
CHANGES_50_PA_1_H, CHANGES_TIGHT_1_H = 7.0, 3.0
VOLUME_M3 = 300.0
HOUSE_HEIGHT_M, STOREY_M = 5.0, 2.7
TEST_DENSITY = 1.2
ORIFICE = 0.6

# The opened door (27), (68) to (70).
DOOR_WIDTH_M, DOOR_HEIGHT_M = 0.4, 0.3
TOP_BELOW_OUTLET_M = 0.2
OUTLET_HEIGHT_M = 0.8
DOORWAY = 0.69
VELOCITY_HEADS = 1.5
PASSAGE_SHARE = 0.1
EMBERS_SHARE = 0.25
HEARTH_EMBERS_SHARE = 0.1
OPEN_S = 60.0
BOTH_FACES_W_M2K = 12.0
LINING_W_M2K = 10.0
LINING_J_KGK = 900.0
LINING = {"stove": (0.8, 60.0), "furnace": (1.5, 150.0), "boiler": (0.4, 40.0),
          "fireplace": (1.5, 300.0)}  # m2 and kg
FACE_M_S = 0.24

# Kindling and preheat (29).
KINDLING_K = 373.15
KINDLING_SHARE = 0.3
AIR_J_KGK = 1006.0

# A fire that wants for air (64).
STARVED_POWER = 0.6
