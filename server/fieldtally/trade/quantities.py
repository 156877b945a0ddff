"""Every quantity a rulebook may state: its unit, the range in which it can be, and how a ladder runs.

A limit on a fence is in cm, a distance in m, a speed in m/min, a time in s. Ranges catch a value in the wrong
unit (0.9 or 900 for 90 cm); they are not rules of the sport.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Quantity:
    """`least` and `most` bound the values that can be meant; `rises`: no lower at a higher level."""

    name: str
    unit: str
    least: float
    most: float
    rises: bool = False
    whole: bool = False


def limit(name: str, least: float, most: float) -> Quantity:
    return Quantity(name, "cm", least, most, rises=True)


def count(name: str, most: float, least: float = 0) -> Quantity:
    return Quantity(name, "count", least, most, whole=True)


def penalties(name: str, most: float = 1000) -> Quantity:
    return Quantity(name, "penalties", 0, most)


def named(*quantities: Quantity) -> dict[str, Quantity]:
    return {quantity.name: quantity for quantity in quantities}


# limits of one fence, on cross-country: the three spreads are three measurements
FENCE_LIMITS = named(
    limit("fixed_height_cm", 30, 150),
    limit("brush_height_cm", 30, 180),
    limit("spread_top_cm", 30, 300),  # at the highest point
    limit("spread_base_cm", 30, 400),
    limit("spread_without_height_cm", 30, 600),  # a ditch or water
    limit("drop_cm", 20, 300),
    limit("water_depth_cm", 5, 100),
    limit("ditch_width_cm", 20, 600),
    limit("step_height_cm", 10, 200),
)

CROSS_COUNTRY = FENCE_LIMITS | named(
    count("efforts_min", 60, 1),
    count("efforts_max", 60, 1),
    count("obstacles_min", 60, 1),  # numbered obstacles: a combination is one of them and several efforts
    count("obstacles_max", 60, 1),
    count("combinations_max", 20),
    Quantity("length_min_m", "m", 300, 9000),
    Quantity("length_max_m", "m", 300, 9000),
    Quantity("speed_min_mpm", "m/min", 150, 720, rises=True),
    Quantity("speed_max_mpm", "m/min", 150, 720, rises=True),
    Quantity("speed_mpm", "m/min", 150, 720, rises=True),  # where there is one, not a range
    Quantity("too_fast_speed_mpm", "m/min", 150, 720, rises=True),
    # scoring
    penalties("refusal_first_penalties"),  # first refusal, run-out or circle at an obstacle
    penalties("refusal_second_penalties"),  # second at the same obstacle, on top of the first
    count("stops_at_one_obstacle_that_eliminate", 9, 1),
    count("stops_on_course_that_eliminate", 9, 1),
    penalties("rider_fall_on_feet_penalties"),  # where a first fall that lands standing does not eliminate
    count("rider_falls_that_eliminate", 9, 1),
    count("horse_falls_that_eliminate", 9, 1),  # mandatory retirement ends the round in the same way
    penalties("missed_flag_penalties"),
    penalties("frangible_penalties"),
    penalties("dangerous_riding_penalties"),
    penalties("missed_obstacle_penalties"),
    count("missed_obstacles_that_eliminate", 9, 1),
    penalties("time_penalties_per_second", 10),
    Quantity("time_limit_factor", "times the optimum", 1, 4),
    Quantity("recorded_time_step_s", "s", 0.01, 1),  # a part of a step counts as the next whole step
    penalties("too_fast_penalties_per_second", 10),
    Quantity("too_fast_window_s", "s", 0, 120),  # seconds under the optimum time that cost nothing
)

SHOW_JUMPING = named(
    limit("height_cm", 30, 170),
    limit("raised_height_cm", 30, 170),  # one vertical and one oxer, where a rulebook allows them higher
    limit("oxer_spread_cm", 30, 220),
    limit("triple_bar_spread_cm", 30, 260),
    limit("raised_oxer_spread_cm", 30, 220),
    limit("raised_triple_bar_spread_cm", 30, 260),
    Quantity("speed_mpm", "m/min", 150, 500),
    count("efforts_min", 30, 1),
    count("efforts_max", 30, 1),
    count("obstacles_min", 30, 1),
    count("obstacles_max", 30, 1),
    count("combinations_min", 10),
    count("combinations_max", 10),
    Quantity("two_stride_distance_min_m", "m", 5, 20),
    Quantity("related_distance_min_m", "m", 10, 40),
    count("stops_that_eliminate", 9, 1),
    penalties("knockdown_penalties"),
    penalties("refusal_first_penalties"),
    penalties("refusal_second_penalties"),
    count("rider_falls_that_eliminate", 9, 1),
    count("horse_falls_that_eliminate", 9, 1),
    penalties("time_penalties_per_second", 10),
    Quantity("time_limit_factor", "times the time allowed", 1, 4),
    penalties("jump_penalties_that_retire"),  # compulsory retirement at so many penalties at obstacles
)

DRESSAGE = named(
    Quantity("error_first_marks", "marks", 0, 10),
    Quantity("error_second_marks", "marks", 0, 10),
    count("errors_that_eliminate", 9, 1),
    count("percent_decimals", 4),
    count("penalties_decimals", 4),
    Quantity("penalty_coefficient", "times", 0.5, 2),  # penalties = coefficient x (100 - percent)
)

# who may enter
ENTRY = named(
    Quantity("rider_age_min_years", "years", 3, 30, whole=True),  # the age reached in the calendar year
    Quantity("horse_age_min_years", "years", 3, 12, whole=True),
    Quantity("horse_points_min", "points", 0, 1000, whole=True),
    Quantity("horse_points_max", "points", 0, 1000, whole=True),
)

# what makes an event's result a qualifying one
QUALIFYING_RESULT = named(
    penalties("dressage_penalties_max", 150),
    penalties("cross_country_jump_penalties_max"),
    penalties("cross_country_time_penalties_max"),
    Quantity("cross_country_seconds_over_max", "s", 0, 600),
    penalties("show_jumping_penalties_max"),  # at obstacles
    count("frangible_or_flag_allowed", 5),  # so many 11s or 15s do not void the result
    count("dangerous_riding_allowed", 5),
)

# how long results count
VALIDITY = named(
    Quantity("validity_years", "years", 1, 10),
    Quantity("one_within_weeks", "weeks", 1, 104),  # one result so near before the event, when moving up
    Quantity("lead_days", "days", 0, 60),  # earned so many days before the cross-country day
    Quantity("lead_days_long_format", "days", 0, 60),
    count("requalify_count", 9, 1),  # after losing qualification: so many results at the next lower height
    Quantity("requalify_within_months", "months", 1, 36),
    Quantity("requalify_after_days", "days", 0, 90),
)

SAFETY = named(
    Quantity("concussion_brief_symptoms_max_min", "minutes", 1, 120),
    Quantity("concussion_brief_suspension_min_days", "days", 0, 365),
    Quantity("concussion_lasting_suspension_min_days", "days", 0, 365),
)

BY_PHASE = {"dressage": DRESSAGE, "show_jumping": SHOW_JUMPING, "cross_country": CROSS_COUNTRY}
# every part of a level whose single values can be put right from a rulebook in somebody's hand
BY_PART = BY_PHASE | {"entry": ENTRY, "qualifying_result": QUALIFYING_RESULT}
