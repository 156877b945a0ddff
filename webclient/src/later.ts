// The screens of the second script, by name: all that is not needed to record in the field within the first
// second. routes.ts names them through parts/later.tsx, which says why this is not a trap at an update.

export { BarScreen } from "./screens/bar/BarScreen.tsx";
export { ConditioningScreen } from "./screens/conditioning/ConditioningScreen.tsx";
export { MemoryScreen } from "./screens/conditioning/MemoryScreen.tsx";
export { SetScreen } from "./screens/conditioning/SetScreen.tsx";
export { CourseScreen } from "./screens/course/CourseScreen.tsx";
export { Help } from "./screens/help/Help.tsx";
export { ImportScreen } from "./screens/import/ImportScreen.tsx";
export { KeepScreen } from "./screens/keep/KeepScreen.tsx";
export { Levels } from "./screens/levels/Levels.tsx";
export { NeedsYou } from "./screens/needs-you/NeedsYou.tsx";
export { PatternsScreen } from "./screens/patterns/PatternsScreen.tsx";
export { AccountScreen } from "./screens/people/AccountScreen.tsx";
export { InvitedScreen } from "./screens/people/InvitedScreen.tsx";
export { PeopleScreen } from "./screens/people/PeopleScreen.tsx";
export { PlanScreen } from "./screens/plan/PlanScreen.tsx";
export { EditResult, NewResult } from "./screens/results/ResultScreen.tsx";
export { Results } from "./screens/results/Results.tsx";
export { Roster } from "./screens/roster/Roster.tsx";
export { Settings } from "./screens/settings/Settings.tsx";
export { OutingTraces } from "./screens/trace/OutingTraces.tsx";
export { TraceScreen } from "./screens/trace/TraceScreen.tsx";
export { Timeline } from "./screens/timeline/Timeline.tsx";
export { EditCalibration, NewCalibration } from "./screens/tracks/CalibrationScreen.tsx";
export { EditTrack, NewTrack, TrackScreen } from "./screens/tracks/TrackScreen.tsx";
export { Tracks } from "./screens/tracks/Tracks.tsx";
export { WhatIfScreen } from "./screens/what-if/WhatIfScreen.tsx";

// Names the first script as shared, so that the build makes two scripts and not three.
import "./app.tsx";
