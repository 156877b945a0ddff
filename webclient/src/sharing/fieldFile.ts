// A field as a file or as what a code opens: the field, its fences, its measured tracks, and no word of who rode
// there. The same form as server/fieldtally/book/bodies/shared_field.py; docs/protocol.md describes it.

import { type Fence, type Field, KINDS, PROFILES, type Track } from "../entries/bodies.ts";
import type { Plain } from "../entries/merge.ts";
import { current, readable } from "../entries/upcast.ts";
import { NO_POSITION } from "../recording/position.ts";

export type PartKind = "field" | "fence" | "track";

export interface Part {
  kind: PartKind;
  kind_version: number;
  record_id: string;
  body: Plain;
}

export interface SharedField {
  fieldtally_field: 1;
  made_at: string;
  parts: Part[];
}

interface Kept<Body> {
  record_id: string;
  body: Body;
}

/** What whoever shares agrees to: where things are, and what was noted of them. */
export interface Along {
  positions: boolean;
  notes: boolean;
}

export function writeField(field: Kept<Field>, fences: Kept<Fence>[], tracks: Kept<Track>[], { positions, notes }: Along, made_at: string): SharedField {
  const part = (kind: PartKind, { record_id, body }: Kept<object>, without: object): Part => ({
    kind, kind_version: KINDS[kind].version, record_id, body: { ...body, ...(!notes && { notes: null }), ...without },
  });
  return {
    fieldtally_field: 1, made_at, parts: [
      part("field", field, {}),
      ...fences.map((fence) => part("fence", fence, { favourite: false, ...(!positions && NO_POSITION) })),
      // a calibration stays in its logbook; the distance it gave goes along, with its uncertainty
      ...tracks.map((track) => part("track", track, { calibration_id: null, reading_m: null })),
    ],
  };
}

export const nameOf = ({ parts }: SharedField): string => String(parts.find(({ kind }) => kind === "field")!.body.name);

/** not_field: something else. cut: one of ours, but not all of it. newer: by a newer Fieldtally. */
export type FieldTrouble = "not_field" | "cut" | "newer";

const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

export function readField(text: string): SharedField | FieldTrouble {
  try {
    return opened(JSON.parse(text) as SharedField);
  } catch {
    return text.includes('"fieldtally_field"') ? "cut" : "not_field";
  }
}

function opened(read: SharedField): SharedField | FieldTrouble {
  if (!read?.fieldtally_field) return "not_field";
  const parts = read.parts;
  if (read.fieldtally_field !== 1 || parts.some(({ kind, kind_version }) => Object.hasOwn(SOUND, kind) && !readable(kind, kind_version))) return "newer";
  const heads = parts.filter(({ kind }) => kind === "field");
  const sound = parts.every((part) => SOUND[part.kind]?.(part.body) && ID.test(part.record_id) && (part.kind === "field" || part.body.field_id === heads[0]?.record_id));
  if (!sound || heads.length !== 1 || Number.isNaN(Date.parse(read.made_at))) return "cut";
  return { ...read, parts: parts.map((part) => ({ ...part, body: current(part.kind, part.kind_version, part.body) })) };
}

// enough to draw and list it; the server checks every limit
const SOUND: Record<PartKind, (body: Plain) => boolean> = {
  field: ({ name }) => typeof name === "string" && name.trim() !== "",
  fence: ({ label, profile, elements = [] }) => typeof label === "string" && [{ profile }, ...(elements as Plain[])].every((each) => PROFILES.includes(each.profile as never)),
  track: ({ name, distance_m }) => typeof name === "string" && typeof distance_m === "number",
};
