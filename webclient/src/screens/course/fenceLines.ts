// The fences of a course as lines of text: "7AB 840".

import type { FencePlace } from "../../pace/course.ts";

export interface FenceLines {
  fences: FencePlace[];
  /** Lines that are no fence, as typed. */
  unread: string[];
}

const LINE = /^(\S.*?)[\s:,]+(\d{1,5}(?:[.,]\d)?)\s*m?$/;

export function readFenceLines(text: string): FenceLines {
  const read: FenceLines = { fences: [], unread: [] };
  for (const line of text.split("\n").map((one) => one.trim()).filter((one) => one !== "")) {
    const [, label, metres] = LINE.exec(line) ?? [];
    if (label === undefined || metres === undefined) read.unread.push(line);
    else read.fences.push({ label, distance_m: Number(metres.replace(",", ".")) });
  }
  return read;
}
