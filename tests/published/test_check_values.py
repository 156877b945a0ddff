"""Every published value that the trade facts were gathered from, against our data or our functions.

One test per row, named after what is published and its source. Where sources contradict each other, each is
checked against the edition that keeps it: see CONFLICTS.
"""

from collections import Counter, defaultdict

import pytest

from published.functions import FUNCTIONS
from published.published_rows import BOOKS, ROOT, found, levels_of, name_of, read_rows, statements

ROWS = read_rows()

# published confidence -> grades that our value may carry; a better source than the row's is welcome
GRADES = {
    "high": {"governing_body"},
    "medium": {"governing_body", "secondary"},
    "memory": {"governing_body", "secondary", "from_memory"},
}

# What sources contradict each other about, and which rulebook keeps which value.
CONFLICTS = [
    ("Brush at Beginner Novice", {"us-2014/beginner_novice/cross_country/brush_height_cm": 91.44,
                                  "us-2025/beginner_novice/cross_country/brush_height_cm": 99.06}),
    ("Brush at Novice", {"us-2014/novice/cross_country/brush_height_cm": 110,
                         "us-older/novice/cross_country/brush_height_cm": 99.06}),
    ("Step in or out of water at Novice", {"us-older/novice/cross_country/step_height_cm": 50.8,
                                           "us-2014/novice/cross_country/step_height_cm": None}),
    ("Which stop on course eliminates", {"us-2014/*/cross_country/stops_on_course_that_eliminate": 4,
                                         "us-older/*/cross_country/stops_on_course_that_eliminate": 3}),
    ("First fall on the feet at Beginner Novice and Novice",
     {"us-2023/novice-/cross_country/rider_fall_on_feet_penalties": 65,
      "us-2025/novice-/cross_country/rider_fall_on_feet_penalties": None}),
    ("Falls that eliminate at Beginner Novice and Novice",
     {"us-2023/novice-/cross_country/rider_falls_that_eliminate": 2,
      "us-2025/novice-/cross_country/rider_falls_that_eliminate": 1}),
    ("Dressage of a qualifying result, United States", {"us-2014/*/qualifying_result/dressage_penalties_max": 50,
                                                        "us-2023/*/qualifying_result/dressage_penalties_max": 45}),
    ("Seconds over the optimum of a qualifying result, United States",
     {"us-2014/*/qualifying_result/cross_country_seconds_over_max": 90,
      "us-2023/*/qualifying_result/cross_country_seconds_over_max": 75}),
    ("Time penalties of a qualifying result, United States",
     {"us-2014/*/qualifying_result/cross_country_time_penalties_max": 36,
      "us-2023/*/qualifying_result/cross_country_time_penalties_max": 30}),
    ("Seconds over the optimum, international four stars before 2018",
     {"fei-2017/three_star/qualifying_result/cross_country_seconds_over_max": 90,
      "fei-2017/four_star/qualifying_result/cross_country_seconds_over_max": 120}),
    ("Dressage coefficient", {"fei-2017/*/dressage/penalty_coefficient": 1.5,
                              "fei-2018/*/dressage/penalty_coefficient": 1}),
    ("Show jumping at Intermediate Novice", {"gb-2024/intermediate_novice/show_jumping/height_cm": 120,
                                             "gb-2003/intermediate_novice/show_jumping/height_cm": 115}),
    ("Time in British show jumping", {"gb-2024/*/show_jumping/time_penalties_per_second": 0.4,
                                      "gb-2003/*/show_jumping/time_penalties_per_second": 1}),
    ("Compulsory retirement in show jumping", {"us-2023/training+/show_jumping/jump_penalties_that_retire": 20,
                                               "gb-2003/*/show_jumping/jump_penalties_that_retire": 24}),
    ("Stops on course in Australia", {"au-2025/ccn1_l/cross_country/stops_on_course_that_eliminate": 4,
                                      "au-2025/ccn2_s/cross_country/stops_on_course_that_eliminate": 3}),
]  # fmt: skip


def check_value(row):
    for where, value, published in statements(row):
        assert value is not None, f"{where} is not stated"
        assert abs(value.value - published) <= float(row["within"] or 1e-6)
        assert value.grade in GRADES[row["confidence"]]


