"""The client's copy of where a bar's numbers come from and how far they can be turned."""

from pathlib import Path

import pytest

from fieldtally.readiness import bar_typescript
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.bar_range import range_of, trouble_with, within


def test_shipped_ts_is_up_to_date():
    """If this fails: python -m fieldtally.readiness.bar_typescript"""
    assert bar_typescript.TARGET.read_text(encoding="utf-8") == bar_typescript.typescript()


def test_running_the_module_writes_the_file(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(bar_typescript, "TARGET", tmp_path / "new" / "shipped.ts")
    bar_typescript.main()
    assert Path(capsys.readouterr().out.strip()).read_text(encoding="utf-8") == bar_typescript.typescript()


@pytest.mark.parametrize("requirement", shipped_bars().common, ids=lambda each: each.id)
def test_every_default_can_be_meant_and_its_source_is_the_clients(requirement):
    ours = bar_typescript.sources(shipped_bars().common)[requirement.weigh]
    for name, value in requirement.numbers.items():
        if name not in bar_typescript.NO_NUMBERS:
            assert trouble_with(name, value) is None, name
            source = requirement.source if name in bar_typescript.own(requirement) else ours[name]
            assert source == requirement.number_sources[name]


def test_what_would_be_refused_counts_as_the_nearest_that_means_something():
    for name in bar_typescript.ranges(shipped_bars().common):
        least, most = range_of(name)
        assert (within(name, least - 1), within(name, most + 1)) == (least, most)
        assert trouble_with(name, least) is None is trouble_with(name, most)
        assert trouble_with(name, most + 1)[0] == "out_of_range" == trouble_with(name, least - 1)[0]
