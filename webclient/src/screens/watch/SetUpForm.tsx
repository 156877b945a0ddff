import { useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { STARTS } from "../../entries/bodies.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { recall, remember } from "../../store/little.ts";
import { showDistance } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { TraceChoice } from "../trace/TraceChoice.tsx";
import { TrackForm } from "../tracks/TrackForm.tsx";
import { COUNTDOWNS_S } from "./choice.ts";
import { QUIET } from "./device.ts";
import { TargetChoice } from "./TargetChoice.tsx";
import type { SetUp } from "./useSetUp.ts";

const NEW = "new";

/** Everything that can be chosen before a start. */
export function SetUpForm({ setUp }: { setUp: SetUp }) {
  return (
    <div class="form">
      <OutingChoice setUp={setUp} />
      <TrackChoice setUp={setUp} />
      <TargetChoice setUp={setUp} />
      <Choices
        label={t("watch.start_how")} value={setUp.choice.start} onChoose={(start) => start && setUp.choose({ start })}
        choices={STARTS.map((value) => ({ value, words: t(`watch.start_${value}`) }))}
      />
      <p class="quiet">{t(`watch.start_${setUp.choice.start}_hint`)}</p>
      {setUp.choice.start === "standing" && (
        <Choices
          label={t("watch.countdown")} value={String(setUp.choice.countdown_s ?? 0)} onChoose={(seconds) => setUp.choose({ countdown_s: Number(seconds) || null })}
          choices={[0, ...COUNTDOWNS_S].map((n) => ({ value: String(n), words: n === 0 ? t("watch.countdown_none") : t("watch.countdown_s", { n }) }))}
        />
      )}
      <Choices
        label={t("watch.ground")} value={setUp.choice.over_fences ? "fences" : "flat"}
        onChoose={(value) => setUp.choose({ over_fences: value === "fences" })}
        choices={[{ value: "flat", words: t("watch.on_flat") }, { value: "fences", words: t("watch.over_fences") }]}
      />
      <SoundChoice />
      <TraceChoice />
    </div>
  );
}

function OutingChoice({ setUp: { outings, horses, outing, horse, choose } }: { setUp: SetUp }) {
  if (horses.length === 0) {
    return <Notice tone="attention" actions={<Link class="button" href="/horse/new">{t("watch.add_horse")}</Link>}><p>{t("watch.no_horses")}</p></Notice>;
  }
  const name = (id: string): string => horses.find((one) => one.record_id === id)?.body.name ?? "…";
  const chips = outings.map((one) => ({ value: one.record_id, words: t("watch.outing_today", { horse: name(one.body.horse_id), activity: t(`activity.${one.body.activity}`) }) }));
  return (
    <>
      {chips.length > 0 && (
        <Choices
          label={t("watch.outing")} value={outing?.record_id ?? NEW} choices={[...chips, { value: NEW, words: t("watch.outing_new") }]}
          onChoose={(id) => choose(id === NEW ? { outing_id: null, horse_id: horse?.record_id ?? null } : { outing_id: id, horse_id: null })}
        />
      )}
      {!outing && (
        <Choices
          label={t("watch.horse")} value={horse?.record_id ?? null} choices={horses.map((one) => ({ value: one.record_id, words: one.body.name }))}
          onChoose={(horse_id) => choose({ horse_id, outing_id: null })}
        />
      )}
    </>
  );
}

function TrackChoice({ setUp: { tracks, track, field_id, choose } }: { setUp: SetUp }) {
  const [measuring, setMeasuring] = useState(tracks.length === 0);
  const chips = tracks.map((one) => ({ value: one.record_id, words: t("watch.track_chip", { name: one.body.name, distance: showDistance(one.body.distance_m) }) }));
  const made = (track_id: string): void => {
    setMeasuring(false);
    choose({ track_id });
  };
  return (
    <>
      <Choices
        label={t("watch.track")} value={measuring ? NEW : (track?.record_id ?? null)} choices={[...chips, { value: NEW, words: t("watch.track_new") }]}
        onChoose={(id) => (id === NEW ? setMeasuring(true) : made(id as string))}
      />
      {measuring ? <div class="card"><TrackForm field_id={field_id} onSaved={made} /></div> : <p><Link href="/tracks">{t("track.title")}</Link></p>}
    </>
  );
}

function SoundChoice() {
  const [quiet, setQuiet] = useState(recall<boolean>(QUIET) === true);
  const choose = (value: "on" | "off" | null): void => {
    setQuiet(value === "off");
    remember(QUIET, value === "off");
  };
  return (
    <Choices
      label={t("watch.sound")} value={quiet ? "off" : "on"} onChoose={choose}
      choices={[{ value: "on", words: t("watch.sound_on") }, { value: "off", words: t("watch.sound_off") }]}
    />
  );
}