def notes_at(target):
    book_id, level_id, about, *word = target.split("/")
    notes = BOOKS[book_id].level(level_id).notes if level_id else BOOKS[book_id].notes
    return [note for note in notes if note.about == about and all(each in note.text for each in word)]


def check_note(row):
    """A number that no limit, score or gate of ours uses: the rulebook keeps it as a note."""
    unit = {"pen": "penalties", "deg": "degrees"}.get(row["unit"], row["unit"])
    for published in (row["expected"] or row["value"]).split("&"):
        said = [note for note in notes_at(row["target"]) if (note.value, note.unit) == (float(published), unit)]
        assert len(said) == 1
        assert said[0].grade in GRADES[row["confidence"]]


def check_note_text(row):
    assert [note for note in notes_at(row["target"]) if row["value"] in note.text]


def check_movement(row):
    book_id, level_id = row["target"].split("/")
    figures = [move for move in BOOKS[book_id].level(level_id).movements if move.figure_m == float(row["value"])]
    assert {move.grade for move in figures} & GRADES[row["confidence"]]


def check_need(row):
    """Results that an entry rule asks for: book/levels/who[/at[/kind of result]]."""
    book_id, spec, who, *rest = row["target"].split("/")
    for level in levels_of(BOOKS[book_id], spec):
        rules = [rule for rule in level.eligibility if rule.who == who]
        needs = [need for rule in rules for option in rule.options for need in option]
        wanted = [need for need in needs if (need.at, need.result)[: len(rest)] == tuple(rest)]
        assert int(row["value"]) in {need.count for need in wanted}
        assert {rule.grade for rule in rules} <= GRADES[row["confidence"]]


def check_function(row):
    FUNCTIONS[row["target"]](row)


def check_docs(row):
    """A fact that frames the tool and that nothing computes with: the documentation states it with its source."""
    lines = (ROOT / row["target"]).read_text(encoding="utf-8").splitlines()
    assert [line for line in lines if f"| {row['value']} {row['unit']} |" in line and row["source"] in line]


CHECKS = {"value": check_value, "note": check_note, "note_text": check_note_text, "movement": check_movement,
          "need": check_need, "function": check_function, "docs": check_docs}  # fmt: skip


@pytest.mark.parametrize("row", ROWS, ids=map(name_of, ROWS))
def test_published(row):
    CHECKS[row["check"]](row)


def test_no_row_is_lost_or_twice():
    """522 rows were gathered: 152 high, 340 medium, 30 from memory."""
    assert Counter(row["confidence"] for row in ROWS) == {"high": 152, "medium": 340, "memory": 30}
    assert all(row["check"] in CHECKS and row["source"] for row in ROWS)
    assert max(Counter(tuple(row.values()) for row in ROWS).values()) == 1


def test_nothing_published_is_from_memory_and_nothing_from_memory_is_published():
    assert all((row["source"].startswith("from memory")) == (row["confidence"] == "memory") for row in ROWS)


@pytest.mark.parametrize("about, editions", CONFLICTS, ids=[about for about, _ in CONFLICTS])
def test_a_conflict_is_kept_as_two_editions_and_documented(about, editions):
    for target, kept in editions.items():
        assert {value and value.value for value in found(target).values()} == {kept}
    assert len(set(editions.values())) == len(editions) == 2
    assert f"**{about}**" in (ROOT / "docs" / "rulebooks.md").read_text(encoding="utf-8")


def test_no_conflict_between_rows_is_left_unlisted():
    """Rows of one rule set that give one quantity of one level different values are all in CONFLICTS."""
    given = defaultdict(list)
    for row in (row for row in ROWS if row["check"] == "value"):
        for where, _, published in statements(row):
            given[where].append((published, float(row["within"] or 0)))
    targets = [target for _, editions in CONFLICTS for target in editions]
    listed = {(level_id, *target.split("/")[2:]) for target in targets for level_id in found(target)}
    assert {where[1:] for where, values in given.items() if apart(values)} <= listed


def apart(values):
    """Whether they differ by more than their rounding (3'3" is 0.99 m in one row and 1.00 m in another)."""
    numbers, within = zip(*values, strict=True)
    return max(numbers) - min(numbers) > max(within)
