// Every screen and its address, one line each. The first that fits wins.

import type { ComponentType } from "preact";

import { Board } from "./screens/board/Board.tsx";
import { FindingScreen } from "./screens/board/FindingScreen.tsx";
import { LevelBoard } from "./screens/board/LevelBoard.tsx";
import { Help } from "./screens/help/Help.tsx";
import { Levels } from "./screens/levels/Levels.tsx";
import { NeedsYou } from "./screens/needs-you/NeedsYou.tsx";
import { Roster } from "./screens/roster/Roster.tsx";
import { Settings } from "./screens/settings/Settings.tsx";
import { SignIn } from "./screens/sign-in/SignIn.tsx";
import { Timeline } from "./screens/timeline/Timeline.tsx";
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
  { path: "/board", screen: Board },
  { path: "/board/:horseId/:levelId", screen: LevelBoard },
  { path: "/finding/:horseId/:levelId/:requirementId", screen: FindingScreen },
  { path: "/timeline/:id", screen: Timeline },
  { path: "/levels", screen: Levels },
  { path: "/roster", screen: Roster },
  { path: "/sign-in", screen: SignIn, open: true },
];
