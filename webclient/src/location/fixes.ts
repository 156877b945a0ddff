// Where the phone says it is. Asked only while somebody wants to know, at the finest it can do, and stopped
// when done; nothing here is kept or sent. Whatever goes wrong is one of four reasons, each with its words.

/** One answer of the phone (WGS 84). `accuracy_m` is the radius that the phone itself gives at 95 % (W3C
 * Geolocation); `at_ms` is when it was there, since 1970. */
export interface Fix {
  latitude: number;
  longitude: number;
  accuracy_m: number;
  at_ms: number;
}

/** refused: a person or the phone's settings said no. absent: this browser or page cannot ask.
 * not_found: no fix, as under trees. too_slow: none in time. */
export type NoFixReason = "refused" | "absent" | "not_found" | "too_slow";

export class NoFix extends Error {
  reason: NoFixReason;
  /** What to say of it. */
  phrase: { key: string };

  constructor(reason: NoFixReason) {
    super(`no location: ${reason}`);
    this.reason = reason;
    this.phrase = { key: `location.${reason}` };
  }
}

/** What this needs of the browser; tests bring their own. */
export type Locator = Pick<Geolocation, "watchPosition" | "clearWatch">;

const REASONS: NoFixReason[] = ["absent", "refused", "not_found", "too_slow"]; // by GeolocationPositionError.code
const PATIENCE_MS = 20_000;

function phoneLocator(): Locator | undefined {
  return typeof navigator === "undefined" ? undefined : navigator.geolocation;
}

function fixOf({ coords, timestamp }: GeolocationPosition): Fix {
  return { latitude: coords.latitude, longitude: coords.longitude, accuracy_m: coords.accuracy, at_ms: Math.round(timestamp) };
}

/** Every fix from now on until the returned function is called. After `refused` or `absent` none can come. */
export function watchFixes(onFix: (fix: Fix) => void, onTrouble: (trouble: NoFix) => void, locator: Locator | undefined = phoneLocator()): () => void {
  if (!locator) {
    onTrouble(new NoFix("absent"));
    return () => undefined;
  }
  const id = locator.watchPosition(
    (position) => onFix(fixOf(position)),
    ({ code }) => onTrouble(new NoFix(REASONS[code] ?? "not_found")),
    { enableHighAccuracy: true, maximumAge: 0, timeout: PATIENCE_MS },
  );
  return () => locator.clearWatch(id);
}

/** Good enough to stop looking, in m; the first fix of a phone is often much coarser than its third. */
const GOOD_M = 10;
const LOOK_ON_MS = 8000;

/** Where the phone is now: the best fix of the first seconds. Rejects with NoFix; its `phrase` says why. */
export function whereAmI(locator: Locator | undefined = phoneLocator(), look_on_ms = LOOK_ON_MS): Promise<Fix> {
  return new Promise((resolve, reject) => {
    let best: Fix | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const done = (trouble: NoFix): void => {
      clearTimeout(timer);
      queueMicrotask(() => stop()); // a browser without location answers before it has said how to stop
      if (best) resolve(best);
      else reject(trouble);
    };
    const lookOn = (trouble: NoFix): void => void (timer ??= setTimeout(done, look_on_ms, trouble));
    const stop = watchFixes(
      (fix) => {
        if (!best || fix.accuracy_m < best.accuracy_m) best = fix;
        (best.accuracy_m <= GOOD_M ? done : lookOn)(new NoFix("too_slow"));
      },
      // "not found" may be only for now
      (trouble) => (trouble.reason === "not_found" ? lookOn : done)(trouble),
      locator,
    );
  });
}
