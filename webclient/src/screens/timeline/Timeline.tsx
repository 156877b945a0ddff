import { Link } from "wouter-preact";

import { useElsewhere } from "../../account/elsewhere.ts";
import { outingTimeline } from "../../board/outingTimeline.ts";
import type { Outing } from "../../entries/bodies.ts";
import { Section } from "../../parts/Card.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRecord, useRecords, useRole, useWhetherHere } from "../../store/book.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import "../../style/board.css";
import { SetsOf } from "../conditioning/SetsOf.tsx";
import { MediaAbout } from "../media/MediaAbout.tsx";
import { Said } from "./Said.tsx";
import { TimelineItem } from "./TimelineItem.tsx";

/** An outing to read at home: what was met and how it went, in order, with what was said about it. */
export function Timeline({ params }: { params: { id: string } }) {
  const found = useWhetherHere("outing", params.id);
  const outing = useRecord("outing", params.id);
  const horse = useRecord("horse", outing?.body.horse_id ?? "");
  const role = useRole();
  if (found === "missing") return <Elsewhere id={params.id} />;
  if (!outing) return <Screen title="" back="/">{null}</Screen>;
  const title = t("timeline.title", { horse: horse?.body.name ?? "", day: showDay(outing.body.date) });
  return (
    <Screen title={title} back="/">
      <Facts outing={outing.body} />
      <Said ids={[params.id]} about={params.id} what={t("timeline.whole")} />
      <MediaAbout ids={[params.id]} what={t("timeline.whole")} home />
      <AsItWent id={params.id} />
      <SetsOf outing_id={params.id} horse={horse?.body} />
      <p><Link href={`/outing/${params.id}/traces`}>{t("location.traces")}</Link></p>
      {(role === "rider" || role === "scribe") && (
        <p><Link class="button" href={`/outing/${params.id}`}>{t("timeline.record")}</Link></p>
      )}
    </Screen>
  );
}

function Elsewhere({ id }: { id: string }) {
  return useElsewhere(id) ? <Screen title="" back="/">{null}</Screen> : <NotHere />;
}

function Facts({ outing }: { outing: Outing }) {
  const field = useRecord("field", outing.field_id ?? "");
  const facts: [string, string | null | undefined][] = [
    [t("timeline.field"), field?.body.name],
    [t("timeline.activity"), t(`activity.${outing.activity}`)],
    [t("timeline.going"), outing.going && t(`going.${outing.going}`)],
    [t("timeline.confidence"), outing.rider_confidence === null ? null : t("timeline.confidence_of", { n: outing.rider_confidence })],
    [t("body.accompanied"), outing.accompanied === null ? null : t(outing.accompanied ? "settings.yes" : "today.alone")],
    [t("timeline.saddle"), outing.minutes_in_saddle === null ? null : t("timeline.minutes", { n: outing.minutes_in_saddle })],
  ];
  return (
    <Section title={t("timeline.facts")}>
      <dl class="facts card">
        {facts.map(([name, value]) => value && <><dt>{name}</dt><dd>{value}</dd></>)}
      </dl>
      {outing.from_memory && <p class="quiet">{t("timeline.from_memory")}</p>}
      {outing.notes && <p class="said__text">{outing.notes}</p>}
    </Section>
  );
}

function AsItWent({ id }: { id: string }) {
  const attempts = useRecords("attempt", { outing_id: id });
  const canters = useRecords("timed_canter", { outing_id: id });
  const sets = useRecords("interval_set", { outing_id: id });
  if (!attempts || !canters || !sets) return null;
  const items = outingTimeline(attempts, canters);
  const clear = attempts.filter((attempt) => attempt.body.outcome === "clear").length;
  return (
    <Section title={t("timeline.as_it_went")}>
      {items.length + sets.length === 0 && <p class="empty">{t("timeline.nothing")}</p>}
      {attempts.length > 0 && <p class="quiet">{t("timeline.tally", { clear, other: attempts.length - clear })}</p>}
      <ol class="timeline">{items.map((item) => <TimelineItem item={item} key={item.at_ms + item.what} />)}</ol>
    </Section>
  );
}
