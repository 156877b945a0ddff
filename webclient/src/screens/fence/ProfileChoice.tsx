import { type Profile, PROFILES } from "../../entries/bodies.ts";
import { Choices } from "../../parts/Choices.tsx";
import { t } from "../../words/index.ts";

interface Props {
  label: string;
  value: Profile | null;
  onChoose: (profile: Profile) => void;
}

/** How the fence is built. */
export function ProfileChoice({ label, value, onChoose }: Props) {
  const choices = PROFILES.map((each) => ({ value: each, words: t(`profile.${each}`) }));
  return <Choices label={label} choices={choices} value={value} onChoose={(chosen) => chosen && onChoose(chosen)} big />;
}
