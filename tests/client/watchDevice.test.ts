// Finger, keys and wake lock of the stopwatch, against pretend browsers.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { belongsElsewhere, watchKey } from "../../webclient/src/screens/watch/keys.ts";
import { pressing } from "../../webclient/src/screens/watch/press.ts";
import { keepAwake, type Wakefulness, type WakeHost } from "../../webclient/src/screens/watch/wakeLock.ts";

const at = (timeStamp: number, clientX = 100, clientY = 100, pointerId = 1) => ({ timeStamp, clientX, clientY, pointerId });

function taps(): { press: ReturnType<typeof pressing>; stamps: number[] } {
  const stamps: number[] = [];
  return { press: pressing((stamp) => stamps.push(stamp)), stamps };
}

describe("a press", () => {
  it("is stamped when the finger comes down, however long it rests", () => {
    const { press, stamps } = taps();
    press.down(at(1000));
    assert.deepEqual(stamps, []);
    press.up(at(2500, 110, 95));
    assert.deepEqual(stamps, [1000]);
  });
  it("ignores a swipe that begins on the button (fault FD-03), and the click that may follow it", () => {
    const { press, stamps } = taps();
    press.down(at(1000, 20, 100));
    press.up(at(1200, 300, 110));
    press.click({ timeStamp: 1201 });
    assert.deepEqual(stamps, []);
  });
  it("forgives a glove's wobble", () => {
    const { press, stamps } = taps();
    press.down(at(1000));
    press.up(at(1100, 140, 130));
    assert.deepEqual(stamps, [1000]);
  });
  it("taken away by the browser is no press", () => {
    const { press, stamps } = taps();
    press.down(at(1000));
    press.cancel(at(1050));
    press.up(at(1100));
    assert.deepEqual(stamps, []);
  });
  it("counts once though a click echoes it", () => {
    const { press, stamps } = taps();
    press.down(at(1000));
    press.up(at(1080));
    press.click({ timeStamp: 1085 });
    assert.deepEqual(stamps, [1000]);
  });
  it("of a screen reader comes as a click alone", () => {
    const { press, stamps } = taps();
    press.click({ timeStamp: 5000 });
    assert.deepEqual(stamps, [5000]);
  });
  it("of two fingers keeps them apart", () => {
    const { press, stamps } = taps();
    press.down(at(1000, 100, 100, 1));
    press.down(at(1010, 300, 300, 2));
    press.up(at(1100, 300, 300, 2));
    press.up(at(1150, 100, 100, 1));
    assert.deepEqual(stamps, [1010, 1000]);
  });
});

describe("keys", () => {
  const key = (name: string, more = {}) => ({ key: name, repeat: false, ctrlKey: false, altKey: false, metaKey: false, ...more });
  it("Space and Enter start and stop, S marks a flag", () => {
    assert.deepEqual([" ", "Enter", "s", "S", "x", "toString"].map((name) => watchKey(key(name))), ["start_stop", "start_stop", "split", "split", null, null]);
  });
  it("held down or with Ctrl are not for the stopwatch", () => {
    assert.equal(watchKey(key(" ", { repeat: true })), null);
    assert.equal(watchKey(key("s", { ctrlKey: true })), null);
  });
  const inside = (...names: string[]) => ({
    closest: (selector: string) => (selector.split(", ").some((one) => names.includes(one)) ? {} : null),
  });
  it("in a text box or on another button stay there; on the stopwatch's own buttons they count", () => {
    assert.equal(belongsElsewhere(inside("textarea")), true);
    assert.equal(belongsElsewhere(inside("button")), true);
    assert.equal(belongsElsewhere(inside("button", "[data-watch]")), false);
    assert.equal(belongsElsewhere(inside()), false);
    assert.equal(belongsElsewhere(null), false);
  });
});

/** A browser whose lock is granted, refused or taken away as told. */
class PretendBrowser {
  grants = true;
  shown = true;
  asked = 0;
  released = 0;
  #listeners = new Set<() => void>();
  #onRelease: (() => void)[] = [];
  states: Wakefulness[] = [];

  host(supported = true): WakeHost {
    const request = async () => {
      this.asked += 1;
      if (!this.grants) throw new DOMException("refused", "NotAllowedError");
      return {
        release: async () => void (this.released += 1),
        addEventListener: (_: "release", listener: () => void) => void this.#onRelease.push(listener),
      };
    };
    return {
      request: supported ? request : null,
      visible: () => this.shown,
      onVisible: (listener) => {
        this.#listeners.add(listener);
        return () => this.#listeners.delete(listener);
      },
    };
  }

  take(): void {
    for (const listener of this.#onRelease.splice(0)) listener();
  }

  show(shown: boolean): void {
    this.shown = shown;
    if (!shown) this.take();
    for (const listener of this.#listeners) listener();
  }

  listening(): number {
    return this.#listeners.size;
  }
}

const settled = () => new Promise((resolve) => setImmediate(resolve));
const watching = (browser: PretendBrowser, supported = true) => keepAwake((state) => browser.states.push(state), browser.host(supported));

describe("the wake lock (fault TM-06)", () => {
  it("refused is told, and rejects nothing", async () => {
    const browser = new PretendBrowser();
    browser.grants = false;
    watching(browser);
    await settled();
    assert.deepEqual(browser.states, ["refused"]);
  });
  it("absent is told", async () => {
    const browser = new PretendBrowser();
    watching(browser, false);
    await settled();
    assert.deepEqual(browser.states, ["refused"]);
  });
  it("lost on hiding is taken again on showing, and let go at the stop", async () => {
    const browser = new PretendBrowser();
    const awake = watching(browser);
    await settled();
    browser.show(false);
    browser.show(true);
    await settled();
    awake.release();
    await settled();
    assert.deepEqual(browser.states, ["held", "refused", "held", "off"]);
    assert.deepEqual([browser.asked, browser.released, browser.listening()], [2, 1, 0]);
  });
  it("taken away for a low battery is told", async () => {
    const browser = new PretendBrowser();
    watching(browser);
    await settled();
    browser.take();
    assert.deepEqual(browser.states, ["held", "refused"]);
  });
  it("granted after the stop is let go at once", async () => {
    const browser = new PretendBrowser();
    const awake = watching(browser);
    awake.release();
    await settled();
    assert.deepEqual([browser.states, browser.released], [["off"], 1]);
  });
});
