import type { Standing } from "../../board/standing.ts";
import { Row, Rows } from "../../parts/Card.tsx";
import { t } from "../../words/index.ts";

/** What else can be asked about this level. */
export function MoreOfLevel({ standing }: { standing: Standing }) {
  const at = `${standing.horse_id}/${standing.level_id}`;
  return (
    <Rows>
      {[
        <Row href={`/plan/${at}`} title={t("board.plan")} key="plan" />,
        <Row href={`/what-if/${at}`} title={t("board.what_if")} key="what-if" />,
        <Row href={`/bar/${at}`} title={t("board.bar")} key="bar" />,
      ]}
    </Rows>
  );
}
