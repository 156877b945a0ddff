// A tap that is stamped when the finger comes down and taken when it goes up. Taken only on the way up, so
// that a swipe that happens to begin on the button does nothing; stamped on the way down, so that neither
// the finger's lift nor a busy page costs time.

/** A finger in a glove wobbles; a swipe travels. In CSS px. */
export const WOBBLE_PX = 60;
// A click this soon after a taken tap is that tap's echo.
const ECHO_MS = 1000;

export interface Point {
  pointerId: number;
  timeStamp: number;
  clientX: number;
  clientY: number;
}

export interface Press {
  down: (event: Point) => void;
  up: (event: Point) => void;
  cancel: (event: Point) => void;
  /** Assistive technology presses by a click without any pointer. */
  click: (event: { timeStamp: number }) => void;
}

export function pressing(onPress: (timeStamp: number) => void): Press {
  const fingers = new Map<number, Point>();
  let takenUp = Number.NEGATIVE_INFINITY;
  let lastUp = Number.NEGATIVE_INFINITY;

  const up = (event: Point): void => {
    const start = fingers.get(event.pointerId);
    fingers.delete(event.pointerId);
    lastUp = event.timeStamp;
    if (start === undefined) return;
    if (Math.hypot(event.clientX - start.clientX, event.clientY - start.clientY) > WOBBLE_PX) return;
    takenUp = event.timeStamp;
    onPress(start.timeStamp);
  };

  return {
    down: (event) => void fingers.set(event.pointerId, event),
    up,
    cancel: (event) => void fingers.delete(event.pointerId),
    click: (event) => {
      if (event.timeStamp - Math.max(takenUp, lastUp) > ECHO_MS) onPress(event.timeStamp);
    },
  };
}
