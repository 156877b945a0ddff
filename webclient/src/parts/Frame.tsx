import type { ComponentChildren } from "preact";
import { Link, useLocation } from "wouter-preact";

import { logbooks } from "../account/session.ts";
import { sunMode, toggleSunMode } from "../style/theme.ts";
import { t } from "../words/index.ts";
import { Icon, type IconName } from "./Icon.tsx";
import { StateBar } from "./StateBar.tsx";
import { Toast } from "./Toast.tsx";

interface NavPlace {
  href: string;
  icon: IconName;
  words: () => string;
  others: RegExp;
}

const RIDERS: NavPlace = { href: "/roster", icon: "person", words: () => t("frame.nav_riders"), others: /^\/roster/ };
const PLACES: NavPlace[] = [
  { href: "/", icon: "today", words: () => t("frame.nav_today"), others: /^\/outing/ },
  { href: "/fields", icon: "fields", words: () => t("frame.nav_fields"), others: /^\/(fields?|fence|tracks)/ },
  { href: "/watch", icon: "watch", words: () => t("frame.nav_watch"), others: /^\/watch/ },
  { href: "/board", icon: "board", words: () => t("frame.nav_board"), others: /^\/(board|finding|levels|results)/ },
  { href: "/settings", icon: "more", words: () => t("frame.nav_more"), others: /^\/(settings|help|needs-you)/ },
];

/** What stands around every screen. `bars`: what must be said above it, such as an update that waits. */
export function Frame({ children, bars, signedIn }: { children: ComponentChildren; bars?: ComponentChildren; signedIn: boolean }) {
  return (
    <div class="frame">
      <a class="skip" href="#content">{t("frame.skip")}</a>
      <header class="top">
        <div class="top__state">{signedIn ? <StateBar /> : <span class="state-bar">{t("frame.title")}</span>}</div>
        <Link class="icon-button" href="/emergency" aria-label={t("emergency.title")}><Icon name="aid" /></Link>
        <SunButton />
      </header>
      <div class="bars">
        {bars}
        {children}
      </div>
      {signedIn && <Nav />}
      <Toast />
    </div>
  );
}

function SunButton() {
  return (
    <button type="button" class="icon-button" aria-label={t("frame.sun_mode")} aria-pressed={sunMode.value} onClick={toggleSunMode}>
      <Icon name="sun" />
    </button>
  );
}

/** Somebody who reads others' logbooks begins with whose; who never records needs no stopwatch. */
function placesFor(): NavPlace[] {
  const roles = logbooks.value.map((book) => book.role);
  const own = PLACES.filter((place) => place.href !== "/watch" || roles.some((role) => role === "rider" || role === "scribe"));
  return roles.includes("coach") ? [RIDERS, ...own] : own;
}

function Nav() {
  const [path] = useLocation();
  return (
    <nav class="nav" aria-label={t("frame.nav")}>
      {placesFor().map(({ href, icon, words, others }) => (
        <Link class="nav__link" href={href} key={href} aria-current={path === href || others.test(path) ? "page" : undefined}>
          <Icon name={icon} />
          <span>{words()}</span>
        </Link>
      ))}
    </nav>
  );
}
