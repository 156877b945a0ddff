"""One body of every kind with every field filled, and one with as few as are allowed."""

from support.riders import new_id

HORSE, OUTING, FENCE, FIELD, TRACK, CANTER, CALIBRATION = (new_id() for _ in range(7))

DIMENSIONS = {
    "height_cm": 85, "brush_height_cm": 105, "spread_top_cm": 90, "spread_base_cm": 140.5,
    "spread_without_height_cm": 150, "drop_cm": 90, "water_depth_cm": 25, "face_width_cm": 300,
}  # fmt: skip
PRESENTATION = {
    "rein": "left", "ground": "uphill", "way": "up", "landing": "ground", "company": "fence_before",
    "pace": "canter",
}  # fmt: skip

FULL = {
    "horse": {
        "name": "Bramble", "birth_year": 2016, "rulebook_id": "rulebook", "present_level_id": "level",
        "resting_heart_rate_bpm": 34, "resting_respiration_bpm": 12, "notes": "Careful in front",
    },
    "field": {"name": "Home", "notes": "Gate sticks"},
    "fence": DIMENSIONS | {
        "field_id": FIELD, "label": "Log at the oak", "profile": "log", "asks": ["fixed", "combination"],
        "elements": [DIMENSIONS | {"letter": "A", "profile": "log", "asks": ["fixed"], "distance_to_next_m": 7.3}],
        "order": 3, "favourite": True, "latitude": 51.5, "longitude": -1.25, "position_accuracy_m": 4,
        "sketch_east_m": 40, "sketch_north_m": -12.5, "notes": "Soft landing",
    },
    "track": {
        "field_id": FIELD, "name": "Long side", "distance_m": 412.5, "measured_by": "wheel",
        "distance_u_m": 0.8, "calibration_id": CALIBRATION, "reading_m": 415, "flags_m": [100, 300],
        "notes": "From oak to gate",
    },
    "calibration": {
        "instrument": "Yard wheel", "measured_by": "wheel", "taped_distance_m": 50, "taped_u_m": 0.05,
        "walked_m": [50.3, 50.5, 50.4], "reading_step_m": 0.1, "date": "2026-05-03", "note": "Short grass",
    },
    "outing": {
        "horse_id": HORSE, "field_id": FIELD, "date": "2026-05-03", "activity": "cross_country_school",
        "going": "good", "rider_confidence": 4, "minutes_in_saddle": 55, "from_memory": False, "closed": True,
        "accompanied": True, "notes": "Windy",
    },
    "attempt": {
        "outing_id": OUTING, "fence_id": FENCE, "element": "A", "sequence_id": new_id(), "outcome": "clear",
        "presentation": PRESENTATION, "attitude": "bold", "height_cm": 85, "canter_id": CANTER,
        "canter_offset_ms": 12_400, "note": "Straight",
    },
    "timed_canter": {
        "outing_id": OUTING, "track_id": TRACK, "distance_m": 412.5, "distance_u_m": 0.8,
        "measured_by": "wheel", "elapsed_ms": 58_240, "monotonic_ms": 58_240, "wall_ms": 58_243,
        "clock": "agree", "splits_ms": [29_000, 58_240], "target_speed_mpm": 420, "level_id": "level",
        "start": "standing", "countdown_s": 5, "set_id": CANTER, "flags_m": [100, 300], "over_fences": True,
        "note": "Headwind",
    },
    "interval_set": {
        "outing_id": OUTING, "intervals": [{"work_s": 180, "rest_s": 120, "speed_mpm": 400}],
        "recoveries": [{"minute": 10, "heart_rate_bpm": 64, "respiration_bpm": 24}], "from_memory": True,
        "note": "Uphill",
    },
    "flatwork_test": {
        "horse_id": HORSE, "outing_id": OUTING, "date": "2026-05-03", "test": "A test", "rulebook_id": "rulebook",
        "level_id": "level", "percent": 68.25, "marks": [{"movement": "Halt", "mark": 6.5, "coefficient": 2}],
        "errors": 1, "judged": True, "note": "Tense at first",
    },
    "jumping_round": {
        "horse_id": HORSE, "outing_id": OUTING, "date": "2026-05-03", "height_cm": 95, "efforts": 12,
        "knockdowns": 1, "refusals": 0, "combinations": 2, "rider_fall": False, "horse_fall": False,
        "completed": True, "time_penalties": 0.4, "judged": True,
        "jumps": [{"label": "1", "outcome": "clear"}, {"label": "2", "outcome": "knockdown"}], "note": "Rail behind",
    },
    "event_result": {
        "horse_id": HORSE, "outing_id": OUTING, "date": "2026-05-03", "event": "Spring event",
        "rulebook_id": "rulebook", "level_id": "level", "status": "completed", "dressage_penalties": 31.5,
        "show_jumping_jump_penalties": 4, "show_jumping_time_penalties": 0, "cross_country_jump_penalties": 0,
        "cross_country_time_penalties": 3.6, "cross_country_seconds_over": 9, "dangerous_riding": False,
        "frangible_or_flag": 0, "rider_fall": False, "horse_fall": False, "place": 5, "starters": 22,
        "note": "Muddy",
    },
    "note": {"about_id": OUTING, "text": "Zoë watched 🐴"},
    "remark": {"about_id": OUTING, "text": "Softer hand before the ditch"},
    "word": {
        "horse_id": HORSE, "rulebook_id": "rulebook", "level_id": "level", "decision": "not_yet",
        "reason": "Water first", "expires_on": "2026-09-01",
    },
    "rulebook_value": {
        "rulebook_id": "rulebook", "level_id": "level", "phase": "cross_country", "quantity": "speed_mpm",
        "value": 435, "edition": "2026", "article": "12.3",
    },
    "bar_change": {
        "rulebook_id": "rulebook", "level_id": "level", "requirement_id": "ditch_left", "quantity": "attempts",
        "value": 5, "reason": "Green horse",
    },
    "trace": {
        "outing_id": OUTING, "canter_id": CANTER, "source": "phone", "name": "Top hedge",
        "started_at_ms": 1_777_799_553_120, "dt_ms": [0, 1000, 1010], "latitude_udeg": [51_500_000, 60, -2],
        "longitude_udeg": [-1_250_000, 3, 4], "accuracy_m": [5, 4, 6], "breaks": [2], "left_out": 1,
    },
    "photo": {
        "about_id": FENCE, "media_sha256": "5f" * 32, "media_type": "image/jpeg", "size_bytes": 214_003,
        "width_px": 1600, "height_px": 1200, "caption": "Soft on the left",
    },
    "voice_note": {
        "about_id": OUTING, "media_sha256": "a0" * 32, "media_type": "audio/webm", "size_bytes": 96_512,
        "duration_ms": 21_400, "text": "Much straighter to the corner today",
    },
}  # fmt: skip

LEAST = {
    kind: {name: FULL[kind][name] for name in names.split()}
    for kind, names in {
        "horse": "name", "field": "name", "fence": "label profile", "track": "name distance_m measured_by",
        "calibration": "instrument measured_by taped_distance_m walked_m date",
        "outing": "horse_id date activity", "attempt": "outing_id fence_id outcome",
        "timed_canter": "outing_id distance_m measured_by elapsed_ms", "interval_set": "outing_id intervals",
        "flatwork_test": "horse_id date test percent", "jumping_round": "horse_id date height_cm efforts",
        "event_result": "horse_id date event level_id status", "note": "about_id text",
        "remark": "about_id text", "word": "horse_id rulebook_id level_id decision reason",
        "rulebook_value": "rulebook_id level_id phase quantity edition article",
        "bar_change": "rulebook_id level_id requirement_id quantity reason",
        "trace": "outing_id source latitude_udeg longitude_udeg",
        "photo": "about_id media_sha256 media_type size_bytes width_px height_px",
        "voice_note": "about_id media_sha256 media_type size_bytes duration_ms",
    }.items()
}  # fmt: skip
