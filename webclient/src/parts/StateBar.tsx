import { Link } from "wouter-preact";

import { isLocal } from "../account/session.ts";
import { syncState } from "../sync/state.ts";
import { stateWords } from "../sync/stateWords.ts";
import { showClock, showMoment } from "../words/dates.ts";
import { say } from "../words/index.ts";
import { Icon } from "./Icon.tsx";

/** How far the records have got, in words; leads to what is waiting and what needs the person. */
export function StateBar() {
  const local = isLocal.value;
  const { key, values, tone } = local ? { key: "sync.local", values: { n: syncState.value.waiting }, tone: "waiting" as const } : stateWords(syncState.value, momentWords);
  return (
    <Link class={`state-bar state-bar--${tone}`} href={local ? "/sign-in" : "/needs-you"}>
      <Icon name={tone === "quiet" ? "tick" : tone === "attention" ? "attention" : "send"} />
      <span class="state-bar__words">{say({ key, values })}</span>
    </Link>
  );
}

function momentWords(instant: string | number): string {
  const today = new Date(instant).toDateString() === new Date().toDateString();
  return today ? showClock(instant) : showMoment(instant);
}
