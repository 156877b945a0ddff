import { useState } from "preact/hooks";

import { ATTITUDES, type Profile } from "../../entries/bodies.ts";
import { Choices } from "../../parts/Choices.tsx";
import { firstSides, type Manner, otherSides, type Side, SIDES, withAttitude, withSide } from "../../recording/manner.ts";
import { t } from "../../words/index.ts";
import { mannerWords, sideWord } from "./names.ts";

interface Props {
  manner: Manner;
  profile: Profile;
  onChange: (manner: Manner) => void;
  /** Everything on the page at once, for changing a past attempt. */
  open?: boolean;
}

/** A tall screen shows how the horse went without being asked; the rest is one tap further everywhere. */
const roomForAttitude = (): boolean => matchMedia("(min-height: 54rem), (min-width: 60rem) and (min-height: 46rem)").matches;

/** How the next attempt is met and how the horse goes: as last time, unless changed here. */
export function MannerChips({ manner, profile, onChange, open = false }: Props) {
  const [shown, setShown] = useState(open);
  const toggle = (event: MouseEvent) => {
    setShown(!shown);
    (event.currentTarget as Element).scrollIntoView({ block: "start" });
  };
  return (
    <div class={shown ? "manner manner--open" : "manner"}>
      {!open && (
        <button type="button" class="big-button manner__line" aria-expanded={shown} onClick={toggle}>
          <span class="manner__words"><span class="manner__label">{t("attempt.manner_next")}</span>{mannerWords(manner)}</span>
          <span class="manner__change">{shown ? t("attempt.manner_close") : t("attempt.manner_change")}</span>
        </button>
      )}
      {(shown || roomForAttitude()) && <AttitudeChips manner={manner} onChange={onChange} />}
      {shown && [...firstSides(profile), ...otherSides(profile)].map((side) => <SideChips side={side} manner={manner} onChange={onChange} key={side} />)}
    </div>
  );
}

function AttitudeChips({ manner, onChange }: Pick<Props, "manner" | "onChange">) {
  return (
    <Choices
      label={t("attempt.attitude")} big optional value={manner.attitude} choices={ATTITUDES.map((value) => ({ value, words: t(`attitude.${value}`) }))}
      onChoose={(attitude) => onChange(withAttitude(manner, attitude ?? manner.attitude!))}
    />
  );
}

function SideChips({ side, manner, onChange }: { side: Side; manner: Manner; onChange: (manner: Manner) => void }) {
  const value = manner.presentation[side];
  return (
    <Choices<string>
      label={t(`attempt.side.${side}`)} big optional value={value} choices={SIDES[side].map((word) => ({ value: word, words: sideWord(side, word) }))}
      onChoose={(word) => onChange(withSide(manner, side, (word ?? value) as never))}
    />
  );
}
