"""What a rider asks the board in the field: how a finding is worked out, the plan, what if."""

from datetime import date, timedelta

import pytest
from playwright.sync_api import expect

from browser.test_far_levels import horse_of
from browser.test_journey import add_fence, add_field, add_horse, start_outing

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def horse(server, rider):
    """One clear attempt at a log of Novice height, sent and weighed; a second field without a fence."""
    add_horse(rider)
    add_field(rider)
    add_fence(rider, "1 Long log", "Log", "88")
    outing = start_outing(rider)
    rider.tap("1 Long log", "link")
    clear = rider.page.get_by_role("button", name="Clear", exact=False).first
    clear.click()
    expect(clear).to_contain_text("1")
    rider.go(f"/outing/{outing}")
    rider.all_sent()
    rider.go("/board")
    rider.page.reload()
    rider.sees("working towards")
    return horse_of(rider)


def test_plan_and_explanation_are_there_without_signal_and_a_what_if_says_that_it_needs_some(server, rider, horse):
    server.stop()
    rider.go(f"/finding/{horse}/novice/fixed")
    rider.page.get_by_text("How is this worked out?").click()
    rider.sees("1 of 1 attempt was clear in the last two years")
    rider.go(f"/plan/{horse}/novice")
    rider.sees("Fixed fence at height: 1 Long log, twice.")
    rider.sees("warm up over something small of your own first")
    rider.sees("Stop a question at the second stop")
    rider.go(f"/what-if/{horse}/novice")
    rider.page.get_by_label("More clear attempts").select_option(label="Fixed fence at height")
    rider.tap("Work it out")
    rider.sees("The server does not answer. Try again with signal.")


def test_a_what_if_shows_what_comes_nearer_and_refuses_what_means_nothing(server, rider, horse):
    rider.go(f"/what-if/{horse}/novice")
    rider.tap("Work it out")
    rider.sees("Suppose something first")
    tomorrow = date.today() + timedelta(days=2)
    rider.page.get_by_label("As of a day").fill(tomorrow.isoformat())
    rider.tap("Work it out")
    rider.sees("That day has not come yet. Choose today or a day before.")
    rider.page.get_by_label("As of a day").fill("")
    rider.page.get_by_label("More clear attempts").select_option(label="Fixed fence at height")
    fewer = rider.page.get_by_role("button", name="Less Clear attempts more")
    for _ in range(3):
        fewer.click()
    expect(fewer).to_be_disabled()
    rider.tap("Work it out")
    change = rider.page.get_by_role("listitem").filter(has_text="Fixed fence at height")
    expect(change).to_contain_text("Missing now:")
    expect(change).to_contain_text("Missing then:")
    expect(change).to_be_in_viewport()
