// Screens that nobody needs in the first second come in a second script, those of home and desk in a third. Both
// are fetched as soon as the first screen stands, so that from then on every screen is in memory: an update can
// never take a screen away from a page that is open, and with no signal the worker has the files.

import { signal } from "@preact/signals";
import type { ComponentType } from "preact";

import { noteMistake } from "../health/mistakes.ts";
import { t } from "../words/index.ts";
import { Button } from "./BigButton.tsx";
import { Screen } from "./Screen.tsx";

type Screens = typeof import("../later.ts") & typeof import("../home.ts");

const screens = signal<Partial<Screens>>({});
const failed = signal(false);

export async function fetchLater(): Promise<void> {
  try {
    screens.value = await import("../later.ts");
    screens.value = { ...screens.value, ...(await import("../home.ts")) };
  } catch (error) {
    noteMistake(error);
    failed.value = true;
  }
}

/** The screen of that name, or a line in its place for the moment until it is there. */
export function later(name: keyof Screens): ComponentType<{ params: never }> {
  return function Later(props) {
    const Found = screens.value[name] as ComponentType<{ params: never }> | undefined;
    if (Found) return <Found {...props} />;
    return failed.value ? <NotFetched /> : <p class="screen quiet">{t("frame.loading")}</p>;
  };
}

/** Only on a very first visit whose connection broke: a browser remembers the failure until the page is new. */
function NotFetched() {
  return (
    <Screen title={t("frame.not_fetched_title")}>
      <p>{t("frame.not_fetched")}</p>
      <div class="buttons"><Button tone="main" onClick={() => location.reload()}>{t("frame.reload")}</Button></div>
    </Screen>
  );
}
