// Which screen stands where: the frame, and in it the screen of the address or what has to come first.

import { Route, Switch, useLocation } from "wouter-preact";

import { session, starting } from "./account/session.ts";
import { ErrorBoundary } from "./health/ErrorBoundary.tsx";
import { LanguageNotice } from "./health/LanguageNotice.tsx";
import { Rescue } from "./health/Rescue.tsx";
import { StoreNotices } from "./health/StoreNotices.tsx";
import { Frame } from "./parts/Frame.tsx";
import { NotHere } from "./parts/NotHere.tsx";
import { ROUTES } from "./routes.ts";
import { NoLogbook } from "./screens/people/NoLogbook.tsx";
import { SignIn } from "./screens/sign-in/SignIn.tsx";
import { SetBar } from "./screens/conditioning/SetBar.tsx";
import { WatchBar } from "./screens/watch/WatchBar.tsx";
import { openState } from "./store/open.ts";
import { logbookId, openDb } from "./store/place.ts";
import { UpdateBar } from "./update/UpdateBar.tsx";
import { t } from "./words/index.ts";

export function App() {
  const [path] = useLocation();
  const signedIn = session.value?.account != null;
  const bars = <><UpdateBar /><StoreNotices /><LanguageNotice /><WatchBar /><SetBar /></>;
  return (
    <Frame signedIn={signedIn} bars={bars}>
      <ErrorBoundary key={path}>{isOpen(path) || ready() ? <Screens /> : <ComesFirst signedIn={signedIn} />}</ErrorBoundary>
    </Frame>
  );
}

function Screens() {
  return (
    <Switch>
      {ROUTES.map(({ path, screen }) => <Route path={path} component={screen as never} key={path} />)}
      <Route><NotHere /></Route>
    </Switch>
  );
}

function ComesFirst({ signedIn }: { signedIn: boolean }) {
  if (signedIn && openState.value === "open" && openDb.value && !logbookId.value) return <NoLogbook />;
  const opening = signedIn ? ["opening", "closed"].includes(openState.value) : starting.value;
  if (opening) return <p class="screen quiet">{t("frame.loading")}</p>;
  return signedIn ? <Rescue /> : <SignIn />;
}

function ready(): boolean {
  return openState.value === "open" && openDb.value !== null && logbookId.value !== null;
}

function isOpen(path: string): boolean {
  return ROUTES.some((route) => (route.open || (route.bookless && openDb.value)) && (route.path === path || (route.path.includes(":") && path.startsWith(route.path.split(":")[0]!))));
}
