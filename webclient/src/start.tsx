// Starts the app: the look, the last account, the phone's database, then sending and fetching.

import "./style/tokens.css";
import "./style/base.css";
import "./style/frame.css";
import "./style/parts.css";

import { render } from "preact";

import { recallSession, session } from "./account/session.ts";
import { App } from "./app.tsx";
import { listenForMistakes } from "./health/mistakes.ts";
import { openFor } from "./store/open.ts";
import { followTheme } from "./style/theme.ts";
import { startSync } from "./sync/schedule.ts";
import { watchForUpdates } from "./update/worker.ts";

listenForMistakes();
followTheme();
recallSession();
render(<App />, document.getElementById("app")!);
if (session.value?.account) void openFor(session.value.account.id);
startSync();
watchForUpdates();
