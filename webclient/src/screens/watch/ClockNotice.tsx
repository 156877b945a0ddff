import type { TimedCanter } from "../../entries/bodies.ts";
import { faceText } from "../../pace/clockface.ts";
import type { Judged } from "../../pace/judge.ts";
import { rounded } from "../../pace/phrases.ts";
import { otherReadings, settleReading } from "../../pace/plausible.ts";
import { speed } from "../../pace/speed.ts";
import { timeOf } from "../../pace/run.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { edit, type SavedRecord, useRole } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { stopwatch } from "./thisWatch.ts";

// What the saved canter knows of its clocks: enough to offer the other one, next week too.
function judgedOf({ elapsed_ms, monotonic_ms, wall_ms, clock }: TimedCanter): Judged {
  return { elapsed_ms, monotonic_ms, wall_ms: wall_ms ?? elapsed_ms, clock, sure: true };
}

/** Right after the stop the whole run is still at hand, and with it the doubt. */
function isUnsure(canter: SavedRecord<"timed_canter">): boolean {
  const watch = stopwatch.watch.value;
  if (watch.phase !== "stopped" || watch.run.id !== canter.record_id) return false;
  return !settleReading(timeOf(watch.run), watch.run.plan.distance_m).chosen.sure;
}

/** Says when the phone's two clocks disagreed, which was believed, and offers the other. */
export function ClockNotice({ canter }: { canter: SavedRecord<"timed_canter"> }) {
  const role = useRole();
  const { body } = canter;
  if (body.clock === "agree") return null;
  const others = otherReadings(judgedOf(body));
  const unsure = isUnsure(canter);
  const take = (other: Judged): void => {
    void edit(canter, { elapsed_ms: Math.round(other.elapsed_ms), clock: other.clock }).catch(() => undefined); // the frame says why
  };
  const buttons = role === "reader" ? [] : others.map((other) => (
    <Button key={other.elapsed_ms} onClick={() => take(other)}>
      {t("watch.clock_other", { time: faceText(other.elapsed_ms), speed: rounded(speed({ ...body, elapsed_ms: other.elapsed_ms }).speed_mpm) })}
    </Button>
  ));
  return (
    <Notice tone="attention" urgent={unsure} title={unsure ? t("watch.clock_unsure_title") : t(`watch.clock_${body.clock}_title`)} actions={buttons.length > 0 && buttons}>
      {unsure && <p>{t("watch.clock_unsure", { time: faceText(body.elapsed_ms) })}</p>}
      <p>{t(`watch.clock_${body.clock}`)}</p>
    </Notice>
  );
}
