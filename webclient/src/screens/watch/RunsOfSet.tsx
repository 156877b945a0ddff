import { useMemo } from "preact/hooks";

import { CanterPicture } from "../../charts/CanterPicture.tsx";
import { speedWords } from "../../charts/words.ts";
import type { Ridden } from "../../pace/comparison.ts";
import { rounded } from "../../pace/phrases.ts";
import { sense } from "../../pace/sense.ts";
import { speed, TOLD_APART_FROM } from "../../pace/speed.ts";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { inOrderMade, madeAt } from "../../recording/made.ts";
import { type SavedRecord, useRecords } from "../../store/book.ts";
import { t } from "../../words/index.ts";

type Canter = SavedRecord<"timed_canter">;

/** A set is named after its first canter. */
export const setOf = ({ record_id, body }: Canter): string => body.set_id ?? record_id;

/** The canters of a set so far, as they were ridden; undefined while loading. */
export function useRunsOfSet(outing_id: string, set_id: string): Canter[] | undefined {
  const all = useRecords("timed_canter", useMemo(() => ({ outing_id }), [outing_id]));
  return useMemo(() => all && inOrderMade(all.filter((one) => setOf(one) === set_id)), [all, set_id]);
}

/** All canters of a set: each speed, the mean against the target, the spread, the picture. */
export function RunsOfSet({ runs, canter }: { runs: Canter[]; canter: Canter }) {
  const target_mpm = canter.body.target_speed_mpm;
  const compared = runs.filter((one) => madeAt(one) <= madeAt(canter)).map((one) => ({ ridden: one as Ridden, pace: speed(one.body), current: one.record_id === canter.record_id }));
  return (
    <Section title={t("watch.set_title", { n: runs.length })}>
      <p><SetWords runs={runs} target_mpm={target_mpm} /></p>
      <CanterPicture compared={compared} target_mpm={target_mpm} />
      <Rows>{runs.map((one, n) => <Row href={`/watch/canter/${one.record_id}`} title={speedWords(one.body)} detail={t("watch.set_run", { n: n + 1 })} key={one.record_id} />)}</Rows>
    </Section>
  );
}

/** “Mean 405 ± 3 m/min, 15 slow of 420. They lie 4 m/min apart.” */
export function SetWords({ runs, target_mpm }: { runs: Canter[]; target_mpm: number | null }) {
  if (runs.length === 0) return null;
  const found = sense(runs.map(({ body }) => speed(body)));
  const u = found.mean_u_mpm ?? speed(runs[0]!.body).speed_u_mpm;
  return (
    <>
      <strong>{t("watch.set_mean", { speed: rounded(found.mean_mpm), u: Math.max(1, rounded(u)) })}</strong>
      {target_mpm !== null && `, ${against(found.mean_mpm, u, target_mpm)}`}
      {found.spread_mpm !== null && ` ${t("watch.set_spread", { spread: rounded(found.spread_mpm) })}`}
    </>
  );
}

function against(mean_mpm: number, u_mpm: number, target_mpm: number): string {
  const slow = target_mpm - mean_mpm;
  const told = Math.abs(slow) > TOLD_APART_FROM * u_mpm;
  const key = !told ? "watch.set_close" : slow > 0 ? "watch.set_slow" : "watch.set_fast";
  return t(key, { by: Math.abs(rounded(target_mpm) - rounded(mean_mpm)), target: rounded(target_mpm) });
}
