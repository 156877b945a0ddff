// Every screen and its address, one line each. The first that fits wins. A screen not needed
// in the field's first second is named by `later` and stands in later.ts.

import type { ComponentType } from "preact";

import { later } from "./parts/later.tsx";
import { Board } from "./screens/board/Board.tsx";
import { FindingScreen } from "./screens/board/FindingScreen.tsx";
import { LevelBoard } from "./screens/board/LevelBoard.tsx";
import { EditHorse, NewHorse } from "./screens/horse/HorseScreen.tsx";
import { SignIn } from "./screens/sign-in/SignIn.tsx";
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
import { WatchScreen } from "./screens/watch/WatchScreen.tsx";

export interface RouteLine {
  path: string;
  screen: ComponentType<{ params: never }>;
  /** Opens without an account. */
  open?: true;
  /** Opens with an account that is in no logbook. */
  bookless?: true;
}

export const ROUTES: RouteLine[] = [
  { path: "/", screen: Today },
  { path: "/needs-you", screen: later("NeedsYou") },
  { path: "/people", screen: later("PeopleScreen") },
  { path: "/account", screen: later("AccountScreen"), bookless: true },
  { path: "/invited/:code", screen: later("InvitedScreen"), open: true },
  { path: "/import", screen: later("ImportScreen") },
  { path: "/keep", screen: later("KeepScreen") },
  { path: "/settings", screen: later("Settings") },
  { path: "/emergency", screen: later("EmergencyScreen"), open: true },
  { path: "/phone", screen: later("PhoneScreen") },
  { path: "/help", screen: later("Help"), open: true },
  { path: "/board", screen: Board },
  { path: "/board/:horseId/:levelId", screen: LevelBoard },
  { path: "/finding/:horseId/:levelId/:requirementId", screen: FindingScreen },
  { path: "/plan/:horseId/:levelId", screen: later("PlanScreen") },
  { path: "/what-if/:horseId/:levelId", screen: later("WhatIfScreen") },
  { path: "/bar/:horseId/:levelId", screen: later("BarScreen") },
  { path: "/timeline/:id", screen: later("Timeline") },
  { path: "/levels", screen: later("Levels") },
  { path: "/roster", screen: later("Roster") },
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
  { path: "/photo/:id", screen: later("PhotoScreen") },
  { path: "/fields", screen: FieldsScreen },
  { path: "/fields/bring", screen: later("BringScreen") },
  { path: "/field/new", screen: NewField },
  { path: "/field/:id", screen: FieldScreen },
  { path: "/field/:id/edit", screen: EditField },
  { path: "/field/:id/walk", screen: later("WalkScreen") },
  { path: "/field/:id/sketch", screen: later("SketchScreen") },
  { path: "/field/:id/share", screen: later("ShareScreen") },
  { path: "/fence/new", screen: NewFence },
  { path: "/fence/:id", screen: FenceScreen },
  { path: "/outing/:id/traces", screen: later("OutingTraces") },
  { path: "/trace/:id", screen: later("TraceScreen") },
  { path: "/watch", screen: WatchScreen },
  { path: "/watch/canter/:id", screen: CanterScreen },
  { path: "/tracks", screen: later("Tracks") },
  { path: "/tracks/new", screen: later("NewTrack") },
  { path: "/tracks/:id", screen: later("TrackScreen") },
  { path: "/tracks/:id/edit", screen: later("EditTrack") },
  { path: "/calibration/new", screen: later("NewCalibration") },
  { path: "/calibration/:id", screen: later("EditCalibration") },
  { path: "/results", screen: later("Results") },
  { path: "/results/new/:kind", screen: later("NewResult") },
  { path: "/results/:kind/:id", screen: later("EditResult") },
  { path: "/course", screen: later("CourseScreen") },
  { path: "/conditioning", screen: later("ConditioningScreen") },
  { path: "/conditioning/memory", screen: later("MemoryScreen") },
  { path: "/conditioning/set/:id", screen: later("SetScreen") },
  { path: "/patterns/:horseId", screen: later("PatternsScreen") },
];
