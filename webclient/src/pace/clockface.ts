// Times as read at arm's length: 47.3, 1:03.2, 1:02:03.4. Tenths are cut, not rounded, while running and
// after, so that the face never shows a tenth that has not been reached.

import { decimal } from "../words/decimal.ts";

export interface Face {
  whole: string;
  tenths: string;
}

const two = (value: number): string => String(value).padStart(2, "0");

/** The face for a time in ms; a time below zero shows as zero. */
export function face(elapsedMs: number): Face {
  const tenths = Math.floor(Math.max(0, elapsedMs) / 100 + 1e-6);
  const seconds = Math.floor(tenths / 10);
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  const last = hours + minutes > 0 ? two(seconds % 60) : String(seconds % 60);
  const whole = hours > 0 ? `${hours}:${two(minutes)}:${last}` : minutes > 0 ? `${minutes}:${last}` : last;
  return { whole, tenths: String(tenths % 10) };
}

export function faceText(elapsedMs: number): string {
  const { whole, tenths } = face(elapsedMs);
  return decimal(`${whole}.${tenths}`);
}

/** Minutes and seconds for a screen reader's sentence. */
export function spokenParts(elapsedMs: number): { minutes: number; seconds: string } {
  const tenths = Math.floor(Math.max(0, elapsedMs) / 100 + 1e-6);
  return { minutes: Math.floor(tenths / 600), seconds: decimal(((tenths % 600) / 10).toFixed(1)) };
}
