"""A presentation in a rider's words."""

IN_WORDS = {
    ("rein", "left"): "on the left rein", ("rein", "right"): "on the right rein", ("rein", "straight"): "straight on",
    ("ground", "uphill"): "uphill", ("ground", "downhill"): "downhill", ("ground", "level"): "on the level",
    ("company", "alone"): "on its own", ("company", "fence_before"): "after another fence",
    ("company", "fence_after"): "with a fence to follow",
    ("company", "inside_combination"): "inside a combination",
    ("pace", "trot"): "from trot", ("pace", "canter"): "from canter", ("pace", "gallop"): "from gallop",
    ("way", "up"): "going up", ("way", "down"): "going down", ("way", "in"): "going in",
    ("way", "through"): "going through", ("way", "out"): "coming out",
    ("landing", "water"): "landing in water", ("landing", "ground"): "landing on the ground",
}  # fmt: skip
