"""Fields of a record that state one fact between them.

Two edits of different fields merge; two edits inside one of these groups do not, for the mixture would
state a fact that nobody saw: one person's distance with another's time, marks without their percentage.
"""

TOGETHER: dict[str, tuple[tuple[str, ...], ...]] = {
    "horse": (("rulebook_id", "present_level_id"),),
    "fence": (
        ("profile", "elements", "asks", "height_cm", "brush_height_cm", "spread_top_cm", "spread_base_cm",
         "spread_without_height_cm", "drop_cm", "water_depth_cm", "face_width_cm"),
        ("latitude", "longitude", "position_accuracy_m"),
        ("sketch_east_m", "sketch_north_m"),
    ),
    "track": (("distance_m", "measured_by", "distance_u_m", "calibration_id", "reading_m", "flags_m"),),
    "calibration": (("instrument", "measured_by", "taped_distance_m", "taped_u_m", "walked_m", "reading_step_m"),),
    "outing": (("horse_id", "date"),),
    "attempt": (
        ("fence_id", "element", "sequence_id", "height_cm"),
        ("canter_id", "canter_offset_ms"),
    ),
    "timed_canter": (
        ("track_id", "distance_m", "distance_u_m", "measured_by",
         "elapsed_ms", "monotonic_ms", "wall_ms", "clock", "splits_ms", "flags_m"),
        ("start", "countdown_s"),
        ("target_speed_mpm", "level_id"),
    ),
    "flatwork_test": (("test", "percent", "marks", "errors"), ("rulebook_id", "level_id")),
    "jumping_round": (
        ("height_cm", "efforts", "combinations"),
        ("knockdowns", "refusals", "rider_fall", "horse_fall", "completed", "time_penalties", "jumps"),
    ),
    "event_result": (
        ("rulebook_id", "level_id"),
        ("status", "dressage_penalties", "show_jumping_jump_penalties", "show_jumping_time_penalties",
         "cross_country_jump_penalties", "cross_country_time_penalties", "cross_country_seconds_over",
         "rider_fall", "horse_fall"),
        ("place", "starters"),
    ),
    "word": (("horse_id", "rulebook_id", "level_id", "decision", "reason", "expires_on"),),
    "rulebook_value": (("rulebook_id", "level_id", "phase", "quantity", "value", "edition", "article"),),
    "trace": (
        ("source", "started_at_ms", "dt_ms", "latitude_udeg", "longitude_udeg", "accuracy_m", "breaks", "left_out"),
    ),
    "bar_change": (("rulebook_id", "level_id", "requirement_id", "quantity", "value"),),
    "photo": (("media_sha256", "media_type", "size_bytes", "width_px", "height_px"),),
    "voice_note": (("media_sha256", "media_type", "size_bytes", "duration_ms"),),
}  # fmt: skip
