import { Section } from "../../parts/Card.tsx";
import { type Key, t } from "../../words/index.ts";
import { installed } from "../help/platform.ts";

interface Ability {
  name: Key;
  has: () => boolean;
  without: Key;
}

const ABILITIES: Ability[] = [
  { name: "settings.can_offline", has: () => Boolean(navigator.serviceWorker?.controller), without: "settings.can_offline_no" },
  { name: "settings.can_wake", has: () => "wakeLock" in navigator, without: "settings.can_wake_no" },
  { name: "settings.can_buzz", has: () => "vibrate" in navigator, without: "settings.can_buzz_no" },
  { name: "settings.can_share", has: () => "canShare" in navigator, without: "settings.can_share_no" },
  { name: "settings.can_home", has: installed, without: "settings.can_home_no" },
  { name: "settings.can_locks", has: () => "locks" in navigator, without: "settings.no" },
  { name: "settings.can_background", has: () => false, without: "settings.can_background_never" },
];

/** What this device can do, and what takes its place where it cannot. Nothing here decides whether records are kept. */
export function CanPart() {
  return (
    <Section title={t("settings.can")}>
      <dl class="facts">
        {ABILITIES.map(({ name, has, without }) => [<dt key={name}>{t(name)}</dt>, <dd key={`${name} says`}>{has() ? t("settings.yes") : t(without)}</dd>])}
      </dl>
    </Section>
  );
}
