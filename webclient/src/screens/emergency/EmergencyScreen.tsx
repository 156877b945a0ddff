import "./emergency.css";

import { useEffect, useState } from "preact/hooks";

import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { t } from "../../words/index.ts";
import { type Card, card, CARD_LINES, cardRefused, keepCard, numberIn, readCard } from "./card.ts";

/** Who the rider is and whom to call, in big letters, with no account and no signal. */
export function EmergencyScreen() {
  const [writing, write] = useState(false);
  const shown = card.value;
  useEffect(() => void readCard(), []);
  if (shown === undefined) return <Screen title={t("emergency.title")} back="/">{null}</Screen>;
  return (
    <Screen title={t("emergency.title")} back="/" actions={!writing && <Button onClick={() => write(true)}>{t(shown ? "emergency.change" : "emergency.fill_in")}</Button>}>
      {cardRefused.value && <Notice tone="stop" urgent><p>{t("emergency.not_kept")}</p></Notice>}
      {writing ? <Form given={shown ?? {}} done={() => write(false)} /> : shown ? <Lines shown={shown} /> : <p>{t("emergency.none")}</p>}
      <p class="quiet">{t("emergency.here_only")}</p>
      <p class="quiet">{t("emergency.armband")}</p>
    </Screen>
  );
}

function Lines({ shown }: { shown: Card }) {
  return (
    <dl class="emergency">
      {CARD_LINES.filter((line) => shown[line]?.trim()).map((line) => (
        <div key={line}>
          <dt>{t(`emergency.${line}`)}</dt>
          <dd>{line === "contacts" ? shown.contacts!.split("\n").filter((each) => each.trim()).map((each) => <Contact line={each} key={each} />) : shown[line]}</dd>
        </div>
      ))}
    </dl>
  );
}

function Contact({ line }: { line: string }) {
  const number = numberIn(line);
  return number ? <a class="big-button" href={`tel:${number}`}>{unbroken(line)}</a> : <p>{line}</p>;
}

/** A number is read out digit by digit: it stays on one line. */
function unbroken(line: string): string {
  return line.replace(/(\d) (?=\d)/g, "$1\u00a0");
}

function Form({ given, done }: { given: Card; done: () => void }) {
  const [sure, ask] = useState(false);
  const leave = (next: Card | null): void => void keepCard(next).then(done);
  return (
    <div class="form">
      {CARD_LINES.map((line) => (
        <TextBox
          key={line} label={t(`emergency.${line}`)} value={given[line] ?? ""} most={500} lines={line === "name" || line === "blood" ? 1 : 2}
          hint={line === "contacts" ? t("emergency.contacts_hint") : undefined} onInput={(text) => void keepCard({ ...card.value, [line]: text })}
        />
      ))}
      <div class="buttons">
        <Button tone="main" onClick={() => leave(card.value ?? null)}>{t("emergency.done")}</Button>
        <Button tone="stop" onClick={() => (sure ? leave(null) : ask(true))}>{t(sure ? "emergency.delete_yes" : "emergency.delete")}</Button>
      </div>
    </div>
  );
}
