import { useState } from "preact/hooks";

import type { GpxRead } from "../../gpx/read.ts";
import { rounded } from "../../pace/phrases.ts";
import { showDistance } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { GpxInput, Notes } from "./GpxInput.tsx";

/** The length of a course from a file that somebody drew or rode. */
export function LengthFromFile({ onLength }: { onLength: (length_m: number) => void }) {
  const [read, setRead] = useState<GpxRead | null>(null);
  const take = (found: GpxRead | null): void => {
    setRead(found);
    if (found) onLength(rounded(found.length_m));
  };
  return (
    <details class="more">
      <summary class="more__summary">{t("gpx.length")}</summary>
      <GpxInput label={t("gpx.file")} onRead={take} />
      {read && <p role="status">{t("gpx.length_taken", { length: showDistance(rounded(read.length_m)), n: read.count })}</p>}
      {read && <Notes left={read.left} />}
    </details>
  );
}
