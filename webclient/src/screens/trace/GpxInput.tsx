import { useState } from "preact/hooks";

import { type GpxRead, type Left, readGpxFile } from "../../gpx/read.ts";
import { NotRead } from "../../gpx/tokens.ts";
import { Notice } from "../../parts/Notice.tsx";
import { t } from "../../words/index.ts";

/** Chooses a GPX file and reads it on the phone; what cannot be read says why. Nothing is kept here. */
export function GpxInput({ label, onRead }: { label: string; onRead: (read: GpxRead | null) => void }) {
  const [state, setState] = useState<"reading" | NotRead | null>(null);
  const choose = async (file: File | undefined): Promise<void> => {
    onRead(null);
    if (!file) return;
    setState("reading");
    try {
      onRead(await readGpxFile(file));
      setState(null);
    } catch (error) {
      setState(error instanceof NotRead ? error : new NotRead("broken"));
    }
  };
  return (
    <>
      <label class="text-box">
        <span class="text-box__label">{label}</span>
        <input class="text-box__input" type="file" onChange={(event) => void choose(event.currentTarget.files?.[0])} />
      </label>
      {state === "reading" && <p class="quiet" role="status">{t("gpx.reading")}</p>}
      {state instanceof NotRead && <Notice tone="attention" urgent><p>{t(`gpx.${state.reason}`)}</p></Notice>}
    </>
  );
}

/** What was left out of a file, in words. */
export function Notes({ left }: { left: Left[] }) {
  return left.length > 0 ? <ul>{left.map(({ what, n }) => <li key={what}>{t(`gpx.note_${what}`, { n })}</li>)}</ul> : null;
}
