"""`fieldtally pace`, as typed."""

import json

import pytest
from click.testing import CliRunner

from fieldtally.cli import main


def run(*arguments):
    return CliRunner().invoke(main, ["pace", *arguments])


def test_speed_with_its_error_and_early_or_late():
    result = run("--distance", "420m", "--time", "63.2s", "--target", "420")
    assert result.exit_code == 0
    assert result.stdout == "399 ± 4 m/min, 21 slow\n3.2 s late, 22.4 m late at the second flag\n"


def test_json_says_the_same():
    result = run("--distance", "0.42 km", "--time", "1:03.2", "--target", "420 m/min", "--json")
    data = json.loads(result.stdout)
    assert data["headline"] == "399 ± 4 m/min, 21 slow"
    assert data["speed_mpm"] == pytest.approx(398.734, abs=1e-3)
    assert (data["late"]["seconds_late"], data["late"]["verdict"]) == (pytest.approx(3.2), "slow")


def test_a_time_in_whole_seconds_is_less_sure_and_a_tape_surer():
    whole = json.loads(run("--distance", "420", "--time", "63", "--json").stdout)
    tenths = json.loads(run("--distance", "420", "--time", "63.0", "--json").stdout)
    tape = json.loads(run("--distance", "420", "--time", "63.0", "--measured-by", "tape", "--json").stdout)
    assert whole["speed_u_mpm"] > tenths["speed_u_mpm"] > tape["speed_u_mpm"]
    assert "late" not in tape


def test_yards_and_an_own_error():
    data = json.loads(run("--distance", "440yd", "--time", "60.0", "--distance-error", "2m", "--json").stdout)
    assert (data["distance_m"], data["distance_u_m"]) == (pytest.approx(402.336), 2)


@pytest.mark.parametrize("wrong, field", [
    (("--distance", "420m", "--time", "0"), "time"),
    (("--distance", "420m", "--time", "soon"), "time"),
    (("--distance", "420m", "--time", "nan"), "time"),
    (("--distance", "-420m", "--time", "63.2"), "distance"),
    (("--distance", "0", "--time", "63.2"), "distance"),
    (("--distance", "420 furlongs", "--time", "63.2"), "distance"),
    (("--distance", "420m", "--time", "63.2", "--target", "0"), "target"),
    (("--distance", "420m", "--time", "63.2", "--target", "fast"), "target"),
    (("--distance", "420m", "--time", "63.2", "--measured-by", "eye"), "measured_by"),
])  # fmt: skip
def test_a_mistake_is_answered_on_stderr_with_status_2(wrong, field):
    result = run(*wrong)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith(f"fieldtally: {field}: ") and len(result.stderr.splitlines()) == 2
