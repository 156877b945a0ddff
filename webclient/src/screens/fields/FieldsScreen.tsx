import { Link } from "wouter-preact";

import { Row, Rows } from "../../parts/Card.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRecords, useRole } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";

/** The places to school. */
export function FieldsScreen() {
  const fields = useRecords("field");
  const fences = useRecords("fence");
  const mayWrite = useRole() !== "reader";
  if (!fields || !fences) return <p class="screen quiet">{t("field.loading")}</p>;
  const sorted = [...fields].sort((a, b) => a.body.name.localeCompare(b.body.name));
  const count = (id: string) => fences.filter((fence) => fence.body.field_id === id).length;
  return (
    <Screen title={t("field.fields")} actions={mayWrite && <Link class="button button--main" href="/field/new">{t("field.new")}</Link>}>
      <Rows empty={t("field.none")}>
        {sorted.map((field) => <Row href={`/field/${field.record_id}`} title={field.body.name} detail={t("field.fences_count", { n: count(field.record_id) })} key={field.record_id} />)}
      </Rows>
      {mayWrite && <p><Link class="button" href="/fields/bring">{t("field.bring")}</Link></p>}
    </Screen>
  );
}
