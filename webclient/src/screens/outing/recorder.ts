// Takes taps: shows them at once, writes them down where a killed page finds them again, and puts them into
// the store. Nothing is called saved before the store says that it is on the disk.

import { signal } from "@preact/signals";

import type { Attempt } from "../../entries/bodies.ts";
import { uuid7 } from "../../entries/uuid7.ts";
import { bounceFilter } from "../../recording/bounce.ts";
import { addTap, dropTap, markTap, recovered, type Tap, type TapState, withoutKept } from "../../recording/taps.ts";
import { save, takeBack } from "../../store/book.ts";
import { forget, recall, remember } from "../../store/little.ts";
import { here, logbookId } from "../../store/place.ts";
import { findRecord } from "../../store/read.ts";
import { runningCanter } from "../watch/thisWatch.ts";

export const taps = signal<readonly Tap[]>([]);

/** Taken back on the screen already, while the store is still busy with it. */
export const hidden = signal<ReadonlySet<string>>(new Set());

const writing = new Map<string, Promise<TapState>>();

const accepts = bounceFilter();

/** Whether this tap was meant, and not the echo of the one before on the same control. */
export function wasMeant(control: string, event: { timeStamp: number }): boolean {
  return accepts(control, event.timeStamp);
}

/** Takes a tap. The promise says how it ended; the tap itself is on the screen when this returns. */
export function takeTap(attempt: Attempt): { record_id: string; done: Promise<TapState> } {
  const record_id = uuid7();
  const body = { ...attempt, ...runningCanter(attempt.outing_id) };
  change(addTap(taps.value, record_id, body, new Date()));
  return { record_id, done: write(record_id, body) };
}

export function tryAgain(record_id: string): Promise<TapState> {
  const tap = taps.value.find((each) => each.record_id === record_id);
  if (!tap) return Promise.resolve("saved");
  change(markTap(taps.value, record_id, "saving"));
  return write(record_id, tap.body);
}

function write(record_id: string, body: Attempt): Promise<TapState> {
  const done = save("attempt", body, record_id).then(
    () => settle(record_id, "saved"),
    () => settle(record_id, "not_saved"),
  );
  writing.set(record_id, done);
  return done;
}

function settle(record_id: string, state: TapState): TapState {
  writing.delete(record_id);
  change(markTap(taps.value, record_id, state));
  return state;
}

/** Takes a tap back, whether it has reached the store or not. Says whether it is gone. */
export async function undoTap(record_id: string): Promise<boolean> {
  hidden.value = new Set([...hidden.value, record_id]);
  const state = (await writing.get(record_id)) ?? taps.value.find((tap) => tap.record_id === record_id)?.state;
  if (state !== "not_saved" && !(await takenBack(record_id))) return false;
  change(dropTap(taps.value, record_id));
  return true;
}

async function takenBack(record_id: string): Promise<boolean> {
  try {
    await takeBack(record_id);
    return true;
  } catch {
    show(record_id); // it is still in the book, so it must be on the screen
    return false;
  }
}

/** A record put back from the bin is no longer hidden. */
export function show(record_id: string): void {
  hidden.value = new Set([...hidden.value].filter((id) => id !== record_id));
}

/** Forgets taps that the store's own list shows by now. */
export function forgetKept(kept: ReadonlySet<string>): void {
  const left = withoutKept(taps.value, kept);
  if (left.length < taps.value.length) change(left);
}

/** Takes up taps that a killed page left between the finger and the store. */
export async function takeUpLeftTaps(): Promise<void> {
  for (const tap of recovered(recall(placeOfTaps()))) {
    if (taps.value.some((each) => each.record_id === tap.record_id)) continue;
    if (await findRecord(here(), tap.record_id)) continue;
    taps.value = [...taps.value, tap];
    await tryAgain(tap.record_id);
  }
  change(taps.value);
}

function change(next: readonly Tap[]): void {
  taps.value = next;
  const unkept = next.filter((tap) => tap.state !== "saved");
  if (unkept.length) remember(placeOfTaps(), unkept);
  else forget(placeOfTaps());
}

const placeOfTaps = (): string => `taps.${logbookId.value}`;
