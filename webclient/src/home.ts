// The screens of the third script, by name: what people do at home, at a desk or once a week. They work with no
// signal like all others, but no phone waits for them before it is ready for the field (docs/decisions/0010).

export { BarScreen } from "./screens/bar/BarScreen.tsx";
export { CourseScreen } from "./screens/course/CourseScreen.tsx";
export { ImportScreen } from "./screens/import/ImportScreen.tsx";
export { KeepScreen } from "./screens/keep/KeepScreen.tsx";
export { Levels } from "./screens/levels/Levels.tsx";
export { PatternsScreen } from "./screens/patterns/PatternsScreen.tsx";
export { AccountScreen } from "./screens/people/AccountScreen.tsx";
export { InvitedScreen } from "./screens/people/InvitedScreen.tsx";
export { PeopleScreen } from "./screens/people/PeopleScreen.tsx";
export { PhoneScreen } from "./screens/phone/PhoneScreen.tsx";
export { EditResult, NewResult } from "./screens/results/ResultScreen.tsx";
export { Results } from "./screens/results/Results.tsx";
export { Roster } from "./screens/roster/Roster.tsx";
export { OutingTraces } from "./screens/trace/OutingTraces.tsx";
export { TraceScreen } from "./screens/trace/TraceScreen.tsx";
export { LocalWaits } from "./screens/today/LocalWaits.tsx";
export { Timeline } from "./screens/timeline/Timeline.tsx";
export { WhatIfScreen } from "./screens/what-if/WhatIfScreen.tsx";
export { MemoryScreen } from "./screens/conditioning/MemoryScreen.tsx";
export { BringScreen } from "./screens/fields/BringScreen.tsx";
export { ShareScreen } from "./screens/fields/ShareScreen.tsx";
export { PhotoScreen } from "./screens/media/PhotoScreen.tsx";
export { EditCalibration, NewCalibration } from "./screens/tracks/CalibrationScreen.tsx";

// Names the other scripts as shared, so that the build makes no more of them.
import "./later.ts";
