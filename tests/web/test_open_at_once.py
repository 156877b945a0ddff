"""Several threads of one server work with one logbook: no half-done answer, and nothing worked out twice."""

from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from threading import Barrier

from fieldtally.store import feed
from fieldtally.web import recompute
from support.asking import Browser
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import new_id
from web.test_open_logbooks import close_all, fresh_standings
from web.test_standings_api import TODAY, Season, push, standings  # noqa: F401


def all_at_once(app, ask, count=6) -> list:
    """What each of so many browsers, which all begin together, gets."""
    ready, browsers = Barrier(count), [Browser(app) for _ in range(count)]
    for browser in browsers:
        browser.sign_in("wren")

    def begin(place):
        ready.wait()
        return ask(browsers[place], place)

    with ThreadPoolExecutor(count) as threads:
        return list(threads.map(begin, range(count)))


def test_many_pushes_at_once_leave_what_one_after_the_other_leaves(app, push, wren, book, people):  # noqa: F811
    seasons = [Season("Bramble"), Season("Sorrel")]
    push(*(entry for season in seasons for entry in season.entries()))

    def ask(browser, place):
        for turn in range(4):
            entries = [seasons[place % 2].attempt("refusal" if turn == place else "clear")]
            told = {"protocol": 1, "device": new_id(), "entries": entries}
            assert browser.send("POST", f"{book}/entries", told).status_code == 200
            found = standings(browser, book)
            assert found["logbook_number"] >= 9 + turn
            yield {each["logbook_number"] for each in found["standings"]}

    said = all_at_once(app, lambda browser, place: list(ask(browser, place)))
    assert all(len(numbers) == 1 for numbers_of_one in said for numbers in numbers_of_one)  # no half of another push
    last = standings(wren, book)
    assert last["logbook_number"] == 8 + 6 * 4
    assert last["standings"] == fresh_standings(app, people)


def test_on_a_new_day_the_first_who_asks_works_them_out_for_all(app, push, book, monkeypatch):  # noqa: F811
    push(*Season("Bramble").entries(), *Season("Sorrel").entries())
    monkeypatch.setattr(recompute, "today_in", lambda book: TODAY + timedelta(days=1))
    worked_out, read = [], []
    compute, every_entry = recompute.compute_standings, feed.every_entry
    monkeypatch.setattr(recompute, "compute_standings", lambda *given: worked_out.append(given[-1]) or compute(*given))
    monkeypatch.setattr(feed, "every_entry", lambda *given: read.append(given) or every_entry(*given))
    close_all(app)
    found = all_at_once(app, lambda browser, _: standings(browser, book))
    assert all(each == found[0] for each in found)
    assert len(worked_out) == 2 and len(read) == 1  # each horse once, the logbook once
