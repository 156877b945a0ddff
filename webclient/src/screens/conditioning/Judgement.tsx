import { Link } from "wouter-preact";

import type { Answer, Normals } from "../../conditioning/gates.ts";
import { recovery } from "../../conditioning/recovery.ts";
import type { RecoveryCheck } from "../../entries/bodies.ts";
import { Notice } from "../../parts/Notice.tsx";
import { say, t } from "../../words/index.ts";

const TONES = { call_vet: "stop", slow: "attention", as_expected: "good", not_known: "plain" } as const;

/** What the rates say by the published gates and the horse's own normals; the cautions stand with it always. */
export function Judgement({ recoveries, normals, horse_id }: { recoveries: RecoveryCheck[]; normals: Normals; horse_id: string }) {
  const judged = recoveries.length === 0 ? null : recovery(recoveries, normals);
  return (
    <>
      {judged && (
        <Notice tone={TONES[judged.state]} urgent={judged.state === "call_vet"} title={t(`conditioning.state_${judged.state}_title`)}>
          <p>{t(`conditioning.state_${judged.state}`)}</p>
        </Notice>
      )}
      <Notice tone="attention">
        <p>{t("conditioning.warning")} {t("conditioning.vet_decides")}</p>
        {normals.resting_heart_rate_bpm === null && normals.resting_respiration_bpm === null && <p><Link href={`/horse/${horse_id}`}>{t("conditioning.no_normals")}</Link></p>}
      </Notice>
      {judged && <Gates answers={judged.answers}/>}
    </>
  );
}

function Gates({ answers }: { answers: Answer[] }) {
  return (
    <details class="more">
      <summary class="more__summary">{t("conditioning.gates")}</summary>
      <ul class="gates">{answers.map((answer) => <GateLine answer={answer} key={answer.gate.id} />)}</ul>
      <p class="quiet gates__after">{t("conditioning.from_inversion")}. {t("conditioning.weak")}</p>
    </details>
  );
}

function GateLine({ answer: { gate, state, minute, rate } }: { answer: Answer }) {
  const told = t(`conditioning.answer_${state}`);
  return (
    <li class={`gate gate--${state}`}>
      <span>{say({ key: `conditioning.gate_${gate.id}`, values: { most: Math.floor(gate.most + 1e-9) } })}</span>
      <strong>{minute === null || rate === null ? told : t("conditioning.answer_with", { answer: told, rate, minute })}</strong>
      <span class="quiet">{t(`conditioning.from_${gate.from}`)}</span>
    </li>
  );
}
