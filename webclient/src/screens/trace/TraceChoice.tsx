import { useState } from "preact/hooks";

import { type NoFix, whereAmI } from "../../location/fixes.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { recall, remember } from "../../store/little.ts";
import { say, t } from "../../words/index.ts";
import { TRACED, tracing } from "./recorder.ts";

/** The switch among what is set before a start. The phone asks for leave now, not between two taps of a canter. */
export function TraceChoice() {
  const [on, setOn] = useState(recall<boolean>(TRACED) === true);
  const [trouble, setTrouble] = useState<NoFix | null>(null);
  const choose = (value: "on" | "off" | null): void => {
    remember(TRACED, value === "on");
    setOn(value === "on");
    setTrouble(null);
    if (value === "on") void whereAmI().catch(setTrouble);
  };
  return (
    <>
      <Choices
        label={t("location.trace")} value={on ? "on" : "off"} onChoose={choose}
        choices={[{ value: "on", words: t("watch.sound_on") }, { value: "off", words: t("watch.sound_off") }]}
      />
      <p class="quiet">{t("location.trace_hint")}</p>
      {on && trouble && <Notice tone="attention" urgent><p>{say(trouble.phrase)}</p></Notice>}
    </>
  );
}

/** How the location is doing, among the signs of a running stopwatch. */
export function TraceSign() {
  const now = tracing.value;
  if (now === null) return null;
  const words = now.trouble ? t("location.sign_trouble") : now.fixes === 0 ? t("location.sign_waiting") : t("location.sign", { n: now.fixes, accuracy: Math.ceil(now.accuracy_m) });
  return <li class="watch__sign">{now.trouble && <Icon name="attention" />}{words}</li>;
}
