import type { Entry, Numbering } from "../../entries/entry.ts";
import type { Plain } from "../../entries/merge.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { toast } from "../../parts/toast.ts";
import { changesBetween } from "../../recording/history.ts";
import { settle } from "../../store/book.ts";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { findEntries } from "../../store/read.ts";
import { showMoment } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { oneChange } from "./changeWords.ts";

type Version = Entry & Numbering;

/** Everything that was ever said of a record: who, when, what changed; any version can be taken up again. */
export function History({ record_id, mayWrite }: { record_id: string; mayWrite: boolean }) {
  const entries = useLive(() => entriesOf(record_id), [record_id]);
  if (!entries) return null;
  return (
    <Section title={t("attempt.history")}>
      <ol class="rows history">
        {entries.map((entry, at) => <Line entry={entry} before={before(entry, entries)} newest={at === entries.length - 1} mayWrite={mayWrite} key={entry.id} />)}
      </ol>
    </Section>
  );
}

async function entriesOf(record_id: string): Promise<Version[]> {
  const found = await findEntries(here(), record_id);
  return found.sort((a, b) => (a.recorded_at < b.recorded_at ? -1 : 1));
}

const before = (entry: Version, all: readonly Version[]): Version | undefined => all.findLast((each) => entry.supersedes.includes(each.id));

interface LineProps {
  entry: Version;
  before: Version | undefined;
  newest: boolean;
  mayWrite: boolean;
}

function Line({ entry, before, newest, mayWrite }: LineProps) {
  const again = () => settle(entry.record_id, entry.body as Plain).catch(() => toast(t("attempt.not_changed")));
  return (
    <li class="row history__line">
      <span class="row__words">
        <span class="row__title">{whatHappened(entry, before)}</span>
        <span class="row__detail">{t("attempt.by_at", { name: entry.author_name ?? t("attempt.somebody"), moment: showMoment(entry.recorded_at) })}{entry.number ? "" : ` · ${t("attempt.not_sent")}`}</span>
      </span>
      {mayWrite && !newest && entry.body && <Button onClick={() => void again()}>{t("attempt.take_up")}</Button>}
    </li>
  );
}

function whatHappened(entry: Version, before: Version | undefined): string {
  if (!entry.body) return t("attempt.was_taken_back");
  if (!before) return t("attempt.was_recorded");
  if (!before.body) return t("attempt.was_put_back");
  return changesBetween(before.body, entry.body).map(oneChange).join("; ") || t("attempt.nothing_changed");
}
