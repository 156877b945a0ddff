import { aboutIds, isAllClear, type Item } from "../../board/outingTimeline.ts";
import type { Attempt, TimedCanter } from "../../entries/bodies.ts";
import { mannerWords } from "../../board/mannerWords.ts";
import { headline } from "../../pace/phrases.ts";
import { lateness } from "../../pace/lateness.ts";
import { speed } from "../../pace/speed.ts";
import { useRecord, type SavedRecord } from "../../store/book.ts";
import { showDistance } from "../../units/index.ts";
import { showClock } from "../../words/dates.ts";
import { inside, say, t } from "../../words/index.ts";
import { MediaAbout } from "../media/MediaAbout.tsx";
import { Said } from "./Said.tsx";

type Shown = Item<SavedRecord<"attempt">, SavedRecord<"timed_canter">>;

/** One line of the timeline with what was said about it. */
export function TimelineItem({ item }: { item: Shown }) {
  const ids = aboutIds(item);
  return (
    <li class={isAllClear(item) ? "timeline__item" : "timeline__item timeline__item--bad"}>
      <span class="timeline__time">{showClock(item.at_ms)}</span>
      {item.what === "attempts"
        ? <Attempts fenceId={item.fence_id} attempts={item.attempts} ids={ids} />
        : <Canter canter={item.canter.body} ids={ids} />}
    </li>
  );
}

function Attempts({ fenceId, attempts, ids }: { fenceId: string; attempts: SavedRecord<"attempt">[]; ids: string[] }) {
  const fence = useRecord("fence", fenceId);
  const label = fence?.body.label ?? t("timeline.unknown_fence");
  return (
    <>
      <span class="timeline__what">{label}: {attempts.map(({ body }) => outcomeOf(body)).join(", ")}</span>
      {manners(attempts).map((manner) => <span class="timeline__how" key={manner}>{manner}</span>)}
      <MediaAbout ids={ids} what={label} only />
      <Said ids={ids} about={ids[0]!} what={label} />
    </>
  );
}

/** How each was met, said once where several were met alike. */
function manners(attempts: SavedRecord<"attempt">[]): string[] {
  const said = attempts.map(({ body }) => [mannerWords(body, say), body.note].filter(Boolean).join(" – "));
  return [...new Set(said)].filter(Boolean);
}

function outcomeOf(attempt: Attempt): string {
  const outcome = t(`outcome.${attempt.outcome}`);
  return attempt.element ? `${attempt.element} ${inside(outcome)}` : inside(outcome);
}

function Canter({ canter, ids }: { canter: TimedCanter; ids: string[] }) {
  const pace = speed(canter);
  const late = canter.target_speed_mpm === null ? null : lateness(pace, canter.target_speed_mpm);
  const what = t("timeline.canter", { distance: showDistance(canter.distance_m) });
  const how = [
    canter.target_speed_mpm !== null && t("timeline.target", { target: canter.target_speed_mpm }),
    canter.over_fences && t("timeline.over_fences"),
    canter.note,
  ].filter(Boolean);
  return (
    <>
      <span class="timeline__what">{what}: {say(headline(pace, late))}</span>
      <span class="timeline__how">{how.join(", ")}</span>
      <Said ids={ids} about={ids[0]!} what={what} />
    </>
  );
}
