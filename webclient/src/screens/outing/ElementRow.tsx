import type { Fence } from "../../entries/bodies.ts";
import type { Letter } from "../../recording/combination.ts";
import { letters } from "../../recording/combination.ts";
import { atElement, tallyOf } from "../../recording/tally.ts";
import { t } from "../../words/index.ts";
import { tallyWords } from "./names.ts";
import type { OutingView } from "./useOuting.ts";

interface Props {
  fence: Fence;
  at: Letter | null;
  here: OutingView["attempts"];
  onPick: (letter: Letter, event: MouseEvent) => void;
}

/** The elements of a combination: the next tap counts at the one that is marked. */
export function ElementRow({ fence, at, here, onPick }: Props) {
  return (
    <div class="element-row" role="group" aria-label={t("outing.element")}>
      {letters(fence).map((letter) => (
        <button
          type="button" class="big-button" key={letter} aria-pressed={letter === at}
          aria-label={t("outing.element_is", { element: letter, tally: tallyWords(tallyOf(atElement(here, letter))) })}
          onClick={(event) => onPick(letter, event)}
        >
          <span class="big-button__words">{letter}</span>
          <span class="big-button__detail">{atElement(here, letter).length || "–"}</span>
        </button>
      ))}
    </div>
  );
}
