"""The closed vocabularies of a logbook. Each value is a term of the trade; docs/glossary.md defines it.

These tuples are the only list of each vocabulary: schemas, TypeScript types, readiness and the screens
all read them from here.
"""

ACTIVITIES = ("cross_country_school", "jumping_school", "flatwork", "fitness", "event")

GOING = ("firm", "good_to_firm", "good", "good_to_soft", "soft", "heavy")

# How a fence is built. Families named in governing bodies' obstacle design guidelines.
PROFILES = (
    "vertical", "oxer", "triple_bar", "ramp", "table", "log", "wall", "palisade", "rail", "roofed",
    "brush", "bullfinch", "corner", "narrow", "chevron", "keyhole", "trakehner", "ditch",
    "ditch_and_brush", "step", "bank", "drop", "water", "sunken_road", "coffin", "cross_pole",
)  # fmt: skip

# What a fence asks of the pair: one fence may ask several things.
ASKS = (
    "fixed", "brush", "wide_table", "ditch", "bank", "drop", "water", "combination",
    "narrow", "corner", "angled_line", "bending_line", "bounce", "airy_rail", "show_jump",
)  # fmt: skip

REINS = ("left", "right", "straight")
GROUNDS = ("level", "uphill", "downhill")
WAYS = ("up", "down", "in", "through", "out")
LANDINGS = ("ground", "water")
COMPANIES = ("alone", "fence_before", "fence_after", "inside_combination")
PACES = ("trot", "canter", "gallop")

OUTCOMES = (
    "clear", "refusal", "run_out", "circle", "knockdown",
    "rider_fall", "horse_fall", "missed_flag", "retired",
)  # fmt: skip

# A stop in the wide sense: the pair was asked and did not go.
STOPS = ("refusal", "run_out", "circle")
FALLS = ("rider_fall", "horse_fall")

ATTITUDES = ("bold", "willing", "looky", "backed_off", "rushed")

MEASURED_BY = ("wheel", "tape", "known", "paces", "phone")
CLOCKS = ("agree", "slept", "wall_changed", "restored")
STARTS = ("flying", "standing")

TRACE_SOURCES = ("phone", "file")

PHOTO_TYPES = ("image/jpeg", "image/webp")
VOICE_TYPES = ("audio/webm", "audio/mp4", "audio/ogg")

EVENT_STATUSES = ("completed", "eliminated", "retired", "withdrawn")
DECISIONS = ("go", "not_yet", "hold")
PHASES = ("dressage", "show_jumping", "cross_country")
RULEBOOK_PARTS = (*PHASES, "entry", "qualifying_result")

ROLES = ("rider", "coach", "scribe", "reader")
