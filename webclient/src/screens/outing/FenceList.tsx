import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { Link } from "wouter-preact";

import { ASKS } from "../../entries/bodies.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { asksAmong, favouritesFirst, type FenceFilter, matching, NO_FILTER } from "../../recording/fenceList.ts";
import { byFence, clearThroughout, tallyOf } from "../../recording/tally.ts";
import type { SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { fenceBrief, fenceWords, tallyWords } from "./names.ts";
import { metresTo, nearestFirst } from "../../sketch/nearest.ts";
import { showRough } from "../../units/index.ts";
import { NearestFirst, standsAt } from "./NearestFirst.tsx";
import type { OutingView, SeenAttempt } from "./useOuting.ts";

/** Lasts from fence to fence, not from day to day. */
const filter = signal<FenceFilter>(NO_FILTER);
const ANY = "any";

interface Props {
  view: OutingView;
  chosen: string | null;
  mayRecord: boolean;
}

/** The outing's fences, favourites first and otherwise in riding order, or the nearest first, with what happened at each today. */
export function FenceList({ view, chosen, mayRecord }: Props) {
  const me = standsAt.value;
  const metres = me ? metresTo(view.fences, me) : null;
  const matched = matching(view.fences, filter.value, fenceWords);
  const shown = metres ? nearestFirst(matched, metres) : favouritesFirst(matched);
  const attempts = byFence(view.attempts);
  if (!view.fences.length) return <NoFences view={view} mayRecord={mayRecord} />;
  return (
    <>
      {view.fences.length > 5 && <FilterBar fences={view.fences} />}
      {view.fences.filter(({ body }) => body.latitude !== null).length > 1 && <NearestFirst />}
      {!shown.length && <p class="empty">{t("outing.none_match")} <button type="button" class="button" onClick={() => (filter.value = NO_FILTER)}>{t("outing.show_all")}</button></p>}
      <ul class="rows">
        {shown.map((fence) => (
          <FenceRow fence={fence} attempts={attempts.get(fence.record_id) ?? []} outing_id={view.outing.record_id} chosen={fence.record_id === chosen} away_m={metres?.get(fence.record_id)} key={fence.record_id} />
        ))}
      </ul>
    </>
  );
}

interface RowProps {
  fence: SavedRecord<"fence">;
  attempts: SeenAttempt[];
  outing_id: string;
  chosen: boolean;
  /** From where the person said she stands. */
  away_m?: number | undefined;
}

function FenceRow({ fence, attempts, outing_id, chosen, away_m }: RowProps) {
  const row = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (chosen) row.current?.scrollIntoView({ block: "nearest" });
  }, [chosen]);
  const { body } = fence;
  return (
    <li class="row" ref={row}>
      <Link class="row__link fence-row" href={`/outing/${outing_id}/fence/${fence.record_id}`} aria-current={chosen ? "true" : undefined}>
        <span class="row__words">
          <span class="row__title">{body.label}{body.favourite && <Star />}</span>
          <span class="row__detail">{away_m !== undefined && `${showRough(away_m)} · `}{fenceBrief(body)}</span>
          {attempts.length > 0 && <span class="fence-row__tally">{tallyWords(tallyOf(attempts))}<Throughout fence={fence} attempts={attempts} /></span>}
        </span>
        {attempts.length > 0 && <span class="fence-row__count" aria-hidden="true">{attempts.length}</span>}
        <Icon name="forward" />
      </Link>
    </li>
  );
}

function Star() {
  return <span class="star"><span aria-hidden="true"> ★</span><span class="unseen">{t("outing.favourite")}</span></span>;
}

function Throughout({ fence, attempts }: { fence: SavedRecord<"fence">; attempts: SeenAttempt[] }) {
  const n = clearThroughout(fence.body, attempts);
  return n ? <> · {t("outing.clear_throughout", { n })}</> : null;
}

function FilterBar({ fences }: { fences: SavedRecord<"fence">[] }) {
  const { ask, search, favourites } = filter.value;
  const change = (part: Partial<FenceFilter>) => (filter.value = { ...filter.value, ...part });
  const asks = asksAmong(fences, ASKS);
  const chips = useRef<HTMLDivElement>(null);
  useEffect(() => { // what was chosen at another fence may lie beyond the edge
    const chosen = chips.current?.querySelector<HTMLElement>(".chip:has(:checked)");
    if (chosen) chosen.parentElement!.scrollLeft = chosen.offsetLeft - chosen.parentElement!.offsetLeft;
  }, []);
  return (
    <div class="fence-filter" role="search" aria-label={t("outing.filter")}>
      <label class="unseen" for="fence-search">{t("outing.search")}</label>
      <input id="fence-search" class="text-box__input" type="search" placeholder={t("outing.search")} value={search} onInput={(event) => change({ search: event.currentTarget.value })} />
      <button type="button" class="button" aria-pressed={favourites} aria-label={t("outing.favourites")} onClick={() => change({ favourites: !favourites })}><span aria-hidden="true">★</span></button>
      <div class="ask-chips" ref={chips}>
        <Choices
          label={t("outing.by_ask")} hideLabel value={ask ?? ANY} onChoose={(chosen) => change({ ask: chosen === ANY ? null : chosen })}
          choices={[{ value: ANY, words: t("outing.any_ask") }, ...asks.map(({ ask, count }) => ({ value: ask, words: `${t(`ask.${ask}`)} · ${count}` }))]}
        />
      </div>
    </div>
  );
}

function NoFences({ view, mayRecord }: { view: OutingView; mayRecord: boolean }) {
  const field_id = view.outing.body.field_id;
  return (
    <div class="card">
      <p>{field_id ? t("outing.no_fences") : t("outing.no_fences_no_field")}</p>
      {mayRecord && field_id && <p><Link class="button" href={`/fence/new?field=${field_id}&outing=${view.outing.record_id}`}>{t("outing.add_to_field")}</Link></p>}
    </div>
  );
}
