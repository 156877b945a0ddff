import { isLocal } from "../../account/session.ts";
import { aimOf, ladder, withinReach } from "../../board/ladder.ts";
import type { Standing } from "../../board/standing.ts";
import { FindingStrip } from "../../charts/FindingStrip.tsx";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRecords, type SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import "../../style/board.css";
import { AsOf } from "./AsOf.tsx";
import { useStandingList } from "./useStandingList.ts";

/** Every horse with the levels of its rulebook: where it stands, and what it is working towards. */
export function Board() {
  const horses = useRecords("horse");
  const standings = useStandingList();
  if (!horses || !standings) return <Screen title={t("board.title")}>{null}</Screen>;
  return (
    <Screen title={t("board.title")}>
      {isLocal.value && <p>{t("local.no_standing")}</p>}
      {horses.length === 0 && <p class="empty">{t("board.no_horses")}</p>}
      {horses.map((horse) => <HorseLadder horse={horse} standings={standings} key={horse.record_id} />)}
      {standings[0] && <AsOf standing={standings[0]} />}
      <Rows>
        {[
          <Row href="/results" title={t("board.results")} key="results" />,
          <Row href="/levels" title={t("board.levels")} key="levels" />,
        ]}
      </Rows>
    </Screen>
  );
}

function HorseLadder({ horse, standings }: { horse: SavedRecord<"horse">; standings: Standing[] }) {
  const levels = ladder(standings, horse.record_id);
  const aim = aimOf(levels, horse.body.present_level_id);
  const empty = horse.body.rulebook_id === null ? t("board.no_rulebook") : t("board.no_standing");
  const { near, beyond } = withinReach(levels, aim);
  const row = (level: Standing) => <LevelRow level={level} horse={horse} aim={aim} key={level.level_id} />;
  return (
    <Section title={horse.body.name}>
      <Rows empty={empty}>{near.map(row)}</Rows>
      {beyond.length > 0 && (
        <details>
          <summary class="more__summary">{t("board.beyond", { n: beyond.length })}</summary>
          <Rows>{beyond.map(row)}</Rows>
        </details>
      )}
      <Rows>{[<Row href={`/patterns/${horse.record_id}`} title={t("pattern.title")} key="patterns" />]}</Rows>
    </Section>
  );
}

interface LevelRowProps {
  level: Standing;
  horse: SavedRecord<"horse">;
  aim: Standing | undefined;
}

function LevelRow({ level, horse, aim }: LevelRowProps) {
  const present = level.level_id === horse.body.present_level_id;
  return (
    <Row
      href={`/board/${horse.record_id}/${level.level_id}`}
      title={<LevelName level={level} present={present} aim={level === aim} />}
      detail={<span class="level"><FindingStrip summary={level.summary} /></span>}
    />
  );
}

function LevelName({ level, present, aim }: { level: Standing; present: boolean; aim: boolean }) {
  const { counts, required } = level.summary;
  return (
    <span class="level__name">
      {level.level_name}
      {present && <span class="level__place">{t("board.present")}</span>}
      {aim && <span class="level__place level__place--aim">{t("board.aim")}</span>}
      <span class="quiet" aria-hidden="true">{t("board.shown_of", { shown: counts.shown, required })}</span>
    </span>
  );
}
