import { useState } from "preact/hooks";

import { keepMedia, type MediaKind } from "../../media/keep.ts";
import { type Recorded, recordsIn } from "../../media/recorder.ts";
import { shrink } from "../../media/shrink.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { toast } from "../../parts/toast.ts";
import { NotSaved, takeBack } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { Recorder } from "./Recorder.tsx";

/** The camera, a picture from the phone, the microphone. What is added is kept before it is said to be. */
export function AddMedia({ about_id, big }: { about_id: string; big: boolean }) {
  const [busy, setBusy] = useState(false);
  const [recording, setRecording] = useState(false);
  const type = recordsIn();
  const Push = big ? BigButton : Button;
  const add = async (file: File) => {
    setBusy(true);
    const drawn = await shrink(file).catch(() => null);
    if (drawn) await keep("photo", { about_id, media_type: "image/jpeg", width_px: drawn.width_px, height_px: drawn.height_px }, drawn.bytes);
    else toast(t("media.no_picture"));
    setBusy(false);
  };
  const said = async (found: Recorded | null) => {
    setRecording(false);
    if (found) await keep("voice_note", { about_id, media_type: found.media_type, duration_ms: found.duration_ms }, found.bytes);
  };
  if (recording) return <Recorder type={type!} done={said} />;
  return (
    <>
      <div class={big ? "controls" : "buttons"}>
        <PictureButton words={busy ? t("media.busy") : t("media.take")} capture onFile={add} big={big} />
        <PictureButton words={t("media.choose")} onFile={add} big={big} />
        {type && <Push onClick={() => setRecording(true)}>{t("media.voice")}</Push>}
      </div>
      {!type && big && <p class="quiet">{t("media.no_recorder")}</p>}
    </>
  );
}

interface PictureProps {
  words: string;
  onFile: (file: File) => void;
  capture?: boolean;
  big: boolean;
}

/** The browser's own file button, in our clothes. */
function PictureButton({ words, onFile, capture, big }: PictureProps) {
  const taken = ({ currentTarget: input }: { currentTarget: HTMLInputElement }) => {
    if (input.files?.[0]) onFile(input.files[0]);
    input.value = ""; // the same picture may be chosen again
  };
  return (
    <label class={`picture-button ${big ? "big-button" : "button"}`}>
      {words}
      <input class="chip__input" type="file" accept="image/*" {...(capture && { capture: "environment" })} onChange={taken} />
    </label>
  );
}

async function keep<K extends MediaKind>(kind: K, body: Parameters<typeof keepMedia<K>>[1], bytes: ArrayBuffer): Promise<void> {
  try {
    const record_id = await keepMedia(kind, body, bytes);
    toast(t("media.kept"), () => takeBack(record_id));
  } catch (error) {
    toast(t(error instanceof NotSaved && error.trouble === "full" ? "media.full" : "media.other"));
  }
}
