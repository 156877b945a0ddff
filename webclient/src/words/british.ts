// Every text a person reads, gathered when the client is built: the build writes one file a language, so that
// the script itself carries no texts. One file per part of the app, each key starting with the file's name;
// to add a file, add its two lines below. en-US.json holds only what differs.

import attempt from "./en-GB/attempt.json" with { type: "json" };
import bar from "./en-GB/bar.json" with { type: "json" };
import board from "./en-GB/board.json" with { type: "json" };
import body from "./en-GB/body.json" with { type: "json" };
import calibration from "./en-GB/calibration.json" with { type: "json" };
import conditioning from "./en-GB/conditioning.json" with { type: "json" };
import course from "./en-GB/course.json" with { type: "json" };
import emergency from "./en-GB/emergency.json" with { type: "json" };
import fence from "./en-GB/fence.json" with { type: "json" };
import field from "./en-GB/field.json" with { type: "json" };
import finding from "./en-GB/finding.json" with { type: "json" };
import fit from "./en-GB/fit.json" with { type: "json" };
import frame from "./en-GB/frame.json" with { type: "json" };
import gpx from "./en-GB/gpx.json" with { type: "json" };
import help from "./en-GB/help.json" with { type: "json" };
import horse from "./en-GB/horse.json" with { type: "json" };
import importing from "./en-GB/import.json" with { type: "json" };
import level from "./en-GB/level.json" with { type: "json" };
import local from "./en-GB/local.json" with { type: "json" };
import location from "./en-GB/location.json" with { type: "json" };
import media from "./en-GB/media.json" with { type: "json" };
import needs from "./en-GB/needs.json" with { type: "json" };
import note from "./en-GB/note.json" with { type: "json" };
import outing from "./en-GB/outing.json" with { type: "json" };
import pace from "./en-GB/pace.json" with { type: "json" };
import pattern from "./en-GB/pattern.json" with { type: "json" };
import people from "./en-GB/people.json" with { type: "json" };
import phone from "./en-GB/phone.json" with { type: "json" };
import result from "./en-GB/result.json" with { type: "json" };
import roster from "./en-GB/roster.json" with { type: "json" };
import settings from "./en-GB/settings.json" with { type: "json" };
import sign from "./en-GB/sign.json" with { type: "json" };
import store from "./en-GB/store.json" with { type: "json" };
import sync from "./en-GB/sync.json" with { type: "json" };
import term from "./en-GB/term.json" with { type: "json" };
import timeline from "./en-GB/timeline.json" with { type: "json" };
import today from "./en-GB/today.json" with { type: "json" };
import track from "./en-GB/track.json" with { type: "json" };
import watch from "./en-GB/watch.json" with { type: "json" };
import whatif from "./en-GB/whatif.json" with { type: "json" };
import american from "./en-US.json" with { type: "json" };

export const british = {
  ...attempt, ...bar, ...board, ...body, ...calibration, ...conditioning, ...course, ...emergency, ...fence, ...field, ...finding, ...fit, ...frame, ...gpx, ...help, ...horse, ...importing, ...level, ...local, ...location, ...media, ...needs, ...note, ...outing, ...pace, ...pattern, ...phone,
  ...people, ...result, ...roster, ...settings, ...sign, ...store, ...sync, ...term, ...timeline, ...today, ...track,
  ...watch, ...whatif,
}; // prettier-ignore

export { american };

export type Key = keyof typeof british;
