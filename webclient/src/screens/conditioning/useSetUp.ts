// Everything the set-up of an interval set shows: the outing and its horse, the steps of a level, the last set
// and how its recovery went, and the plan that is chosen among them.

import { useMemo, useState } from "preact/hooks";

import { recoveryState, offered } from "../../conditioning/suggest.ts";
import { type IntervalStep, stepsFor, WARM_UP_WALK_MIN } from "../../conditioning/steps.ts";
import type { Numbers } from "../../conditioning/remembered.ts";
import type { SetPlan } from "../../conditioning/set.ts";
import type { RecoveryState } from "../../conditioning/recovery.ts";
import { civilDate } from "../../entries/entry.ts";
import { uuid7 } from "../../entries/uuid7.ts";
import type { Level, Rulebook } from "../../pace/levels.ts";
import { inOrderMade } from "../../recording/made.ts";
import { fallsAmong } from "../../recording/cautions.ts";
import { save, type SavedRecord, useRecords } from "../../store/book.ts";
import { recall, remember } from "../../store/little.ts";
import { useHorseRulebook } from "../watch/useSetUp.ts";

const WALK_FIRST = "walk_first_min";

export interface LastSet {
  set: SavedRecord<"interval_set">;
  date: string;
  state: RecoveryState | null;
}

export interface SetUp {
  outings: SavedRecord<"outing">[];
  horses: SavedRecord<"horse">[];
  outing: SavedRecord<"outing"> | undefined;
  horse: SavedRecord<"horse"> | undefined;
  choose: (outing_id: string | null, horse_id: string | null) => void;
  fallen: boolean;
  rulebook: Rulebook | undefined;
  level: Level | undefined;
  chooseLevel: (level_id: string) => void;
  steps: IntervalStep[];
  /** The place of the chosen step; null when the numbers are the rider's own. */
  step: number | null;
  chooseStep: (step: number) => void;
  numbers: Numbers;
  change: (part: Partial<Numbers>) => void;
  walk_first_min: number;
  chooseWalkFirst: (minutes: number) => void;
  last: LastSet | null;
  plan: SetPlan | null;
  /** Makes today's outing where there is none; call when the set has started. */
  settleOuting: () => Promise<void>;
}

export const OWN: Numbers = { canters: 3, work_min: 3, walk_min: 3, speed_mpm: null };

// the slower end of a step's speeds: going on to the faster one is the rider's and the coach's choice
const numbersOf = ({ canters, work_min, walk_min, speed_mpm }: IntervalStep): Numbers => ({ canters, work_min, walk_min, speed_mpm: speed_mpm[0] });

/** `asked`: the outing of the address. Undefined while the logbook is read. */
export function useSetUp(asked: string | null): SetUp | undefined {
  const pair = usePair(asked);
  const rulebook = useHorseRulebook(pair?.horse?.body.rulebook_id);
  const last = useLastSet(pair?.horse);
  const [level_id, chooseLevelId] = useState<string | null>(null);
  const [chosen, setChosen] = useState<number | null>(null);
  const [own, setOwn] = useState<Numbers | null>(null);
  const [walk_first_min, setWalkFirst] = useState(() => recall<number>(WALK_FIRST) ?? WARM_UP_WALK_MIN);
  const level = rulebook?.levels.find((one) => one.id === (level_id ?? pair?.horse?.body.present_level_id)) ?? rulebook?.levels[0];
  const steps = useMemo(() => (level ? stepsFor(level) : []), [level]);
  if (!pair || last === undefined) return undefined;
  const place = Math.min(chosen ?? offered(steps, last?.set.body ?? null, last?.state ?? null), steps.length - 1);
  const numbers = own ?? (steps[place] ? numbersOf(steps[place]) : OWN);
  const { outing, horse, fresh_id } = pair;
  const outing_id = outing?.record_id ?? (horse ? fresh_id : null);
  return {
    ...pair, rulebook, level, steps, step: own === null && steps.length > 0 ? place : null, numbers, walk_first_min, last,
    chooseLevel: (id) => {
      chooseLevelId(id);
      setChosen(null);
      setOwn(null);
    },
    chooseStep: (step) => {
      setChosen(step);
      setOwn(null);
    },
    change: (part) => setOwn({ ...numbers, ...part }),
    chooseWalkFirst: (minutes) => {
      setWalkFirst(minutes);
      remember(WALK_FIRST, minutes);
    },
    plan: outing_id === null ? null : planOf(outing_id, numbers, walk_first_min),
    settleOuting: async () => {
      if (outing || !horse) return;
      await save("outing", { horse_id: horse.record_id, date: civilDate(new Date()), activity: "fitness" }, fresh_id);
    },
  };
}

function planOf(outing_id: string, { canters, work_min, walk_min, speed_mpm }: Numbers, walk_first_min: number): SetPlan {
  return { outing_id, canters, work_s: 60 * work_min, walk_s: 60 * walk_min, walk_first_s: 60 * walk_first_min, speed_mpm };
}

/** The outing and the horse: the one asked for, else today's newest fitness outing, else a new one. */
function usePair(asked: string | null) {
  const [fresh_id] = useState(uuid7);
  const [choice, setChoice] = useState<{ outing_id: string | null; horse_id: string | null }>({ outing_id: asked, horse_id: null });
  const all = useRecords("outing");
  const horses = useRecords("horse");
  const outings = useMemo(() => all && inOrderMade(all.filter((one) => one.body.date === civilDate(new Date()) || one.record_id === asked)), [all, asked]);
  const fitness = outings?.findLast((one) => one.body.activity === "fitness");
  const outing = outings?.find((one) => one.record_id === choice.outing_id) ?? (choice.horse_id === null ? fitness : undefined);
  const attempts = useRecords("attempt", useMemo(() => ({ outing_id: outing?.record_id ?? "" }), [outing?.record_id]));
  if (!outings || !horses) return undefined;
  const horse_id = outing?.body.horse_id ?? choice.horse_id ?? (horses.length === 1 ? horses[0]!.record_id : null);
  const horse = horses.find((one) => one.record_id === horse_id);
  const choose = (outing_id: string | null, chosen_horse: string | null): void => setChoice({ outing_id, horse_id: chosen_horse });
  return { outings, horses, outing, horse, fresh_id, choose, fallen: fallsAmong(attempts ?? []).length > 0 };
}

/** The horse's newest set, by the day of its outing; null when there is none, undefined while loading. */
function useLastSet(horse: SavedRecord<"horse"> | undefined): LastSet | null | undefined {
  const outings = useRecords("outing", useMemo(() => ({ horse_id: horse?.record_id ?? "" }), [horse?.record_id]));
  const sets = useRecords("interval_set");
  if (!horse) return null;
  if (!outings || !sets) return undefined;
  const days = new Map(outings.map((one) => [one.record_id, one.body.date]));
  const mine = inOrderMade(sets).flatMap((set) => (days.has(set.body.outing_id) ? [{ set, date: days.get(set.body.outing_id)! }] : []));
  const last = mine.sort((one, other) => one.date.localeCompare(other.date)).at(-1);
  return last ? { ...last, state: recoveryState(last.set.body, horse.body) } : null;
}
