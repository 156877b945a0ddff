// Every screen and its address, one line each. The first that fits wins.

import type { ComponentType } from "preact";

import { BarScreen } from "./screens/bar/BarScreen.tsx";
import { Board } from "./screens/board/Board.tsx";
import { FindingScreen } from "./screens/board/FindingScreen.tsx";
import { LevelBoard } from "./screens/board/LevelBoard.tsx";
import { Help } from "./screens/help/Help.tsx";
import { EditHorse, NewHorse } from "./screens/horse/HorseScreen.tsx";
import { Levels } from "./screens/levels/Levels.tsx";
import { NeedsYou } from "./screens/needs-you/NeedsYou.tsx";
import { PlanScreen } from "./screens/plan/PlanScreen.tsx";
import { Roster } from "./screens/roster/Roster.tsx";
import { Settings } from "./screens/settings/Settings.tsx";
import { SignIn } from "./screens/sign-in/SignIn.tsx";
import { Timeline } from "./screens/timeline/Timeline.tsx";
import { WhatIfScreen } from "./screens/what-if/WhatIfScreen.tsx";
import { Today } from "./screens/today/Today.tsx";
import { AttemptList } from "./screens/outing/AttemptList.tsx";
import { AttemptScreen } from "./screens/attempt/AttemptScreen.tsx";
import { EditField, NewField } from "./screens/fields/FieldForm.tsx";
import { FenceScreen, NewFence } from "./screens/fence/FenceScreen.tsx";
import { FieldScreen } from "./screens/fields/FieldScreen.tsx";
import { FieldsScreen } from "./screens/fields/FieldsScreen.tsx";
import { MadeUpFence } from "./screens/outing/MadeUpFence.tsx";
import { NoteScreen } from "./screens/note/NoteScreen.tsx";
import { OutingDetails } from "./screens/outing/OutingDetails.tsx";
import { OutingScreen } from "./screens/outing/OutingScreen.tsx";
import { CanterScreen } from "./screens/watch/CanterScreen.tsx";
import { CourseScreen } from "./screens/course/CourseScreen.tsx";
import { EditResult, NewResult } from "./screens/results/ResultScreen.tsx";
import { EditTrack, NewTrack, TrackScreen } from "./screens/tracks/TrackScreen.tsx";
import { Results } from "./screens/results/Results.tsx";
import { Tracks } from "./screens/tracks/Tracks.tsx";
import { WatchScreen } from "./screens/watch/WatchScreen.tsx";
import { ConditioningScreen } from "./screens/conditioning/ConditioningScreen.tsx";
import { SetScreen } from "./screens/conditioning/SetScreen.tsx";
import { PatternsScreen } from "./screens/patterns/PatternsScreen.tsx";

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
  { path: "/plan/:horseId/:levelId", screen: PlanScreen },
  { path: "/what-if/:horseId/:levelId", screen: WhatIfScreen },
  { path: "/bar/:horseId/:levelId", screen: BarScreen },
  { path: "/timeline/:id", screen: Timeline },
  { path: "/levels", screen: Levels },
  { path: "/roster", screen: Roster },
  { path: "/horse/new", screen: NewHorse },
  { path: "/horse/:id", screen: EditHorse },
  { path: "/sign-in", screen: SignIn, open: true },
  { path: "/outing/:id", screen: OutingScreen },
  { path: "/outing/:id/fence/:fenceId", screen: OutingScreen },
  { path: "/outing/:id/made-up", screen: MadeUpFence },
  { path: "/outing/:id/details", screen: OutingDetails },
  { path: "/outing/:id/attempts", screen: AttemptList },
  { path: "/attempt/:id", screen: AttemptScreen },
  { path: "/note/:id", screen: NoteScreen },
  { path: "/fields", screen: FieldsScreen },
  { path: "/field/new", screen: NewField },
  { path: "/field/:id", screen: FieldScreen },
  { path: "/field/:id/edit", screen: EditField },
  { path: "/fence/new", screen: NewFence },
  { path: "/fence/:id", screen: FenceScreen },
  { path: "/watch", screen: WatchScreen },
  { path: "/watch/canter/:id", screen: CanterScreen },
  { path: "/tracks", screen: Tracks },
  { path: "/tracks/new", screen: NewTrack },
  { path: "/tracks/:id", screen: TrackScreen },
  { path: "/tracks/:id/edit", screen: EditTrack },
  { path: "/results", screen: Results },
  { path: "/results/new/:kind", screen: NewResult },
  { path: "/results/:kind/:id", screen: EditResult },
  { path: "/course", screen: CourseScreen },
  { path: "/conditioning", screen: ConditioningScreen },
  { path: "/conditioning/set/:id", screen: SetScreen },
  { path: "/patterns/:horseId", screen: PatternsScreen },
];
