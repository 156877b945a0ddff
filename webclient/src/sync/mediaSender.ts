// Where the sync finds what sends photos: it comes with the second script, a moment after the first screen.

import type { PhoneDb } from "../store/db.ts";

export type MediaSender = (db: PhoneDb, tell: (done: number, total: number) => void) => Promise<void>;

const PATIENCE_MS = 5000;

let arrived: (send: MediaSender) => void;
const arriving = new Promise<MediaSender>((done) => (arrived = done));

export function offerMediaSender(send: MediaSender): void {
  arrived(send);
}

/** Null when it has not come in time: the next sync asks again. */
export function mediaSender(): Promise<MediaSender | null> {
  return Promise.race([arriving, new Promise<null>((done) => setTimeout(done, PATIENCE_MS, null))]);
}
