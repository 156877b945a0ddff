import { logbooks } from "../../account/session.ts";
import { Row, Rows } from "../../parts/Card.tsx";
import { useRecords } from "../../store/book.ts";
import { syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";

/** The screens that have no place in the main navigation. */
export function Places() {
  const reads = logbooks.value.some((book) => book.role !== "rider");
  const waits = syncState.value.needs_you + syncState.value.waiting;
  return (
    <>
      <Rows>
        {[
          reads && <Row href="/roster" title={t("settings.riders")} key="roster" />,
          <Row href="/results" title={t("settings.results")} key="results" />,
          <Row href="/tracks" title={t("settings.tracks")} key="tracks" />,
          <Row href="/course" title={t("settings.course")} key="course" />,
          <Row href="/levels" title={t("settings.levels")} key="levels" />,
          <Row href="/needs-you" title={t("settings.needs_you")} end={waits > 0 && waits} key="needs" />,
          <Row href="/emergency" title={t("emergency.title")} key="emergency" />,
          <Row href="/phone" title={t("phone.title")} key="phone" />,
          <Row href="/help" title={t("settings.help")} key="help" />,
        ].filter(Boolean)}
      </Rows>
      <Horses />
    </>
  );
}

function Horses() {
  const horses = useRecords("horse") ?? [];
  if (!horses.length) return null;
  return (
    <section class="section">
      <h2>{t("settings.horses")}</h2>
      <Rows>{horses.map(({ record_id, body }) => <Row href={`/horse/${record_id}`} title={body.name} key={record_id} />)}</Rows>
    </section>
  );
}
