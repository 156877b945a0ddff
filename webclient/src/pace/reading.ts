// One moment on the phone's two clocks. The monotonic clock (performance.now) never jumps but stops while
// the phone sleeps; the wall clock (Date.now) runs on through sleep but can be changed. Neither is enough.

export interface Reading {
  monotonic_ms: number;
  wall_ms: number;
}

/** Where readings come from; tests put their own clocks here. */
export interface Clocks {
  monotonic: () => number;
  wall: () => number;
}

// An event older than this did not happen "just now": its stamp has another origin than performance.now.
const OLDEST_EVENT_MS = 5000;
// Stamps may be rounded up by a browser that blunts its clocks.
const FUTURE_EVENT_MS = 5;

export const deviceClocks: Clocks = {
  monotonic: () => performance.now(),
  wall: () => Date.now(),
};

export function readNow(clocks: Clocks): Reading {
  return { monotonic_ms: clocks.monotonic(), wall_ms: clocks.wall() };
}

/**
 * The moment an input event happened, not the later one when the page got round to it: `timeStamp` is on the
 * monotonic clock, and the wall clock is read back by the same delay. A stamp that cannot be one of this
 * page's is not trusted, and the present is taken.
 */
export function readAt(timeStamp: number, clocks: Clocks): Reading {
  const now = readNow(clocks);
  const delay = now.monotonic_ms - timeStamp;
  const believable = Number.isFinite(timeStamp) && timeStamp > 0 && delay >= -FUTURE_EVENT_MS && delay <= OLDEST_EVENT_MS;
  if (!believable) return now;
  return { monotonic_ms: timeStamp, wall_ms: now.wall_ms - delay };
}
