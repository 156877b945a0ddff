"""A coach's changes to the bar: applied in order, remembered with who and why."""

from readiness.made_up import Logbook


def change(logbook, quantity, value, requirement_id="ditch_alone", level_id="second", author="coach"):
    logbook.add(
        "bar_change",
        author=author,
        rulebook_id=logbook.book.id,
        level_id=level_id,
        requirement_id=requirement_id,
        quantity=quantity,
        value=value,
        reason="He is green.",
    )


def test_a_change_counts_and_says_who_and_why():
    logbook = Logbook()
    change(logbook, "clear", 7)
    bar = logbook.finding("ditch_alone")["bar"]
    assert bar["numbers"]["clear"] == 7
    assert bar["changes"][0] | {"record_id": None} == {
        "quantity": "clear", "default": 3, "value": 7, "author": "coach", "reason": "He is green.", "record_id": None,
    }  # fmt: skip


def test_no_value_puts_the_default_back():
    logbook = Logbook()
    change(logbook, "clear", 7)
    change(logbook, "clear", None)
    assert logbook.finding("ditch_alone")["bar"]["numbers"]["clear"] == 3


def test_a_requirement_can_be_dropped_and_put_back():
    logbook = Logbook()
    change(logbook, "dropped", 1)
    assert "ditch_alone" not in {each.requirement.id for each in logbook.standing().findings}
    change(logbook, "dropped", None)
    assert "ditch_alone" in {each.requirement.id for each in logbook.standing().findings}


def test_other_levels_and_unknown_names_are_left_as_they_are():
    logbook = Logbook()
    change(logbook, "clear", 7, level_id="third")
    change(logbook, "no_such", 7)
    change(logbook, "clear", 7, requirement_id="no_such")
    assert logbook.finding("ditch_alone")["bar"]["numbers"]["clear"] == 3
