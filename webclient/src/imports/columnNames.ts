// What the columns of other people's tables are called, in English and German, and what they write in them.
// Not texts of a screen: what a file may say. Compared without case, spaces, signs and a unit at the end.

import { type TableKind } from "../copies/columns.ts";

const ALSO =
  "date=day,datum,tag;horse=pferd;field=venue,feld,gelände,platz,ort;fence=obstacle,jump,hindernis,sprung;profile=hindernisart;element=teil;" +
  "outcome=result,ergebnis;rein=hand;ground=boden;pace=gait,gangart;attitude=verhalten;height_cm=höhe;note=notes,notiz,bemerkung;test=aufgabe,prüfung;" +
  "level_id=class,klasse;percent=percentage,score,prozent;marks=noten;errors=verreiten;judged=gerichtet;efforts=jumps,fences,sprünge,hindernisse;" +
  "knockdowns=rails,abwürfe;refusals=stops,verweigerungen;combinations=kombinationen;rider_fall=reitersturz;horse_fall=pferdesturz;completed=beendet;" +
  "time_penalties=zeitfehler;event=competition,show,turnier;dressage_penalties=dressage,dressur;show_jumping_jump_penalties=showjumping,springen;" +
  "show_jumping_time_penalties=springenzeit;cross_country_jump_penalties=crosscountry,gelände;cross_country_time_penalties=geländezeit;place=platz,rang;starters=starter";

const SAID =
  "clear=ok,fehlerfrei;refusal=stop,refused,verweigerung,verweigert;run_out=vorbeigelaufen;circle=volte;knockdown=rail,down,abwurf;rider_fall=reitersturz;" +
  "horse_fall=pferdesturz;retired=aufgegeben;completed=finished,beendet;eliminated=ausgeschieden;left=links;right=rechts;straight=gerade;canter=galopp;" +
  "trot=trab;true=yes,ja,1,x;false=no,nein,0";

export const plainName = (text: string): string => text.toLowerCase().replace(/[^\p{L}\d]/gu, "").replace(/(cm|id)$/, "");

const tableOf = (text: string) => new Map(text.split(";").map((part) => part.split("=")).map(([word, others]) => [word!, others!.split(",")]));
const COLUMN_NAMES = tableOf(ALSO);
const SAID_NAMES = tableOf(SAID);

/** The column of this heading among `wanted`; undefined where it is none of them. */
export function columnNamed(heading: string, wanted: readonly string[]): string | undefined {
  const name = plainName(heading);
  return wanted.find((column) => plainName(column) === name) ?? wanted.find((column) => COLUMN_NAMES.get(column)?.includes(name));
}

/** Which word of a vocabulary a cell means; `shown` is how the screens say it. */
export function wordMeant(cell: string, words: readonly string[], shown: (word: string) => string): string | undefined {
  const name = plainName(cell);
  return words.find((word) => plainName(word) === name || plainName(shown(word)) === name || SAID_NAMES.get(word)?.includes(name));
}

const NEEDED: [TableKind, string[]][] = [
  ["attempt", ["fence", "outcome"]], ["jumping_round", ["height_cm", "efforts"]], ["event_result", ["event", "level_id", "status"]], ["flatwork_test", ["test"]],
];

/** Which table it is by its headings: the columns each cannot do without, beside the date and the horse. */
export function kindOfTable(headings: readonly string[]): TableKind | null {
  return NEEDED.find(([, needed]) => ["date", "horse", ...needed].every((column) => headings.some((heading) => columnNamed(heading, [column]))))?.[0] ?? null;
}

/** What each table that can be brought in must have. */
export function neededFor(kind: TableKind): string[] {
  return ["date", "horse", ...(NEEDED.find(([one]) => one === kind)?.[1] ?? [])];
}
