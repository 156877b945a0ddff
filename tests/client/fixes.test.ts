// The phone's location, against a pretend phone that follows the W3C Geolocation API.

import assert from "node:assert/strict";
import { describe, it } from "node:test";

import { type Fix, type Locator, type NoFix, watchFixes, whereAmI } from "../../webclient/src/location/fixes.ts";
import { british } from "../../webclient/src/words/british.ts";

class PretendPhone implements Locator {
  asked: PositionOptions[] = [];
  stopped: number[] = [];
  say: PositionCallback = () => undefined;
  fail: (code: number) => void = () => undefined;
  watchPosition(say: PositionCallback, fail?: PositionErrorCallback | null, how?: PositionOptions): number {
    this.say = say;
    this.fail = (code) => fail?.({ code } as GeolocationPositionError);
    return this.asked.push(how ?? {});
  }
  clearWatch(id: number): void {
    this.stopped.push(id);
  }
  at(accuracy: number, latitude = 51.5): void {
    this.say({ coords: { latitude, longitude: -1.25, accuracy }, timestamp: 1_777_799_553_120.4 } as GeolocationPosition);
  }
}

const reasonOf = async (asked: Promise<Fix>): Promise<string> => asked.then(() => "a fix", (trouble: NoFix) => trouble.reason);
const turn = () => new Promise((done) => setTimeout(done));

describe("one fix", () => {
  it("is taken at once when it is good, and the phone is left alone after it", async () => {
    const phone = new PretendPhone();
    const asked = whereAmI(phone);
    phone.at(6);
    assert.deepEqual(await asked, { latitude: 51.5, longitude: -1.25, accuracy_m: 6, at_ms: 1_777_799_553_120 });
    await turn();
    assert.deepEqual(phone.stopped, [1]);
    assert.deepEqual(phone.asked, [{ enableHighAccuracy: true, maximumAge: 0, timeout: 20_000 }]);
  });
  it("is the best of the first seconds when none is good", async () => {
    const phone = new PretendPhone();
    const asked = whereAmI(phone, 5);
    for (const [accuracy, latitude] of [[900, 51.4], [22, 51.6], [40, 51.7]] as const) phone.at(accuracy, latitude);
    assert.deepEqual([(await asked).accuracy_m, (await asked).latitude], [22, 51.6]);
  });
  it("is still the one there was when the phone then gives up", async () => {
    const phone = new PretendPhone();
    const asked = whereAmI(phone);
    phone.at(30);
    phone.fail(3);
    assert.equal((await asked).accuracy_m, 30);
  });
  it("may come after “not found”, which is often only for now", async () => {
    const phone = new PretendPhone();
    const asked = whereAmI(phone, 50);
    phone.fail(2);
    phone.at(8);
    assert.equal((await asked).accuracy_m, 8);
  });
});

describe("no fix", () => {
  for (const [code, reason] of [[1, "refused"], [2, "not_found"], [3, "too_slow"]] as const) {
    it(`is ${reason}, in words, and the phone is left alone`, async () => {
      const phone = new PretendPhone();
      const asked = whereAmI(phone, 5);
      phone.fail(code);
      assert.equal(await reasonOf(asked), reason);
      await turn();
      assert.deepEqual(phone.stopped, [1]);
      assert.ok(`location.${reason}` in british);
    });
  }
  it("is “absent” in a browser that has no location", async () => {
    assert.equal(await reasonOf(whereAmI(null as never)), "absent");
  });
});

describe("watching", () => {
  it("asks the phone nothing before it is called, tells every fix, and stops", () => {
    const phone = new PretendPhone();
    const seen: number[] = [];
    const stop = watchFixes((fix) => seen.push(fix.accuracy_m), () => undefined, phone);
    phone.at(5);
    phone.at(500);
    stop();
    assert.deepEqual([seen, phone.stopped], [[5, 500], [1]]);
  });
});
