import { useState } from "preact/hooks";

import type { Finding, Standing } from "../../board/standing.ts";
import { askWhatIf, type Answer } from "../../board/whatIf.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { save, takeBack, useDraft } from "../../store/book.ts";
import { logbookId } from "../../store/place.ts";
import { t } from "../../words/index.ts";
import { Compared } from "../what-if/Compared.tsx";
import { Pick } from "../what-if/Pick.tsx";
import { type Asked, defaultOf, type Now, quantitiesOf, rangeOf, readAsked } from "./asked.ts";
import { isShare, shownNumber, typedNumber } from "./numbers.ts";
import { numberWords } from "./numberWords.ts";
import { Saying } from "./Saying.tsx";

interface Props {
  standing: Standing;
  finding: Finding;
  now: Now;
}

/** Change one number of one requirement: first what it does, then the saving of it. */
export function BarForm({ standing, finding, now }: Props) {
  const [quantity, setQuantity] = useState("");
  const [text, setText] = useState("");
  const [reason, setReason, clearReason] = useDraft(`bar/${standing.level_id}/${finding.requirement_id}`);
  const [tried, setTried] = useState(false);
  const [unexplained, setUnexplained] = useState(false);
  const [asking, setAsking] = useState(false);
  const [seen, setSeen] = useState<{ of: string; answer: Answer } | null>(null);
  const asked = quantity === "" ? null : readAsked(quantity, text, now);
  const value = asked && "value" in asked ? asked.value : undefined;
  const of = `${quantity} ${value}`;
  const answer = seen?.of === of ? seen.answer : null;
  const { rulebook_id, level_id, horse_id } = standing;
  const change = { rulebook_id, level_id, requirement_id: finding.requirement_id, quantity, value: value ?? null, reason: reason.trim() };
  const look = async () => {
    setTried(true);
    if (value === undefined) return;
    const bar_changes = [{ ...change, reason: change.reason || "?" }];
    setAsking(true);
    setSeen({ of, answer: await askWhatIf(logbookId.value!, horse_id, level_id, { bar_changes }) });
    setAsking(false);
  };
  const keep = async () => {
    setUnexplained(!change.reason);
    if (!change.reason) return;
    const { record_id } = await save("bar_change", change);
    toast(t("bar.saved"), () => takeBack(record_id));
    clearReason();
    setQuantity("");
    setText("");
    setTried(false);
  };
  const may = answer && ("comparison" in answer || answer.trouble === "offline");
  return (
    <form class="form" onSubmit={(event) => { event.preventDefault(); void (may ? keep() : look()); }}>
      <Pick label={t("bar.number")} none={t("bar.choose")} value={quantity} onPick={(chosen) => { setQuantity(chosen); setText(""); setTried(false); }} choices={choicesOf(now)} />
      {quantity !== "" && quantity !== "dropped" && <Value {...{ quantity, text, setText, now }} trouble={tried ? troubleWords(quantity, asked) : null} />}
      {quantity !== "" && <TextBox label={t("bar.reason")} value={reason} onInput={setReason} lines={2} most={2000} trouble={unexplained && !change.reason ? t("bar.reason_missing") : null} />}
      {quantity !== "" && !may && <div class="buttons"><Button tone="main" type="submit" disabled={asking}>{t(asking ? "whatif.asking" : "bar.preview")}</Button></div>}
      <div class="bar-answer" aria-live="polite">
        {answer && (may && "trouble" in answer ? <Notice tone="attention"><p>{t("bar.offline")}</p></Notice> : <Compared answer={answer} />)}
        {answer && "comparison" in answer && <Saying comparison={answer.comparison} requirement_id={finding.requirement_id} />}
      </div>
      {may && <div class="buttons"><Button tone="main" type="submit">{t("bar.save")}</Button></div>}
    </form>
  );
}

function Value({ quantity, text, setText, now, trouble }: { quantity: string; text: string; setText: (text: string) => void; now: Now; trouble: string | null }) {
  const before = defaultOf(quantity, now)!;
  const typed = typedNumber(quantity, now.numbers[quantity]!);
  return (
    <>
      <TextBox label={isShare(quantity) ? t("bar.value_share", { value: typed }) : t("bar.value", { value: typed })} value={text} onInput={setText} inputMode="decimal" trouble={trouble} />
      {before !== now.numbers[quantity] && <div class="buttons"><Button tone="quiet" onClick={() => setText(typedNumber(quantity, before))}>{t("bar.back", { value: shownNumber(quantity, before) })}</Button></div>}
    </>
  );
}

function troubleWords(quantity: string, asked: Asked | null): string | null {
  if (!asked || !("trouble" in asked)) return null;
  const [least, most] = rangeOf(quantity).slice(0, 2).map((end) => shownNumber(quantity, end as number));
  return { missing: t("bar.value_missing"), range: t("bar.range", { least: least!, most: most! }), whole: t("bar.whole"), same: t("bar.same") }[asked.trouble];
}

function choicesOf({ numbers }: Now): [string, string][] {
  const named = quantitiesOf(numbers).map((quantity): [string, string] => [quantity, `${numberWords(quantity)}: ${shownNumber(quantity, numbers[quantity]!)}`]);
  return [...named, ["dropped", t("bar.drop")]];
}
