import type { ComponentType } from "preact";
import { useEffect } from "preact/hooks";
import { Link, useLocation } from "wouter-preact";

import { localBegun, lookForLocal } from "../../account/local.ts";
import { isLocal } from "../../account/session.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { later } from "../../parts/later.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRecords, useRole } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { Continue } from "./Continue.tsx";
import { FirstSteps } from "./FirstSteps.tsx";
import { Install } from "./Install.tsx";
import { LogbookLine } from "./LogbookLine.tsx";
import { NewOuting } from "./NewOuting.tsx";
import { OutingList } from "./OutingList.tsx";
import { isOpenNow, useNewestOutings } from "./outings.ts";

const LocalWaits = later("LocalWaits") as ComponentType;

/** Where the day begins: go on with the open outing, start one, or look at an earlier one. */
export function Today() {
  const horses = useRecords("horse");
  const outings = useNewestOutings();
  useEffect(() => void lookForLocal(), []);
  const [, navigate] = useLocation();
  const role = useRole();
  const writes = role !== "reader";
  if (!horses || !outings) return <Screen title={t("today.title")}>{null}</Screen>;
  const open = outings.filter((outing) => isOpenNow(outing.body));
  const add = writes && horses.length > 0 && <Button onClick={() => navigate("/results")}>{t("today.results")}</Button>;
  return (
    <Screen title={t("today.title")} actions={add} wide>
      {localBegun.value && !isLocal.value && <LocalWaits />}
      <LogbookLine />
      <div class="columns">
        <div>
          {open.map((outing) => <Continue outing={outing} key={outing.record_id} />)}
          {horses.length === 0 ? <FirstSteps /> : writes && <NewOuting horses={horses} last={outings[0]} folded={open.length > 0 || role === "coach"} />}
        </div>
        <div>
          {outings.length > 0 && <Section title={t("today.outings")}><OutingList outings={outings} /></Section>}
          {outings.length > 0 && <Install />}
          {horses.length > 0 && <p><Link class="button" href="/conditioning">{t("today.conditioning")}</Link></p>}
          <p class="quiet"><Link href="/help">{t("today.help")}</Link></p>
        </div>
      </div>
    </Screen>
  );
}
