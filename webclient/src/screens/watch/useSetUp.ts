// Everything the set-up shows: today's outings and horses, the tracks, the levels of the horse's rulebook,
// and the choice among them.

import { useEffect, useMemo, useState } from "preact/hooks";

import type { Track } from "../../entries/bodies.ts";
import { civilDate } from "../../entries/entry.ts";
import { uuid7 } from "../../entries/uuid7.ts";
import { newestLast } from "../../levels/correction.ts";
import { courseSpeeds, type Level, type Rulebook, withCorrections } from "../../pace/levels.ts";
import type { Plan } from "../../pace/run.ts";
import { inOrderMade } from "../../recording/made.ts";
import { save, type SavedRecord, useRecords, useRulebook } from "../../store/book.ts";
import { recall, remember } from "../../store/little.ts";
import { type Choice, planOf, recalled, tracksInOrder } from "./choice.ts";

const KEPT = "watch_choice";

export interface SetUp {
  choice: Choice;
  choose: (more: Partial<Choice>) => void;
  outings: SavedRecord<"outing">[];
  horses: SavedRecord<"horse">[];
  outing: SavedRecord<"outing"> | undefined;
  horse: SavedRecord<"horse"> | undefined;
  tracks: SavedRecord<"track">[];
  track: SavedRecord<"track"> | undefined;
  field_id: string | null;
  rulebook: Rulebook | undefined;
  /** The levels that state a speed, lowest first. */
  levels: Level[];
  plan: Plan | null;
  /** Makes today's outing where there is none; call when the run has started. */
  settleOuting: () => Promise<void>;
}

/** The outings of today, and the one asked for whatever its day; the newest last. */
function useOutings(asked: string | null): SavedRecord<"outing">[] | undefined {
  const all = useRecords("outing");
  return useMemo(() => {
    const today = civilDate(new Date());
    return all && inOrderMade(all.filter((one) => one.body.date === today || one.record_id === asked));
  }, [all, asked]);
}

export function useHorseRulebook(rulebook_id: string | null | undefined): Rulebook | undefined {
  const kept = useRulebook(rulebook_id ?? "") as Rulebook | undefined;
  const corrections = useRecords("rulebook_value");
  return useMemo(() => kept && withCorrections(kept, newestLast(corrections ?? [])), [kept, corrections]);
}

function useChoice(asked: Partial<Choice>): [Choice, (more: Partial<Choice>) => void] {
  const [choice, setChoice] = useState<Choice>(() => ({ ...recalled(recall<Partial<Choice>>(KEPT)), ...asked }));
  const choose = (more: Partial<Choice>): void => setChoice((before) => ({ ...before, set_id: null, ...more }));
  useEffect(() => remember(KEPT, { ...choice, outing_id: null, set_id: null }), [choice]);
  return [choice, choose];
}

function newOuting(horse_id: string, track: SavedRecord<"track">) {
  return { horse_id, field_id: (track.body as Track).field_id, date: civilDate(new Date()), activity: "fitness" as const };
}

/** `asked`: the outing and track of the address, where it names them. Undefined while the logbook is read. */
export function useSetUp(asked: Partial<Choice>): SetUp | undefined {
  const [choice, choose] = useChoice(asked);
  const [fresh_id] = useState(uuid7);
  const outings = useOutings(asked.outing_id ?? null);
  const horses = useRecords("horse");
  const all = useRecords("track");
  const outing = outings?.find((one) => one.record_id === choice.outing_id) ?? (choice.horse_id === null ? outings?.at(-1) : undefined);
  const horse_id = outing?.body.horse_id ?? choice.horse_id ?? (horses?.length === 1 ? horses[0]?.record_id : undefined) ?? "";
  const horse = horses?.find((one) => one.record_id === horse_id);
  const rulebook = useHorseRulebook(horse?.body.rulebook_id);
  if (!outings || !horses || !all) return undefined;
  const field_id = outing?.body.field_id ?? null;
  const tracks = tracksInOrder(all, field_id) as SavedRecord<"track">[];
  const track = tracks.find((one) => one.record_id === choice.track_id) ?? (tracks.length === 1 ? tracks[0] : undefined);
  const outing_id = outing?.record_id ?? (horse ? fresh_id : null);
  return {
    choice, choose, outings, horses, outing, horse, tracks, track, field_id, rulebook,
    levels: (rulebook?.levels ?? []).filter((level) => courseSpeeds(level) !== null),
    plan: planOf(choice, track, outing_id),
    settleOuting: async () => {
      if (outing || !track || !horse) return;
      await save("outing", newOuting(horse.record_id, track), fresh_id);
    },
  };
}

