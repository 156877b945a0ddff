// The German texts, gathered as british.ts gathers the British ones: to add a file, add its two lines below.
// They are not part of what every phone keeps; kept.ts says how they reach one that wants them.

import attempt from "./de/attempt.json" with { type: "json" };
import bar from "./de/bar.json" with { type: "json" };
import board from "./de/board.json" with { type: "json" };
import body from "./de/body.json" with { type: "json" };
import calibration from "./de/calibration.json" with { type: "json" };
import conditioning from "./de/conditioning.json" with { type: "json" };
import course from "./de/course.json" with { type: "json" };
import emergency from "./de/emergency.json" with { type: "json" };
import fence from "./de/fence.json" with { type: "json" };
import field from "./de/field.json" with { type: "json" };
import finding from "./de/finding.json" with { type: "json" };
import fit from "./de/fit.json" with { type: "json" };
import frame from "./de/frame.json" with { type: "json" };
import gpx from "./de/gpx.json" with { type: "json" };
import help from "./de/help.json" with { type: "json" };
import horse from "./de/horse.json" with { type: "json" };
import importing from "./de/import.json" with { type: "json" };
import level from "./de/level.json" with { type: "json" };
import local from "./de/local.json" with { type: "json" };
import location from "./de/location.json" with { type: "json" };
import media from "./de/media.json" with { type: "json" };
import needs from "./de/needs.json" with { type: "json" };
import note from "./de/note.json" with { type: "json" };
import outing from "./de/outing.json" with { type: "json" };
import pace from "./de/pace.json" with { type: "json" };
import pattern from "./de/pattern.json" with { type: "json" };
import people from "./de/people.json" with { type: "json" };
import phone from "./de/phone.json" with { type: "json" };
import result from "./de/result.json" with { type: "json" };
import roster from "./de/roster.json" with { type: "json" };
import settings from "./de/settings.json" with { type: "json" };
import sign from "./de/sign.json" with { type: "json" };
import sourced from "./de/sourced.json" with { type: "json" };
import store from "./de/store.json" with { type: "json" };
import sync from "./de/sync.json" with { type: "json" };
import term from "./de/term.json" with { type: "json" };
import timeline from "./de/timeline.json" with { type: "json" };
import told from "./de/told.json" with { type: "json" };
import today from "./de/today.json" with { type: "json" };
import track from "./de/track.json" with { type: "json" };
import watch from "./de/watch.json" with { type: "json" };
import whatif from "./de/whatif.json" with { type: "json" };
import type { Key } from "./british.ts";
import type { Words } from "./speak.ts";

export const german: { readonly [K in Key]?: Words } = {
  ...attempt, ...bar, ...board, ...body, ...calibration, ...conditioning, ...course, ...emergency, ...fence, ...field, ...finding,
  ...fit, ...frame, ...gpx, ...help, ...horse, ...importing, ...level, ...local, ...location, ...media, ...needs, ...note, ...outing,
  ...pace, ...pattern, ...people, ...phone, ...result, ...roster, ...settings, ...sign, ...sourced, ...store, ...sync, ...term, ...timeline,
  ...today, ...told, ...track, ...watch, ...whatif,
}; // prettier-ignore
