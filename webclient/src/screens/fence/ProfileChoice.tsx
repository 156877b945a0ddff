import { useEffect, useRef, useState } from "preact/hooks";

import type { Activity, Profile } from "../../entries/bodies.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { commonProfiles, rareProfiles } from "../../recording/profiles.ts";
import { t } from "../../words/index.ts";

interface Props {
  label: string;
  value: Profile | null;
  /** What the fence is wanted for decides which profiles come first. */
  activity?: Activity | null;
  onChoose: (profile: Profile) => void;
}

/** How the fence is built. Once chosen, one line; until then the common ones, and the others on demand. */
export function ProfileChoice({ label, value, activity = null, onChoose }: Props) {
  const [choosing, setChoosing] = useState(value === null);
  const line = useRef<HTMLDivElement>(null);
  const chosenHere = useRef(false);
  useEffect(() => {
    if (chosenHere.current && !choosing) line.current?.querySelector("button")?.focus({ preventScroll: true });
  }, [choosing]);
  const choose = (profile: Profile) => {
    chosenHere.current = true;
    setChoosing(false);
    onChoose(profile);
  };
  if (!value || choosing) return <All label={label} value={value} activity={activity} onChoose={choose} />;
  return (
    <div class="chosen" role="group" aria-label={label} ref={line}>
      <p><span class="chosen__label">{label}</span><strong class="chosen__value">{t(`profile.${value}`)}</strong></p>
      <BigButton label={t("fence.change_profile")} onClick={() => setChoosing(true)}>{t("attempt.manner_change")}</BigButton>
    </div>
  );
}

/** Buttons and no radio group: in one an arrow key would choose, and with that close, at its first press. */
function All({ label, value, activity = null, onChoose }: Props) {
  const [all, setAll] = useState(value !== null && !commonProfiles(activity).includes(value));
  const shown = [...commonProfiles(activity), ...(all ? rareProfiles(activity) : [])];
  return (
    <fieldset class="choices choices--big">
      <legend class="choices__label">{label}</legend>
      <div class="choices__row">
        {shown.map((profile) => <BigButton pressed={profile === value} onClick={() => onChoose(profile)} key={profile}>{t(`profile.${profile}`)}</BigButton>)}
        {!all && <Button tone="quiet" onClick={() => setAll(true)}>{t("fence.more_profiles")}</Button>}
      </div>
    </fieldset>
  );
}
