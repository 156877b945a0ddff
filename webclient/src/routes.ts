// Every screen and its address, one line each. The first that fits wins.

import type { ComponentType } from "preact";

import { Help } from "./screens/help/Help.tsx";
import { NeedsYou } from "./screens/needs-you/NeedsYou.tsx";
import { Settings } from "./screens/settings/Settings.tsx";
import { SignIn } from "./screens/sign-in/SignIn.tsx";
import { Today } from "./screens/today/Today.tsx";

export interface RouteLine {
  path: string;
  screen: ComponentType<{ params: never }>;
  /** Opens without an account. */
  open?: true;
}

export const ROUTES: RouteLine[] = [
  { path: "/", screen: Today },
  { path: "/needs-you", screen: NeedsYou },
  { path: "/settings", screen: Settings },
  { path: "/help", screen: Help, open: true },
  { path: "/sign-in", screen: SignIn, open: true },
];
