import { Screen } from "../../parts/Screen.tsx";
import { syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";
import { Bin } from "./Bin.tsx";
import { Forks } from "./Forks.tsx";
import { Held } from "./Held.tsx";
import { Refused } from "./Refused.tsx";
import { Sending } from "./Sending.tsx";
import { Unread } from "./Unread.tsx";
import { Waiting } from "./Waiting.tsx";

/** Where everything stands on its way to the server, and what only a person can decide. */
export function NeedsYou() {
  return (
    <Screen title={t("needs.title")} back="/">
      <Sending />
      {syncState.value.needs_you === 0 && <p>{t("needs.nothing")}</p>}
      <Refused />
      <Forks />
      <Unread />
      <Waiting />
      <Held />
      <Bin />
    </Screen>
  );
}
