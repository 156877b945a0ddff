import { useEffect, useState } from "preact/hooks";

import { logbooks } from "../../account/session.ts";
import { noteMistake } from "../../health/mistakes.ts";
import { planCopy, type CopyPlan } from "../../imports/planCopy.ts";
import type { CopiedBook } from "../../imports/readCopy.ts";
import { takeMedia } from "../../imports/takeMedia.ts";
import { takeIn } from "../../imports/takeIn.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { here, logbookId } from "../../store/place.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";

/** What one logbook of a copy holds, what of it is new here, and the button that takes it in. */
export function CopyPreview({ book }: { book: CopiedBook }) {
  const [busy, setBusy] = useState<string | null>(null);
  const [done, setDone] = useState<number | null>(null);
  const [damaged, setDamaged] = useState(0);
  const shown = logbooks.value.find(({ id }) => id === logbookId.value)!;
  const [plan, setPlan] = useState<CopyPlan | null>(null);
  useEffect(() => void planCopy(here().db, book, logbooks.value, shown).then(setPlan), [book, shown.id, done]);
  if (!plan) return null;
  const take = async () => {
    const place = { ...here(), logbook_id: plan.into.id };
    const tell = (at: number, total: number) => setBusy(t("import.progress", { done: at, total }));
    setBusy("");
    try {
      setDamaged((await takeMedia(place, book.media)).damaged);
      setDone(await takeIn(place, plan.fresh, tell));
    } catch (error) {
      noteMistake(error); // what stands in the way is said at the top
    }
    setBusy(null);
  };
  return (
    <Notice
      tone={plan.foreign ? "attention" : "plain"} title={book.title || t("import.copy")}
      actions={plan.fresh.length > 0 && <Button tone="main" disabled={busy !== null} onClick={() => void take()}>{t(plan.foreign ? "import.as_new" : "import.take", { n: plan.fresh.length, name: plan.into.title })}</Button>}
    >
      <Holds plan={plan} />
      {busy && <p role="status">{busy}</p>}
      {damaged > 0 && <p role="status"><strong>{t("import.damaged", { n: damaged })}</strong></p>}
      {done !== null && <p role="status"><strong>{t("import.taken", { n: done })}</strong></p>}
    </Notice>
  );
}

function Holds({ plan }: { plan: CopyPlan }) {
  const { counts, book, from, to, fresh, already, differ, not_mine } = plan;
  const lines = [
    t("import.holds", { horses: counts.horse, outings: counts.outing, attempts: counts.attempt, others: counts.others }),
    from && to && t("import.days", { from: showDay(from), to: showDay(to) }),
    t("import.new", { n: fresh.length, already }),
    differ > 0 && t("import.differ", { n: differ }),
    not_mine > 0 && t("import.not_mine", { n: not_mine }),
    book.broken > 0 && t("import.broken", { n: book.broken }),
    book.media.length > 0 && t("import.media", { n: book.media.length }),
    plan.foreign && t("import.foreign", { name: plan.into.title }),
  ];
  return <>{lines.map((line) => line && <p key={line}>{line}</p>)}</>;
}
