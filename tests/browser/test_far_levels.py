"""Far above the present level a finding's lines stay on the server: said without signal, fetched with it."""

import pytest
from playwright.sync_api import expect

from browser.test_journey import add_fence, add_field, add_horse, start_outing

pytestmark = pytest.mark.xdist_group("browser")


def test_what_stands_behind_a_far_level_is_fetched_when_it_is_opened(server, rider):
    add_horse(rider)
    add_field(rider)
    add_fence(rider, "1 Long log", "Log", "125")
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
    horse = horse_of(rider)
    for level in ("novice", "advanced"):
        rider.go(f"/finding/{horse}/{level}/fixed")
        rider.sees("1 Long log")
    server.stop()
    rider.go(f"/finding/{horse}/novice/fixed")
    rider.sees("1 Long log")
    rider.go(f"/finding/{horse}/advanced/fixed")
    rider.sees("this far above the pair’s present one is on the server")


def horse_of(phone) -> str:
    return phone.page.evaluate("""async () => {
      const { logbooks } = await (await fetch("/api/session")).json();
      const { standings } = await (await fetch(`/api/logbooks/${logbooks[0].id}/standings`)).json();
      return standings[0].horse_id;
    }""")
