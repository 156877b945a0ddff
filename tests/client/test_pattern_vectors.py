"""The chances the phone's patterns rest on: the file is what scipy says, and what published examples print."""

import json

import make_pattern_vectors
import pytest

VECTORS = json.loads(make_pattern_vectors.TARGET.read_text(encoding="utf-8"))


def test_the_file_is_what_scipy_says():
    for kept, made in zip(VECTORS, make_pattern_vectors.vectors(), strict=True):
        assert (kept["why"], kept["input"]) == (made["why"], made["input"])
        assert kept["expected"] == pytest.approx(made["expected"], rel=1e-9), kept["why"]


@pytest.mark.parametrize("why, printed, within", [
    ("all four cups right", 1 / 70, 1e-9),  # Fisher, The Design of Experiments, 1935
    ("three right or more", 17 / 70, 1e-9),
    ("penicillin and rabbits", 0.020, 0.0005),  # help page of R's mantelhaen.test, exact, alternative "greater"
])  # fmt: skip
def test_as_published(why, printed, within):
    (vector,) = [each for each in VECTORS if why in each["why"]]
    assert vector["expected"]["p"] == pytest.approx(printed, abs=within)
