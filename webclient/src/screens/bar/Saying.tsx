import type { Finding } from "../../board/standing.ts";
import type { Comparison } from "../../board/whatIf.ts";
import { Told } from "../../parts/Told.tsx";
import { useRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { toldReason } from "../../words/told.ts";

/** What the finding itself would ask for then, where that differs; and for whom the change holds. */
export function Saying({ comparison: { before, after }, requirement_id }: { comparison: Comparison; requirement_id: string }) {
  const horse = useRecord("horse", before.horse_id);
  const [now, then] = [before, after].map(({ findings }) => findings.find((each) => each.requirement_id === requirement_id));
  return (
    <>
      {then && asksFor(now) !== asksFor(then) && <p>{t("bar.then")} {then.needs.length ? then.needs.map((need) => <Told of={toldReason(need)} key={need.text} />) : t("bar.nothing_more")}</p>}
      <p class="quiet">{t("bar.holds", { horse: horse?.body.name ?? "" })}</p>
    </>
  );
}

const asksFor = (finding: Finding | undefined): string => JSON.stringify(finding?.needs.map(({ text }) => text));
