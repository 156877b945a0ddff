"""docs/settings.md says what settings.py says, setting by setting."""

from dataclasses import fields
from pathlib import Path

import pytest

from fieldtally.settings import SettingError, Settings, read_settings, unknown_variables, variable

PAGE = Path(__file__).parents[2] / "docs" / "settings.md"


def row(setting):
    default = {"": "empty", True: "1", False: "0"}.get(setting.default, setting.default)
    shown = "empty" if default == "empty" else f"`{default}`"
    return f"| `{variable(setting.name)}` | {shown} | {setting.metadata['sentence']} |"


def test_the_page_lists_every_setting_as_it_is_and_no_other():
    documented = [line for line in PAGE.read_text(encoding="utf-8").splitlines() if line.startswith("| `FIELDTALLY_")]
    assert documented == [row(setting) for setting in fields(Settings)]


def test_every_setting_is_read_from_its_variable(tmp_path):
    given = {
        "FIELDTALLY_DATA_DIR": str(tmp_path), "FIELDTALLY_DATABASE_URL": "postgresql://a:b@db/fieldtally",
        "FIELDTALLY_SECRET_KEY": "k" * 40, "FIELDTALLY_HOST": "0.0.0.0", "FIELDTALLY_PORT": "80",
        "FIELDTALLY_THREADS": "3", "FIELDTALLY_HTTPS": "yes", "FIELDTALLY_TRUSTED_PROXY": "*",
        "FIELDTALLY_TRUSTED_PROXY_COUNT": "2", "FIELDTALLY_MAX_REQUEST_BYTES": "70000",
        "FIELDTALLY_SESSION_DAYS": "9", "FIELDTALLY_SESSION_MAX_DAYS": "10", "FIELDTALLY_SIGN_IN_LIMIT": "1 per day",
        "FIELDTALLY_SIGN_IN_ADDRESS_LIMIT": "2 per day", "FIELDTALLY_REQUEST_LIMIT": "3 per day",
        "FIELDTALLY_LIMIT_STORAGE": "redis://cache", "FIELDTALLY_BLOBS_URL": "memory://media",
        "FIELDTALLY_MEDIA_QUOTA_BYTES": "2000000", "FIELDTALLY_MEDIA_LIMIT": "4 per day",
    }  # fmt: skip
    settings, usual = read_settings(given), Settings()
    assert given.keys() == {variable(one.name) for one in fields(Settings)}
    assert not [one.name for one in fields(Settings) if getattr(settings, one.name) == getattr(usual, one.name)]
    assert (settings.https, settings.trusted_proxy_count, settings.data_dir) == (True, 2, tmp_path)


def test_an_empty_variable_counts_as_not_set():
    assert read_settings({"FIELDTALLY_PORT": "", "FIELDTALLY_HTTPS": ""}) == Settings()


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("PORT", "eighty"), ("PORT", "-1"), ("PORT", "65536"), ("PORT", "８０"), ("THREADS", "0"), ("HTTPS", "maybe"),
        ("SECRET_KEY", "too short"), ("DATABASE_URL", "mysql://a/b"), ("DATABASE_URL", "nonsense"),
        ("SIGN_IN_LIMIT", "sometimes"), ("MAX_REQUEST_BYTES", "16M"), ("BLOBS_URL", "nowhere://x"),
        ("MEDIA_LIMIT", "now and then"),
    ],
)  # fmt: skip
def test_a_setting_that_cannot_be_is_named_with_its_cure(name, text):
    with pytest.raises(SettingError) as refused:
        read_settings({f"FIELDTALLY_{name}": text})
    assert refused.value.variable == f"FIELDTALLY_{name}"
    assert refused.value.message and refused.value.fix


def test_postgresql_without_a_key_is_refused():
    with pytest.raises(SettingError, match="FIELDTALLY_SECRET_KEY"):
        read_settings({"FIELDTALLY_DATABASE_URL": "postgresql://db/fieldtally"})


def test_a_slip_of_the_pen_is_noticed():
    assert unknown_variables({"FIELDTALLY_PROT": "1", "FIELDTALLY_PORT": "1", "PATH": "x"}) == ["FIELDTALLY_PROT"]
