// Starts the app: the look, the last account, the phone's database, then sending and fetching.

import "./style/tokens.css";
import "./style/base.css";
import "./style/frame.css";
import "./style/parts.css";

import { render } from "preact";

import { recallSession, serverSays, session, starting } from "./account/session.ts";
import { startFromServer, startOffline } from "./account/sign.ts";
import { App } from "./app.tsx";
import { listenForMistakes, noteMistake } from "./health/mistakes.ts";
import { followHistory } from "./parts/goBack.ts";
import { fetchLater } from "./parts/later.tsx";
import { followTheme } from "./style/theme.ts";
import { startSync } from "./sync/schedule.ts";
import { watchForUpdates } from "./update/worker.ts";
import { readWords } from "./words/index.ts";

listenForMistakes();
followTheme();
followHistory();
recallSession();
void begin();
startSync();
watchForUpdates();

async function begin(): Promise<void> {
  await Promise.all([showApp(), startOffline()]);
  starting.value = false;
  if (!session.value?.account) serverSays.value = await startFromServer();
}

async function showApp(): Promise<void> {
  const place = document.getElementById("app")!;
  try {
    await readWords();
    render(<App />, place);
    void fetchLater();
  } catch (error) {
    noteMistake(error);
    document.getElementById("unfetched")!.hidden = false; // the connection broke during the very first visit
  }
}
