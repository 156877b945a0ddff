import { useState } from "preact/hooks";

import type { Finding, Standing } from "../../board/standing.ts";
import { askWhatIf, type Answer } from "../../board/whatIf.ts";
import { readCorrection } from "../../levels/correction.ts";
import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { save, takeBack, useDraft } from "../../store/book.ts";
import { logbookId } from "../../store/place.ts";
import { knows, t } from "../../words/index.ts";
import { askedTitle } from "../../words/told.ts";
import { Compared } from "../what-if/Compared.tsx";
import { Pick } from "../what-if/Pick.tsx";
import { numberWords } from "./numberWords.ts";

/** Change one number of one requirement, after seeing what it does. */
export function BarForm({ standing }: { standing: Standing }) {
  const [requirement, setRequirement] = useState("");
  const [quantity, setQuantity] = useState("");
  const [text, setText] = useState("");
  const [reason, setReason, clearReason] = useDraft(`bar/${standing.level_id}`);
  const [tried, setTried] = useState(false);
  const [answer, setAnswer] = useState<Answer | null>(null);
  const finding = standing.findings.find((each) => each.requirement_id === requirement);
  const value = quantity === "dropped" ? 1 : text.trim() === "" ? undefined : (readCorrection(text, "") ?? undefined);
  const change = { rulebook_id: standing.rulebook_id, level_id: standing.level_id, requirement_id: requirement, quantity, value: value ?? null, reason: reason.trim() };
  const ready = requirement !== "" && quantity !== "" && value !== undefined && change.reason !== "";
  const preview = async () => {
    setTried(true);
    if (ready) setAnswer(await askWhatIf(logbookId.value!, standing.horse_id, standing.level_id, { bar_changes: [change] }));
  };
  const keep = async (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (!ready) return;
    const { record_id } = await save("bar_change", change);
    toast(t("bar.saved"), () => takeBack(record_id));
    clearReason();
    setAnswer(null);
    setTried(false);
  };
  return (
    <form class="form card" onSubmit={keep}>
      <Pick label={t("bar.requirement")} value={requirement} onPick={setRequirement} choices={standing.findings.map((each) => [each.requirement_id, askedTitle(each)])} />
      {finding && <p class="quiet">{t("bar.source", { source: finding.bar?.source ?? "" })}</p>}
      {finding && <Pick label={t("bar.number")} value={quantity} onPick={setQuantity} choices={numbersOf(finding)} />}
      {quantity !== "" && quantity !== "dropped" && (
        <TextBox
          label={t("bar.value", { value: String(finding?.bar?.numbers[quantity] ?? "") })} value={text} onInput={setText} inputMode="decimal"
          trouble={tried && value === undefined ? t("bar.value_missing") : null}
        />
      )}
      <TextBox label={t("bar.reason")} value={reason} onInput={setReason} lines={3} most={2000} trouble={tried && !change.reason ? t("bar.reason_missing") : null} />
      <div class="buttons">
        <Button onClick={() => void preview()}>{t("bar.preview")}</Button>
        <Button tone="main" type="submit">{t("bar.save")}</Button>
      </div>
      <Compared answer={answer} />
    </form>
  );
}

/** The numbers a coach may sensibly change: those that have a name in words. */
function numbersOf(finding: Finding): [string, string][] {
  const named = Object.keys(finding.bar?.numbers ?? {}).filter((quantity) => knows(`bar.n.${quantity}`));
  return [...named.map((quantity): [string, string] => [quantity, numberWords(quantity)]), ["dropped", t("bar.drop")]];
}
