"""Rulebooks as data: what a file may say, what is refused with which words, and what corrections change."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.book import words
from fieldtally.trade import asks, quantities
from fieldtally.trade.correction import trouble_with
from fieldtally.trade.rulebook import RulebookError, available, load_file, shipped, with_corrections
from fieldtally.trade.rulebook_file import SHIPPED, add
from fieldtally.trade.stated import GRADES

BOOKS = shipped()

GOOD = """
id = "yard-2026"
title = "Our yard"
body = "the yard"
edition = "2026"
status = "current"
[sources.board]
title = "board in the tack room, article 3"
grade = "secondary"
[scoring.cross_country]
refusal_first_penalties = { value = 20, source = "board" }
[validity]
validity_years = { value = 2, source = "board" }
[[levels]]
id = "low"
name = "Low"
[levels.cross_country]
fixed_height_cm = { value = 80, source = "board", stated = ["2'7\\"", "0.80 m"] }
spread_top_cm = { value = 90, source = "board" }
spread_base_cm = { value = 120, source = "from_memory", note = "nobody wrote it down" }
speed_mpm = { value = 400, source = "board" }
efforts_min = { value = 12, source = "board" }
efforts_max = { value = 16, source = "board" }
[[levels.asks]]
ask = "bank"
text = "A bank up."
presentation = { way = "up" }
source = "board"
[[levels]]
id = "high"
name = "High"
[levels.cross_country]
fixed_height_cm = { value = 90, source = "board" }
refusal_first_penalties = { value = 25, source = "board" }
[[levels.eligibility]]
who = "pair"
text = "Two at Low."
needs = [{ count = 2, at = "low" }]
in_force_from = 2026-01-01
source = "board"
"""


def written(tmp_path, text, name="yard.toml"):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return path


def test_a_good_file(tmp_path):
    book = load_file(written(tmp_path, GOOD))
    low, high = book.levels
    assert (low.id, low.order, high.id, high.order) == ("low", 1, "high", 2)
    value = low.stated("cross_country", "fixed_height_cm")
    assert (value.value, value.unit, value.grade, value.source, value.stated) == (
        80, "cm", "secondary", "board in the tack room, article 3", "2'7\" = 0.80 m")  # fmt: skip
    assert low.stated("cross_country", "spread_base_cm").grade == "from_memory"
    assert low.stated("cross_country", "spread_base_cm").source == "from memory"
    assert low.value("cross_country", "drop_cm") is None and low.stated("show_jumping", "height_cm") is None
    assert low.asks[0].presentation == {"way": "up"}
    assert high.eligibility[0].options[0][0].at == "low" and high.eligibility[0].in_force_from == "2026-01-01"
    assert book.asks_by("high") == {"bank"}


def test_scoring_is_handed_down_and_a_level_may_differ(tmp_path):
    book = load_file(written(tmp_path, GOOD))
    scores = [level.value("cross_country", "refusal_first_penalties") for level in book.levels]
    assert scores == [20, 25]
    assert book.scoring["cross_country"]["refusal_first_penalties"].value == 20


def test_an_unknown_level_names_the_known_ones(tmp_path):
    with pytest.raises(KeyError, match="low, high"):
        load_file(written(tmp_path, GOOD)).level("middle")


HEIGHT = 'fixed_height_cm = { value = 80, source = "board", stated = ["2\'7\\"", "0.80 m"] }'
REFUSED = [
    ("an unknown key of the file", GOOD.replace("edition =", "edtion ="), "edition|edtion", "missing|not known"),
    ("an unknown quantity", GOOD.replace("speed_mpm", "sped_mpm"), "levels.low.cross_country.sped_mpm", "not known"),
    ("a spread without its name", GOOD.replace("spread_top_cm", "spread_cm"), "levels.low.cross_country.spread_cm",
     "not known"),
    ("a quantity of the other phase", GOOD.replace("[levels.cross_country]\nfixed_height_cm = { value = 90",
                                                   "[levels.show_jumping]\nfixed_height_cm = { value = 90"),
     "levels.high.show_jumping.fixed_height_cm", "not known"),
    ("no source", GOOD.replace('speed_mpm = { value = 400, source = "board" }', "speed_mpm = { value = 400 }"),
     "levels.low.cross_country.speed_mpm.source", "no source"),
    ("a bare number", GOOD.replace('speed_mpm = { value = 400, source = "board" }', "speed_mpm = 400"),
     "levels.low.cross_country.speed_mpm", "table"),
    ("a source that is not listed", GOOD.replace('value = 400, source = "board"', 'value = 400, source = "bord"'),
     "levels.low.cross_country.speed_mpm.source", "not one of the file's"),
    ("an ask without source", GOOD.replace('presentation = { way = "up" }\nsource = "board"', ""),
     "levels.low.asks.0.source", "no source"),
    ("an unknown ask", GOOD.replace('ask = "bank"', 'ask = "banks"'), "levels.low.asks.0.ask", "'banks' is not known"),
    ("an unknown way", GOOD.replace('way = "up"', 'way = "upwards"'), "levels.low.asks.0.presentation.way", "upwards"),
    ("a grade nobody knows", GOOD.replace('grade = "secondary"', 'grade = "sure"'), "sources.board.grade", "sure"),
    ("the reserved source", GOOD.replace("sources.board", "sources.from_memory").replace('"board"', '"from_memory"'),
     "sources.from_memory", "taken"),
    ("metres for centimetres", GOOD.replace("{ value = 80,", "{ value = 0.8,"),
     "levels.low.cross_country.fixed_height_cm.value", "0.8 cm cannot be meant"),
    ("millimetres for centimetres", GOOD.replace("{ value = 80,", "{ value = 800,"),
     "levels.low.cross_country.fixed_height_cm.value", "800 cm cannot be meant"),
    ("metres a second", GOOD.replace("{ value = 400,", "{ value = 6.67,"), "levels.low.cross_country.speed_mpm.value",
     "6.67 m/min cannot be meant"),
    ("half an effort", GOOD.replace("efforts_min = { value = 12,", "efforts_min = { value = 12.5,"),
     "levels.low.cross_country.efforts_min.value", "not a whole number"),
    ("a number as text", GOOD.replace("{ value = 400,", '{ value = "400",'), "levels.low.cross_country.speed_mpm.value",
     "not a number"),
    ("not a number", GOOD.replace("{ value = 400,", "{ value = nan,"), "levels.low.cross_country.speed_mpm.value",
     "not a number"),
    ("true for a number", GOOD.replace("{ value = 400,", "{ value = true,"), "levels.low.cross_country.speed_mpm.value",
     "not a number"),
    ("a ladder that falls", GOOD.replace("fixed_height_cm = { value = 90", "fixed_height_cm = { value = 75"),
     "levels.high.cross_country.fixed_height_cm", "75 at High is below 80 at Low"),
    ("a speed that falls", GOOD + "[levels.x]\n", "levels.high.x", "not known"),
    ("units that disagree", GOOD.replace('"0.80 m"', '"0.90 m"'), "levels.low.cross_country.fixed_height_cm.stated",
     "0.90 m is 90 cm, not 80 cm"),
    ("feet that disagree", GOOD.replace("2'7\\\"", "2'11\\\""), "levels.low.cross_country.fixed_height_cm.stated",
     "not 80 cm"),
    ("a stated length nobody can read", GOOD.replace('"0.80 m"', '"knee high"'),
     "levels.low.cross_country.fixed_height_cm.stated", "not a length"),
    ("top wider than base", GOOD.replace("spread_top_cm = { value = 90", "spread_top_cm = { value = 130"),
     "levels.low.cross_country.spread_top_cm", "130 is above spread_base_cm 120"),
    ("a least above a most", GOOD.replace("efforts_min = { value = 12", "efforts_min = { value = 20"),
     "levels.low.cross_country.efforts_min", "20 is above efforts_max 16"),
    ("the same level twice", GOOD.replace('id = "high"', 'id = "low"'), "levels.low.id", "two levels"),
    ("an id that is none", GOOD.replace('id = "high"', 'id = "High level"'), "levels.High level.id", "not an id"),
    ("results at a level there is not", GOOD.replace('at = "low"', 'at = "lower"'), "levels.high.eligibility[0].at",
     "no level 'lower'"),
    ("a rule that asks for nothing", GOOD.replace('needs = [{ count = 2, at = "low" }]\n', ""),
     "levels.high.eligibility.0", "needs or options"),
    ("a rule for nobody", GOOD.replace('who = "pair"', 'who = "team"'), "levels.high.eligibility.0.who", "team"),
    ("a day as text", GOOD.replace("= 2026-01-01", '= "2026-01-01"'), "levels.high.eligibility.0.in_force_from",
     "not a day"),
    ("no levels", GOOD.partition("[[levels]]")[0], "levels", "missing"),
    ("an empty list of levels", GOOD.partition("[sources.board]")[0] + "levels = []\n", "levels", "none"),
    ("no TOML", "id = \n", "file", "not TOML"),
    ("an unknown base", 'extends = "yard-1999"\n' + GOOD, "extends", "no shipped rulebook"),
    ("a base elsewhere", 'extends = "../rulebooks/us-2014"\nid = "mine"\n[[levels]]\nid = "x"\nname = "X"\n',
     "levels.x.after", "not clear where"),
]  # fmt: skip


@pytest.mark.parametrize("text, key, reason", [case[1:] for case in REFUSED], ids=[case[0] for case in REFUSED])
def test_refused(tmp_path, text, key, reason):
    assert text != GOOD
    with pytest.raises(RulebookError) as refusal:
        load_file(written(tmp_path, text))
    wrong = refusal.value
    assert wrong.file == "yard.toml"
    assert wrong.key in key.split("|")
    assert any(part in wrong.reason for part in reason.split("|")), wrong.reason
    assert wrong.fix
    assert wrong.key in str(wrong) and wrong.file in str(wrong)


def test_a_value_in_metres_is_told_what_to_write(tmp_path):
    with pytest.raises(RulebookError) as refusal:
        load_file(written(tmp_path, GOOD.replace("{ value = 80,", "{ value = 0.8,")))
    assert refusal.value.fix == "If it is in m, write 80."


def test_a_top_speed_may_not_fall_from_a_single_speed_to_a_range(tmp_path):
    slower = 'speed_min_mpm = { value = 350, source = "board" }\nspeed_max_mpm = { value = 390, source = "board" }\n'
    text = GOOD.replace("refusal_first_penalties = { value = 25", slower + "refusal_first_penalties = { value = 25")
    with pytest.raises(RulebookError, match="390 m/min at High is below 400 at Low"):
        load_file(written(tmp_path, text))


def test_files_that_cannot_be_read(tmp_path):
    with pytest.raises(RulebookError, match="cannot be read"):
        load_file(tmp_path / "none.toml")
    (tmp_path / "latin.toml").write_bytes(b'title = "caf\xe9"\n')
    with pytest.raises(RulebookError, match="not UTF-8"):
        load_file(tmp_path / "latin.toml")
    (tmp_path / "huge.toml").write_bytes(b"#" * 2_000_001)
    with pytest.raises(RulebookError, match="larger than 2 MB"):
        load_file(tmp_path / "huge.toml")


# --- editions that say only what changed


def test_an_edition_extends_another(tmp_path):
    text = """
extends = "us-2014"
id = "us-mine"
[sources.hand]
title = "the rulebook in my hand"
grade = "governing_body"
[[levels]]
id = "novice"
[levels.cross_country]
drop_cm = { value = 125, source = "hand" }
too_fast_speed_mpm = { withdrawn = true }
[[levels]]
id = "novice_plus"
name = "Novice Plus"
after = "novice"
"""
    book, old = load_file(written(tmp_path, text)), BOOKS["us-2014"]
    assert [level.id for level in book.levels][:4] == ["beginner_novice", "novice", "novice_plus", "training"]
    novice, before = book.level("novice"), old.level("novice")
    assert novice.stated("cross_country", "drop_cm").source == "the rulebook in my hand"
    assert novice.stated("cross_country", "too_fast_speed_mpm") is None
    assert (
        before.value("cross_country", "drop_cm") == 120 and before.value("cross_country", "too_fast_speed_mpm") == 450
    )
    assert novice.stated("cross_country", "fixed_height_cm") == before.stated("cross_country", "fixed_height_cm")


# --- what is shipped


def test_every_rule_set_of_the_trade_is_there():
    bodies = {book_id.split("-")[0] for book_id in BOOKS}
    assert bodies == {"us", "fei", "de", "gb", "au", "nz", "ca", "ie"}
    assert {"us-2025", "us-2014", "gb-2024", "gb-pony-club-2024", "us-pony-club-2020"} <= set(BOOKS)
    assert {path.stem for path in SHIPPED.glob("*.toml")} == set(BOOKS)


def everything_stated(book):
    for level in book.levels:
        for values in (*level.phases.values(), level.entry, level.qualifying_result):
            yield from values.values()
        yield from (*level.asks, *level.movements, *level.eligibility, *level.notes)
    yield from (*book.validity.values(), *book.safety.values(), *book.notes)


@pytest.mark.parametrize("book", BOOKS.values(), ids=BOOKS)
def test_everything_stated_has_a_source_and_a_grade(book):
    for each in everything_stated(book):
        assert each.source and each.grade in GRADES
        assert (each.grade == "from_memory") == (each.source == "from memory")


@pytest.mark.parametrize("book", BOOKS.values(), ids=BOOKS)
def test_a_rulebook_goes_over_the_wire_whole(book):
    data = json.loads(json.dumps(book.to_json(), allow_nan=False))
    assert [level["id"] for level in data["levels"]] == [level.id for level in book.levels]
    for level, sent in zip(book.levels, data["levels"], strict=True):
        for phase, values in level.phases.items():
            assert {name: value["value"] for name, value in sent["phases"][phase].items()} == {
                name: value.value for name, value in values.items()
            }
    assert json.dumps(data).count('"source": ""') == 0


def test_no_quantity_is_just_a_spread():
    for known in (*quantities.BY_PHASE.values(), quantities.ENTRY):
        assert not {"spread", "spread_cm"} & set(known)


def test_the_vocabularies_are_the_books():
    assert asks.ASKS == words.ASKS
    assert tuple(asks.PROFILES) == words.PROFILES
    assert asks.PRESENTATION == {
        "rein": words.REINS, "ground": words.GROUNDS, "way": words.WAYS, "landing": words.LANDINGS,
        "company": words.COMPANIES, "pace": words.PACES,
    }  # fmt: skip
    assert tuple(quantities.BY_PHASE) == words.PHASES
    assert tuple(quantities.BY_PART) == words.RULEBOOK_PARTS


def test_shipped_hands_out_a_dictionary_of_ones_own():
    shipped().clear()
    assert shipped()


# --- corrections from a rulebook in somebody's hand


def correction(**given_):
    return {"rulebook_id": "us-2025", "level_id": "novice", "phase": "cross_country", "quantity": "drop_cm",
            "value": 125, "edition": "2027", "article": "EV140.2"} | given_  # fmt: skip


def test_a_correction_takes_the_values_place():
    book = BOOKS["us-2025"]
    right = with_corrections(book, [correction()])
    value = right.level("novice").stated("cross_country", "drop_cm")
    assert (value.value, value.unit, value.grade, value.source) == (125, "cm", "corrected", "2027, EV140.2")
    assert book.level("novice").value("cross_country", "drop_cm") == 120
    assert right.level("training") == book.level("training")


def test_a_correction_may_add_or_take_away():
    book = with_corrections(BOOKS["us-2025"], [correction(quantity="water_depth_cm", value=30), correction(value=None)])
    assert book.level("novice").value("cross_country", "water_depth_cm") == 30
    assert book.level("novice").stated("cross_country", "drop_cm") is None


def test_the_later_correction_counts():
    book = with_corrections(BOOKS["us-2025"], [correction(value=125), correction(value=130, article="EV140.3")])
    assert book.level("novice").stated("cross_country", "drop_cm").source == "2027, EV140.3"
    assert book.level("novice").value("cross_country", "drop_cm") == 130


@pytest.mark.parametrize("given_, said", [
    ({"rulebook_id": "gb-2024"}, "for the rulebook gb-2024"),
    ({"level_id": "grand"}, "no level grand"),
    ({"quantity": "spread_cm"}, "not a quantity of cross_country"),
    ({"phase": "dressage"}, "not a quantity of dressage"),
    ({"value": 1.25}, "1.25 cm cannot be meant"),
    ({"quantity": "efforts_max", "value": 12.5}, "not a whole number"),
])  # fmt: skip
def test_a_correction_that_cannot_be_changes_nothing(given_, said):
    body = correction(**given_)
    assert said in trouble_with(BOOKS["us-2025"], body)
    assert with_corrections(BOOKS["us-2025"], [body]) == BOOKS["us-2025"]


@given(st.lists(st.builds(
    correction,
    level_id=st.sampled_from(["novice", "training", "nowhere"]),
    quantity=st.sampled_from(["drop_cm", "speed_mpm", "refusal_first_penalties", "nothing"]),
    value=st.none() | st.floats(-1e6, 1e6),
), max_size=6))  # fmt: skip
def test_any_correction_leaves_a_whole_rulebook(bodies):
    book = with_corrections(BOOKS["us-2025"], bodies)
    assert [level.id for level in book.levels] == [level.id for level in BOOKS["us-2025"].levels]
    json.dumps(book.to_json(), allow_nan=False)


# --- files of one's own


def test_a_file_is_kept_and_found_again(tmp_path):
    book, target = add(written(tmp_path, GOOD), tmp_path / "data")
    assert target == tmp_path / "data" / "rulebooks" / "yard-2026.toml"
    assert available(tmp_path / "data")["yard-2026"] == book
    assert set(available(tmp_path / "data")) == {*BOOKS, "yard-2026"}
    assert [path.name for path in target.parent.iterdir()] == ["yard-2026.toml"]


def test_a_file_takes_the_place_of_the_shipped_one_with_its_id(tmp_path):
    add(written(tmp_path, GOOD.replace("yard-2026", "us-2025")), tmp_path)
    assert available(tmp_path)["us-2025"].title == "Our yard"
    assert shipped()["us-2025"].title != "Our yard"


def test_a_bad_file_is_not_kept(tmp_path):
    with pytest.raises(RulebookError):
        add(written(tmp_path, GOOD.replace("edition", "edtion")), tmp_path / "data")
    assert not (tmp_path / "data").exists()


def test_a_kept_file_that_went_bad_is_told_and_passed_over(tmp_path):
    _, target = add(written(tmp_path, GOOD), tmp_path)
    target.write_text("id = 3\n", encoding="utf-8")
    with pytest.raises(RulebookError):
        available(tmp_path)
    told = []
    assert set(available(tmp_path, told.append)) == set(BOOKS)
    assert [wrong.file for wrong in told] == ["yard-2026.toml"]


def test_no_data_folder_is_no_trouble(tmp_path):
    assert set(available(tmp_path / "nowhere")) == set(BOOKS)
