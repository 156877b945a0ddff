import { type Segment, totalMs } from "../../conditioning/set.ts";

const WIDTH = 320;
const HIGH = 26;
const LOW = 12;

/** The whole set as a strip: canters high, walks low, and where it is now. The words beside it say the same. */
export function SetStrip({ segments, elapsed_ms }: { segments: Segment[]; elapsed_ms: number }) {
  const total = totalMs(segments);
  const across = (ms: number): number => (WIDTH * Math.min(ms, total)) / total;
  let at = 0;
  const bars = segments.map(({ kind, length_ms }, n) => {
    const [x, width, height] = [across(at), across(length_ms), kind === "canter" ? HIGH : LOW];
    at += length_ms;
    return <rect key={n} class={`set-strip__${kind === "canter" ? "canter" : "walk"}`} x={x} y={HIGH - height + 4} width={Math.max(0, width - 1)} height={height} />;
  });
  const now = across(elapsed_ms);
  return (
    <svg class="set-strip" viewBox={`0 0 ${WIDTH} ${HIGH + 10}`} aria-hidden="true">
      {bars}
      <path class="set-strip__now" d={`M${now} 0v${HIGH + 10}`} />
    </svg>
  );
}
