// A test's marks as one line of text: "6 6.5 7x2". The keypad writes the same line that can be typed, so
// there is one thing to keep, to draft and to mend.

import type { Mark } from "../../entries/bodies.ts";

export interface MarkSheet {
  marks: Mark[];
  /** Pieces of the line that are no mark, as typed. */
  unread: string[];
}

const PIECE = /^(10|\d)(?:[.,](\d))?(?:[x×*](\d))?$/i;

function toMark(piece: string, place: number): Mark | null {
  const [, whole, tenth, times] = PIECE.exec(piece) ?? [];
  if (whole === undefined) return null;
  const mark = Number(whole) + Number(tenth ?? 0) / 10;
  const coefficient = Number(times ?? 1);
  if (mark > 10 || coefficient < 1 || coefficient > 5) return null;
  return { movement: String(place), mark, coefficient };
}

function pieces(line: string): string[] {
  return line.split(/[\s;]+|,(?=\s|$)/).filter((piece) => piece !== "");
}

export function readMarks(line: string): MarkSheet {
  const sheet: MarkSheet = { marks: [], unread: [] };
  for (const piece of pieces(line)) {
    const mark = toMark(piece, sheet.marks.length + 1);
    if (mark === null) sheet.unread.push(piece);
    else sheet.marks.push(mark);
  }
  return sheet;
}

export function writeMarks(marks: Mark[]): string {
  return marks.map(({ mark, coefficient }) => (coefficient === 1 ? String(mark) : `${mark}x${coefficient}`)).join(" ");
}

/** The keypad: a whole mark, half a mark more (or no longer), double (or no longer), the last one away. */
export type PadKey = { whole: number } | "half" | "double" | "back";

function changed(last: Mark, key: "half" | "double"): Mark {
  if (key === "double") return { ...last, coefficient: last.coefficient === 2 ? 1 : 2 };
  const whole = Math.floor(last.mark);
  return { ...last, mark: last.mark === whole && whole < 10 ? whole + 0.5 : whole };
}

/** The line after a key; what could not be read stays in front, for the eye to find. */
export function press(line: string, key: PadKey): string {
  const { marks, unread } = readMarks(line);
  const last = marks.at(-1);
  const next =
    typeof key === "object"
      ? [...marks, { movement: "", mark: key.whole, coefficient: 1 }]
      : last === undefined ? marks : [...marks.slice(0, -1), ...(key === "back" ? [] : [changed(last, key)])];
  return [...unread, writeMarks(next)].filter((part) => part !== "").join(" ");
}
