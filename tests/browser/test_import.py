"""What is the rider's leaves the phone whole and comes back: copies, tables, seasons from before this tool."""

import csv
import io
import json
import re
from uuid import uuid4

import pytest
from playwright.sync_api import expect

from faults.test_signing_out import add_field
from fieldtally.reports.table import unharmed

pytestmark = pytest.mark.xdist_group("browser")

PAST = (
    "\ufeffDatum;Pferd;Platz;Hindernis;Ergebnis;Höhe;Notiz\r\n"
    "3.4.2025;Zoë;Low Moor;7;fehlerfrei;90;\r\n"
    "3.4.2025;Zoë;Low Moor;7;Verweigerung;90,5;\"'=1+1\"\r\n"
    "4.4.2025;Zoë;Low Moor;Ditch;stopp;90;Kalt; windig\r\n".replace("Kalt; windig", '"Kalt; windig\nund nass"')
)


def choose(phone, name: str, text: str) -> None:
    phone.page.locator("input[type=file]").set_input_files(
        {"name": name, "mimeType": "text/plain", "buffer": text.encode("utf-8")}
    )


def saved_by(phone, press) -> bytes:
    phone.page.evaluate("navigator.canShare = undefined")
    with phone.page.expect_download() as coming:
        press()
    return coming.value.path().read_bytes()


def export_copy(phone) -> str:
    phone.go("/import")
    press = phone.page.get_by_role("button", name="Export everything on this device").click
    return saved_by(phone, press).decode("utf-8")


def table_out(phone, which: str, manner: str) -> bytes:
    group = phone.page.get_by_role("group", name=which, exact=True)
    return saved_by(phone, group.get_by_role("button", name=manner).click)


def test_a_copy_comes_back_onto_a_fresh_phone_offline_twice_without_doubles(server, rider, people):
    for name in ("Low Moor", "=Thornybank"):
        add_field(rider, name)
    rider.all_sent()
    text = export_copy(rider)

    fresh = people("fresh")
    fresh.open("/")
    fresh.ready_for_the_field()
    fresh.tap("Start on this phone")
    fresh.sees("Your logbook is ready")
    server.stop()
    fresh.page.get_by_role("link", name="More").click()
    fresh.tap("Take out, bring in", role="link")
    choose(fresh, "copy.json", text)
    fresh.sees("This is another logbook")
    fresh.sees("2 entries are new here, 0 are here already")
    fresh.tap("Copy 2 into This phone’s logbook as new records")
    fresh.sees("2 taken in")
    fresh.page.reload()
    choose(fresh, "copy.json", text)
    fresh.sees("0 entries are new here, 2 are here already")
    fresh.go("/fields")
    expect(fresh.page.get_by_role("link", name="=Thornybank")).to_have_count(1)

    back = export_copy(fresh)
    choose(fresh, "copy.json", back)
    fresh.sees("0 entries are new here, 2 are here already")
    [book] = json.loads(back)["logbooks"]
    assert {entry["body"]["name"] for entry in book["entries"]} == {"Low Moor", "=Thornybank"}


def big_copy(attempts: int) -> str:
    """A logbook of another server: one horse, one fence, one outing, many attempts."""

    def entry(kind: str, body: dict) -> dict:
        return {"id": str(uuid4()), "record_id": str(uuid4()), "supersedes": [], "kind": kind, "kind_version": 1,
                "body": body, "recorded_at": "2026-05-03T09:12:33.120Z", "utc_offset_min": 60,
                "local_date": "2026-05-03", "clock": None}  # fmt: skip

    horse, fence = entry("horse", {"name": "Goldfinch"}), entry("fence", {"label": "7", "profile": "log"})
    day = {"horse_id": horse["record_id"], "date": "2026-05-03", "activity": "cross_country_school"}
    outing = entry("outing", day)
    met = {"outing_id": outing["record_id"], "fence_id": fence["record_id"], "outcome": "clear"}
    entries = [horse, fence, outing, *(entry("attempt", met) for _ in range(attempts))]
    heading = {"id": str(uuid4()), "title": "Old", "log_id": str(uuid4()), "last_number": len(entries)}
    return json.dumps({"fieldtally_export": 1, "logbook": heading, "entries": entries})


def test_killed_in_the_middle_it_is_finished_by_doing_it_again(server, people):
    phone = people("slow")
    phone.open("/")
    phone.ready_for_the_field()
    phone.tap("Start on this phone")
    phone.sees("Your logbook is ready")
    phone.go("/import")
    text = big_copy(9997)
    choose(phone, "copy.json", text)
    phone.tap("Copy 10,000 into This phone’s logbook as new records")
    phone.sees(re.compile(r"^[1-9][\d,]+ of 10,000$"))
    phone.kill()
    phone.open("/import")
    choose(phone, "copy.json", text)
    phone.sees(re.compile("entries are new here"))
    words = phone.page.get_by_text(re.compile("entries are new here")).inner_text()
    fresh, already = map(int, re.findall(r"\d+", words))
    assert fresh + already == 10_000 and 0 < already < 10_000 and already % 500 == 0
    phone.tap(f"Copy {fresh} into This phone’s logbook as new records")
    phone.sees(f"{fresh} taken in", timeout=60_000)
    phone.sees("0 entries are new here, 10,000 are here already")
    expect(phone.page.locator(".top__state")).to_contain_text("Kept on this phone only: 10,000 entries")


