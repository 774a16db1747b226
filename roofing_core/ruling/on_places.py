"""Rules on where a roof stands and what stands under it: wind, ventilation, loads."""

from __future__ import annotations

from typing import Literal

from roofing_core.ruling.rule import PRACTICE, Source, residential, rule

#: ASTM D7158, ultimate design speeds: the makers' association's bulletin and a trade journal.
UpliftClass = Literal["D", "G", "H"]
CLASS_SPEEDS: tuple[tuple[UpliftClass, float], ...] = (("D", 116.0), ("G", 155.0), ("H", 194.0))

_CLASSES = Source(title="ASTM D7158", edition="24a", place="4.1", known="restated")
_CONDITIONS = Source(title="ASTM D7158", edition="24a", place="6.3")
_WINDY = Source(title="International Building Code", edition="2018", place="Table 1507.1.1(3)")

#: From this ultimate design speed on the table has a closer pattern of cap nails.
HIGH_WIND_SHEETS = 140.0

#: Above this one six nails: 90 mph by the older maps of the fact sheet, as the classes count both.
HIGH_WIND_NAILS = 116.0

WIND_CLASS = rule(
    "wind.class",
    "The shingle is of a class that holds in a design wind of {} or more.",
    applies="Where the ultimate design wind speed is given and the class is known. The limit is"
    " that speed; as listed, the fastest of class D.",
    at_least=116.0,
    unit="mph",
    sources=(_CLASSES,),
    cure="Use shingles of a class that holds in that wind.",
)

WIND_CLASS_KNOWN = rule(
    "wind.class_known",
    "At least {} class of the shingle, of those on its wrapper, is known.",
    applies="Where the ultimate design wind speed is given.",
    at_least=1.0,
    unit="count",
    severity="worth_knowing",
    sources=(Source(title="International Building Code", edition="2018", place="1504.1.1"),),
    cure="Read the class on the wrapper: the code asks for it to be printed there.",
)

WIND_CONDITIONS = rule(
    "wind.conditions",
    "The classes of shingles hold where none of these is so: open water or flat open land about"
    " (exposure D), a roof over {60 ft} high, a hill or ridge that speeds up the wind.",
    applies="Where the ultimate design wind speed is given.",
    at_most=0.0,
    unit="count",
    severity="against_practice",
    sources=(_CONDITIONS,),
    cure="Have a licensed designer work out the uplift, and ask those who make the shingle.",
)

WIND_NAILS = rule(
    "wind.nails",
    "In a design wind over {116 mph} every whole strip has at least {} nails.",
    applies="Where the ultimate design wind speed is given.",
    at_least=6.0,
    unit="count",
    severity="against_practice",
    sources=(
        Source(title="FEMA 499", edition="2005", place="fact sheet 20", known="restated"),
    ),
    cure="Nail as for high wind: {} nails a strip, where the printed instructions place them.",
)  # fmt: skip

WIND_LAP_NAILS = rule(
    "wind.lap_nails",
    "In a design wind of {140 mph} or more cap nails along the laps of underlayment stand at most"
    " {} apart.",
    applies="Where the ultimate design wind speed is given.",
    at_most=6.0,
    sources=(_WINDY,),
    cure="Nail the laps {} apart or closer.",
)

WIND_FIELD_NAILS = rule(
    "wind.field_nails",
    "In a design wind of {140 mph} or more cap nails between the laps of underlayment stand at most"
    " {} apart.",
    applies="Where the ultimate design wind speed is given.",
    at_most=12.0,
    sources=(_WINDY,),
    cure="Nail between the laps {} apart or closer.",
)

WIND_HEAD_LAP = rule(
    "wind.head_lap",
    "In a design wind of {140 mph} or more each row of underlayment laps the one below by at least"
    " {}.",
    applies="Where the ultimate design wind speed is given. Underlayment in one layer.",
    at_least=4.0,
    sources=residential("Table R905.1.1(2)", read=()),
    cure="Lap the rows by {} or more.",
)

_VENTS = residential("R806.2", restated=("2015", "2021"))
_BALANCE = residential("R806.2", read=(), restated=("2015", "2018", "2021"))

VENT_AREA = rule(
    "vents.area",
    "The net free area of all vents is at least {}.",
    applies="Where the area of the vented space is given: 1/150 of it, or 1/300 where the job"
    " claims the balance for that; as listed, of {1500 ft2} at 1/150.",
    at_least=1440.0,
    unit="in2",
    sources=_VENTS,
    cure="Have {} or more of low vents beside the high ones.",
)

VENT_LEAST_HIGH = rule(
    "vents.least_high",
    "At least {} of the net free area that is asked for is high up.",
    applies="Where 1/300 is claimed: within {3 ft} below the ridge or the highest point, plumb.",
    at_least=40.0,
    unit="percent",
    sources=_BALANCE,
    cure="Have more high vents, as far as that share.",
)

VENT_MOST_HIGH = rule(
    "vents.most_high",
    "At most {} of the net free area that is asked for is high up.",
    applies="Where 1/300 is claimed: within {3 ft} below the ridge or the highest point, plumb.",
    at_most=50.0,
    unit="percent",
    sources=_BALANCE,
    cure="Have less of high vents, and as much more of low ones.",
)

STACK_HEIGHT = rule(
    "load.stack",
    "Bundles of shingles are set down at most {} high.",
    applies="Every roof, while it is worked on.",
    at_most=2.0,
    unit="count",
    severity="against_practice",
    sources=(
        Source(
            title="Building Component Safety Information",
            edition="",
            place="B4, construction loading",
            known="restated",
        ),
    ),
    cure="Set the bundles down {} high or lower, over several rafters, and spread them.",
)

LAYERS = rule(
    "load.layers",
    "At most {} layers of covering lie over each other.",
    applies="Where old covering stays in place.",
    at_most=2.0,
    unit="count",
    sources=residential("R908.3.1.1", read=(), restated=("2018",)),
    cure="Tear the old covering off, down to {} layer or none.",
)

DEAD_LOAD = rule(
    "load.dead",
    "What the plan lays weighs at most {} on the plan of the roof.",
    applies="Where the job says what the designer of the roof allows. The limit is that; as listed,"
    " of one sort of roof in a federal design guide.",
    at_most=15.0,
    unit="lb/ft2",
    severity="stops_the_job",
    sources=PRACTICE,
    cure="Use lighter materials, or have a licensed designer look at the framing.",
)

RULES = (
    WIND_CLASS,
    WIND_CLASS_KNOWN,
    WIND_CONDITIONS,
    WIND_NAILS,
    WIND_LAP_NAILS,
    WIND_FIELD_NAILS,
    WIND_HEAD_LAP,
    VENT_AREA,
    VENT_LEAST_HIGH,
    VENT_MOST_HIGH,
    STACK_HEIGHT,
    LAYERS,
    DEAD_LOAD,
)
"""All of these, the wind first."""
