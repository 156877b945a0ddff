import { faceText } from "../../pace/clockface.ts";
import { courseSpeeds, type Level, levelSpeed, type Rulebook } from "../../pace/levels.ts";
import { secondsFor, secondsPer100m } from "../../pace/markers.ts";
import { tenths } from "../../pace/phrases.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { showDistance } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { FASTEST_TARGET_MPM, SLOWEST_TARGET_MPM } from "./choice.ts";
import type { SetUp } from "./useSetUp.ts";

const STEP_MPM = 5;
const FROM_MPM = 350;
const OWN = "own";
const NONE = "none";

/** The target speed: a level's, an own one, or none. */
export function TargetChoice({ setUp }: { setUp: SetUp }) {
  const { choice, choose, levels, track, rulebook } = setUp;
  const level = levels.find((one) => one.id === choice.level_id);
  const chosen = level ? level.id : choice.target_speed_mpm === null ? NONE : OWN;
  const chooseBy = (by: string | null): void => {
    const next = levels.find((one) => one.id === by);
    if (next) return choose({ level_id: next.id, target_speed_mpm: levelSpeed(next) });
    choose({ level_id: null, target_speed_mpm: by === OWN ? (choice.target_speed_mpm ?? FROM_MPM) : null });
  };
  const chips = levels.map((one) => ({ value: one.id, words: `${one.name} ${levelSpeed(one)}` }));
  return (
    <div class="set-up__target">
      <Choices
        label={t("watch.target")} value={chosen} onChoose={chooseBy}
        choices={[...chips, { value: OWN, words: t("watch.target_free") }, { value: NONE, words: t("watch.target_none") }]}
      />
      {level && rulebook && <LevelSays level={level} rulebook={rulebook} />}
      {rulebook && levels.length === 0 && <p class="quiet">{t("watch.target_states_none", { rulebook: rulebook.title })}</p>}
      {choice.target_speed_mpm !== null && (
        <>
          <Stepper
            label={t("watch.target")} value={choice.target_speed_mpm} step={STEP_MPM} from={FROM_MPM}
            least={SLOWEST_TARGET_MPM} most={FASTEST_TARGET_MPM} show={(speed) => t("watch.target_mpm", { speed })}
            onChange={(target_speed_mpm) => choose({ target_speed_mpm })}
          />
          {track && <PaceHelp distance_m={track.body.distance_m} speed_mpm={choice.target_speed_mpm} />}
        </>
      )}
    </div>
  );
}

function LevelSays({ level, rulebook }: { level: Level; rulebook: Rulebook }) {
  const [low, high] = courseSpeeds(level) ?? [0, 0];
  const words = low === high ? t("watch.target_states_one", { level: level.name, low }) : t("watch.target_states", { level: level.name, low, high });
  return <p class="quiet">{words} {t("watch.target_source", { rulebook: rulebook.title, edition: rulebook.edition })}</p>;
}

/** How the speed feels: seconds for 100 m, the time for the track, where the minute marker stands. */
export function PaceHelp({ distance_m, speed_mpm }: { distance_m: number; speed_mpm: number }) {
  const beyond = speed_mpm - distance_m;
  const marker = Math.abs(beyond) < 0.5
    ? t("watch.marker_at")
    : beyond > 0 ? t("watch.marker_beyond", { metres: showDistance(beyond) }) : t("watch.marker_inside", { metres: showDistance(speed_mpm) });
  return (
    <p class="quiet">
      {t("watch.helper", { seconds: tenths(secondsPer100m(speed_mpm)), time: faceText(1000 * secondsFor(distance_m, speed_mpm)) })} {marker}
    </p>
  );
}
