import { Section } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { type Key, t } from "../../words/index.ts";
import { installed, platform } from "./platform.ts";

const BEFORE: Key[] = ["help.kit", "help.alone", "help.ground", "help.stop_well", "help.decide"];
const AFTER: Key[] = ["help.fall_stop", "help.fall_head", "help.fall_horse"];
const RECORDING: Key[] = ["help.tap", "help.edit", "help.watch", "help.keys", "help.sun", "help.card"];
const SENDING: Key[] = ["help.here", "help.send", "help.needs", "help.sign_out", "help.private", "help.no_account", "help.data"];
const FINDINGS: Key[] = ["help.shown", "help.building", "help.untried", "help.shaky", "help.gone_stale", "help.on_hold"];

/** Everything one needs to know, readable with no signal. What keeps people and horses whole comes first. */
export function Help() {
  return (
    <Screen title={t("help.title")} back="/settings">
      <Notice tone="attention" title={t("help.before_title")}><Points keys={BEFORE} /></Notice>
      <Notice tone="stop" title={t("help.fall_title")}><Points keys={AFTER} /></Notice>
      <Section title={t("help.recording_title")}><Points keys={RECORDING} /></Section>
      <Section title={t("help.sending_title")}><Points keys={SENDING} /></Section>
      <Section title={t("help.findings_title")}>
        <p>{t("help.findings")}</p>
        <Points keys={FINDINGS} />
      </Section>
      {!installed() && (
        <Section title={t("help.install_title")}>
          <p>{t("help.install_why")}</p>
          <p>{t(`help.install_${platform()}`)}</p>
        </Section>
      )}
    </Screen>
  );
}

function Points({ keys }: { keys: Key[] }) {
  return <ul class="points">{keys.map((key) => <li key={key}>{t(key)}</li>)}</ul>;
}