def test_the_servers_own_export_is_known_and_nothing_of_it_is_doubled(server, rider):
    add_field(rider, "Low Moor")
    rider.all_sent()
    exported = rider.page.evaluate(
        "fetch('/api/session').then((r) => r.json())"
        ".then(({logbooks: [book]}) => fetch(`/api/logbooks/${book.id}/export`)).then((r) => r.text())"
    )
    rider.go("/import")
    choose(rider, "export.json", exported)
    rider.sees("0 entries are new here, 1 are here already")
    choose(rider, "hello.txt", "nothing of ours")
    rider.sees("This is no copy made by Fieldtally")
    choose(rider, "half.json", exported[: len(exported) // 2])
    rider.sees("This copy is cut off")


def test_a_season_before_this_tool_comes_from_a_german_table_and_a_bad_row_is_mended_in_place(server, rider):
    server.stop()
    rider.go("/import")
    choose(rider, "saison.csv", PAST)
    rider.sees("3 rows: 0 new, 0 here already, 1 to mend, 2 waiting for an answer")
    rider.sees("Horses: Zoë")
    rider.page.get_by_label("Make them").check()
    rider.page.get_by_label("How the new fences are built").select_option("log")
    rider.sees("3 rows: 2 new, 0 here already, 1 to mend")
    rider.sees("“stopp” is not known. Use one of:")
    rider.tap("Take in 2 rows")
    rider.sees("1 rows: 0 new")
    rider.page.wait_for_timeout(500)  # what is half mended is on the disk within a third of a second
    rider.kill()
    rider.open("/import")
    mend = rider.page.get_by_label(re.compile("Row 2, Ergebnis"))
    mend.press_sequentially("x")
    expect(mend).to_be_focused()
    mend.fill("stop")
    mend.press("Tab")
    rider.page.get_by_label("Make them").check()
    rider.page.get_by_label("How the new fences are built").select_option("ditch")
    rider.tap("Take in 1 row")
    expect(rider.page.get_by_role("region", name="The first rows")).to_have_count(0)
    choose(rider, "saison.csv", PAST.replace("stopp", "stop"))
    rider.sees("3 rows: 0 new, 3 here already, 0 to mend")

    plain = csv.DictReader(io.StringIO(table_out(rider, "Attempts", "Plain").decode("utf-8"), newline=""), strict=True)
    rows = list(plain)
    assert [row["outcome"] for row in rows] == ["clear", "refusal", "refusal"]
    assert [row["horse"] for row in rows] == ["Zoë"] * 3
    assert rows[1]["height_cm"] == "90.5"
    assert [unharmed(row["note"]) for row in rows] == ["", "=1+1", "Kalt; windig\nund nass"]
    assert not any(cell.startswith(("=", "+", "-", "@")) for row in rows for cell in row.values())

    for_excel = table_out(rider, "Attempts", "For a spreadsheet")
    assert for_excel.startswith(b"\xef\xbb\xbf") and b"\r\n" in for_excel


def test_templates_are_known_when_they_come_back(rider):
    rider.go("/import")
    rider.page.get_by_text("Empty tables to fill in").click()
    for kind in ("Attempts", "Flatwork tests", "Jumping rounds", "Event results"):
        button = rider.page.locator("details").get_by_role("button", name=kind)
        header = saved_by(rider, button.click).decode("utf-8-sig").strip()
        assert header.startswith("date,horse,")
        choose(rider, "filled.csv", f"{header}\n{',' * header.count(',')}\n2025-04-03{',' * header.count(',')}\n")
        expect(rider.page.get_by_role("region", name="Table")).to_contain_text(kind)
        rider.tap("Put the table away")


def test_a_day_that_was_recorded_here_already_is_pointed_out(rider):
    rider.go("/horse/new")
    rider.fill("Name", "Goldfinch")
    rider.tap(re.compile("^(Save|Add)"))
    rider.all_sent()
    rider.go("/")
    rider.tap("Start the outing")
    rider.page.wait_for_url(re.compile("/outing/"))
    rider.all_sent()
    today = rider.page.evaluate("new Date().toLocaleDateString('sv')")  # year-month-day by the phone's calendar
    rider.go("/import")
    choose(rider, "today.csv", f"date,horse,fence,profile,outcome\n{today},goldfinch,7,log,clear\n")
    rider.page.get_by_label("Make them").check()
    rider.sees("1 rows: 1 new")
    rider.sees("On 1 of these days the horse has such a record here already")


def test_in_german_a_spreadsheet_gets_its_separator_and_decimal_sign_and_both_come_back(rider):
    rider.go("/settings")
    rider.choose("Language", "Deutsch")
    rider.sees("Sprache")
    rider.go("/import")
    choose(rider, "saison.csv", PAST.replace("stopp", "Verweigerung"))
    rider.page.get_by_label("Anlegen").check()
    rider.page.get_by_label("Bauart der neuen Hindernisse").select_option("ditch")
    rider.tap("3 Zeilen übernehmen")
    rider.sees("3 übernommen")
    table = table_out(rider, "Versuche", "Für die Tabellenkalkulation").decode("utf-8-sig")
    rows = list(csv.DictReader(io.StringIO(table, newline=""), delimiter=";", strict=True))
    assert [row["height_cm"] for row in rows] == ["90", "90,5", "90"]
    assert [unharmed(row["note"]) for row in rows] == ["", "=1+1", "Kalt; windig\nund nass"]
    for again in (table, table_out(rider, "Versuche", "Schlicht").decode("utf-8")):
        choose(rider, "versuche.csv", again)
        rider.sees("Zeilen: 3. Neu 0, schon da 3")
        rider.tap("Tabelle weglegen")
