// One finger, two contacts: a wet or gloved finger, or a worn screen, makes a second tap within a moment of
// the first. It is dropped; anything slower was meant and is kept, with undo.

export const BOUNCE_MS = 250;

export type BounceFilter = (control: string, at_ms: number) => boolean;

/** A filter that says whether a tap was meant. `at_ms` is the event's own time stamp, not the time at which
 * a busy page came to handle it. Each control counts from its last tap that was taken. */
export function bounceFilter(window_ms: number = BOUNCE_MS): BounceFilter {
  const taken = new Map<string, number>();
  return (control, at_ms) => {
    const last = taken.get(control);
    if (last !== undefined && at_ms - last >= 0 && at_ms - last < window_ms) return false;
    taken.set(control, at_ms);
    return true;
  };
}
