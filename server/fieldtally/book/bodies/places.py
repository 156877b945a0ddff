"""Where a pair schools and with whom: the horse, fields, fences and measured tracks."""

from marshmallow import fields

from fieldtally.book import words
from fieldtally.book.bodies.body import Body, centimetres, optional, yes_or_no
from fieldtally.book.fields import Choice, Number, RecordId, Text


class Horse(Body):
    name = Text(80, 1, required=True)
    birth_year = optional(Number, 1990, 2199, "year", whole=True)
    rulebook_id = optional(Text, 60)
    present_level_id = optional(Text, 60)
    resting_heart_rate_bpm = optional(Number, 15, 80, "beats per minute")
    resting_respiration_bpm = optional(Number, 4, 60, "breaths per minute")
    notes = optional(Text, 4000)


class Field(Body):
    name = Text(120, 1, required=True)
    notes = optional(Text, 4000)


class Dimensions(Body):
    """What was measured of one obstacle, in cm. Null means not measured, never zero.

    The three spreads are three measurements: at the highest point, at the base, and of a fence without
    height (a ditch or water).
    """

    height_cm = centimetres(250)
    brush_height_cm = centimetres(300)
    spread_top_cm = centimetres(600)
    spread_base_cm = centimetres(800)
    spread_without_height_cm = centimetres(900)
    drop_cm = centimetres(400)
    water_depth_cm = centimetres(150)
    face_width_cm = centimetres(3000)


class Element(Dimensions):
    letter = Choice(tuple("ABCDEF"), required=True)
    profile = Choice(words.PROFILES, required=True)
    asks = fields.List(Choice(words.ASKS), load_default=list)
    distance_to_next_m = optional(Number, 0.5, 60, "m")


class Fence(Dimensions):
    """One obstacle. `field_id` null: made up on the spot, outside any kept field.

    Latitude and longitude are WGS 84; `position_accuracy_m` is the radius at 95 % that the phone gave, null where
    the fence was put there by hand. `sketch_east_m`, `sketch_north_m`: where it was put on a sketch of a field
    that no phone has located, from that sketch's own middle.
    """

    field_id = optional(RecordId)
    label = Text(60, 1, required=True)
    profile = Choice(words.PROFILES, required=True)
    asks = fields.List(Choice(words.ASKS), load_default=list)
    elements = fields.List(fields.Nested(Element), load_default=list)
    order = optional(Number, 0, 10_000, "place in the list")
    favourite = yes_or_no()
    latitude = optional(Number, -90, 90, "degrees")
    longitude = optional(Number, -180, 180, "degrees")
    position_accuracy_m = optional(Number, 0, 100_000, "m")
    sketch_east_m = optional(Number, -20_000, 20_000, "m")
    sketch_north_m = optional(Number, -20_000, 20_000, "m")
    notes = optional(Text, 4000)


class Track(Body):
    """A measured canter stretch between two flags. `distance_u_m` is its standard uncertainty in m.

    `reading_m` is what a calibrated instrument read (`calibration_id`); `distance_m` and `distance_u_m` are
    then that reading put right. `flags_m`: flags on the way, in m from the first, in the order ridden.
    """

    field_id = optional(RecordId)
    name = Text(120, 1, required=True)
    distance_m = Number(10, 10_000, "m", required=True)
    measured_by = Choice(words.MEASURED_BY, required=True)
    distance_u_m = optional(Number, 0, 1000, "m")
    calibration_id = optional(RecordId)
    reading_m = optional(Number, 1, 20_000, "m")
    flags_m = fields.List(Number(0, 10_000, "m"), load_default=list)
    notes = optional(Text, 4000)
