import { useState } from "preact/hooks";

import type { Activity, Profile } from "../../entries/bodies.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
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
  const [all, setAll] = useState(false);
  if (value && !choosing) return <Chosen label={label} value={value} onChange={() => setChoosing(true)} />;
  const common = commonProfiles(activity);
  const shown = all || (value && !common.includes(value)) ? [...common, ...rareProfiles(activity)] : common;
  const choose = (profile: Profile | null) => {
    setChoosing(false);
    if (profile) onChoose(profile);
  };
  return (
    <div class="form">
      <Choices label={label} choices={shown.map((each) => ({ value: each, words: t(`profile.${each}`) }))} value={value} onChoose={choose} big optional />
      {shown === common && <p><Button onClick={() => setAll(true)}>{t("fence.more_profiles")}</Button></p>}
    </div>
  );
}

function Chosen({ label, value, onChange }: { label: string; value: Profile; onChange: () => void }) {
  return (
    <div class="chosen" role="group" aria-label={label}>
      <p><span class="chosen__label">{label}</span><strong class="chosen__value">{t(`profile.${value}`)}</strong></p>
      <BigButton label={t("fence.change_profile")} onClick={onChange}>{t("attempt.manner_change")}</BigButton>
    </div>
  );
}
