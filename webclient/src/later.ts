// The screens of the second script, by name: all that is not needed to record in the field within the first
// second. routes.ts names them through parts/later.tsx, which says why this is not a trap at an update.

export { ConditioningScreen } from "./screens/conditioning/ConditioningScreen.tsx";
export { SetScreen } from "./screens/conditioning/SetScreen.tsx";
export { EmergencyScreen } from "./screens/emergency/EmergencyScreen.tsx";
export { SketchScreen } from "./screens/fields/SketchScreen.tsx";
export { WalkScreen } from "./screens/fields/WalkScreen.tsx";
export { Help } from "./screens/help/Help.tsx";
export { MediaAbout } from "./screens/media/MediaAbout.tsx";
export { NeedsYou } from "./screens/needs-you/NeedsYou.tsx";
export { PlanScreen } from "./screens/plan/PlanScreen.tsx";
export { Settings } from "./screens/settings/Settings.tsx";
export { EditTrack, NewTrack, TrackScreen } from "./screens/tracks/TrackScreen.tsx";
export { Tracks } from "./screens/tracks/Tracks.tsx";

// Names the first script as shared, so that the build makes two scripts and not three.
import "./app.tsx";
