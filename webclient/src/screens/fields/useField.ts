import { inRidingOrder } from "../../recording/fenceList.ts";
import { type SavedRecord, useRecord, useRecords, useWhetherHere } from "../../store/book.ts";

export interface FieldView {
  field: SavedRecord<"field">;
  /** In riding order. */
  fences: SavedRecord<"fence">[];
}

export function useField(id: string): FieldView | "loading" | "missing" {
  const whether = useWhetherHere("field", id);
  const field = useRecord("field", id);
  const fences = useRecords("fence", { field_id: id });
  if (whether === "missing") return "missing";
  return field && fences ? { field, fences: inRidingOrder(fences) } : "loading";
}
