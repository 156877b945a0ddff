import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { type ElementForm, LETTERS, type Problem, typed } from "../../recording/fenceForm.ts";
import { planningStrides } from "../../recording/strides.ts";
import { parseDistance, showDistance, units } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { PartFields } from "./PartFields.tsx";

interface Props {
  element: ElementForm;
  at: number;
  last: boolean;
  problems: readonly Problem[];
  onChange: (element: ElementForm) => void;
  onRemove: () => void;
}

/** One lettered part of a combination, and how far it is to the next. */
export function ElementFields({ element, at, last, problems, onChange, onRemove }: Props) {
  const path = `elements.${at}.`;
  const letter = LETTERS[at]!;
  return (
    <section class="element" aria-label={t("fence.element_is", { letter })}>
      <h2>{t("fence.element_is", { letter })}</h2>
      <PartFields part={element} path={path} problems={problems} onChange={onChange} />
      {!last && <ToNext element={element} at={at} problems={problems} onChange={onChange} />}
      <p><Button onClick={onRemove}>{t("fence.remove_element", { letter })}</Button></p>
    </section>
  );
}

function ToNext({ element, at, problems, onChange }: Omit<Props, "last" | "onRemove">) {
  const { distance_to_next } = element;
  const problem = problems.find(({ path }) => path === `elements.${at}.distance_to_next`);
  return (
    <>
      <TextBox
        label={t("fence.distance_to", { letter: LETTERS[at + 1]! })} value={distance_to_next.text} inputMode={units.value === "metric" ? "decimal" : "text"} autoComplete="off"
        onInput={(text) => onChange({ ...element, distance_to_next: typed(text, parseDistance) })}
        hint={t(units.value === "metric" ? "fence.write_distance_metric" : "fence.write_distance_imperial")}
        trouble={problem && t("fence.distance_range", { least: showDistance(0.5), most: showDistance(60) })}
      />
      <Strides metres={distance_to_next.value} />
    </>
  );
}

/** How many strides that is, for planning: said to be a planning number, for no horse has read it. */
function Strides({ metres }: { metres: number | null }) {
  const planned = planningStrides(metres);
  if (planned === null) return null;
  const { strides, over_m } = planned;
  const by = showDistance(Math.abs(over_m));
  const off = over_m === 0 ? "" : ` ${t(over_m > 0 ? "fence.strides_long" : "fence.strides_short", { by })}`;
  const words = strides === 0 ? t("fence.strides_bounce") : t("fence.strides", { n: strides });
  return <p class="quiet" role="status">{words}{off}. {t("fence.strides_planning")}</p>;
}
