// A page on the fake phone, over a real (pretend-disk) IndexedDB of its own: its device, and its heart beaten by hand.

// packages are the client's: from here they are reached by path
import "../../webclient/node_modules/fake-indexeddb/auto/index.mjs";

import type { Cue } from "../../webclient/src/pace/cues.ts";
import type { Sample } from "../../webclient/src/pace/trace.ts";
import type { Device } from "../../webclient/src/screens/watch/device.ts";
import { openPhoneDb } from "../../webclient/src/store/db.ts";
import { logbookId, me, openDb } from "../../webclient/src/store/place.ts";
import type { FakePhone } from "./fakePhone.ts";

export class PhonePage {
  phone: FakePhone;
  /** A tab of its own on the same phone: its own life, seen or not. */
  tab: Partial<Sample> = {};
  cues: Cue[] = [];
  beats: ((sample: Sample, parting: boolean) => void)[] = [];
  device: Device;

  constructor(phone: FakePhone) {
    this.phone = phone;
    this.device = {
      now: () => this.sample(),
      at: () => this.sample(),
      beat: (onBeat) => {
        this.beats.push(onBeat);
        return () => void this.beats.splice(this.beats.indexOf(onBeat), 1);
      },
      keepAwake: (onChange) => {
        onChange("held");
        return { release: () => onChange("off") };
      },
      touched: () => undefined,
      signal: (cue) => void this.cues.push(cue),
    };
  }

  sample(): Sample {
    return { ...this.phone.sample(), ...this.tab };
  }

  beat(parting = false): void {
    for (const onBeat of [...this.beats]) onBeat(this.sample(), parting);
  }

  /** Awake for `ms`, a beat each half second. */
  ride(ms: number): void {
    for (let left = ms; left > 0; left -= 500) {
      this.phone.awake(Math.min(500, left));
      this.beat();
    }
  }
}

let account = 0;

/** Another account's empty store, as a test begins with. */
export async function freshStore(): Promise<void> {
  openDb.value?.close();
  account += 1;
  openDb.value = await openPhoneDb(`account-${account}`);
  logbookId.value = "logbook";
  me.value = { id: "account", display_name: "Wren Ashdown" };
}
