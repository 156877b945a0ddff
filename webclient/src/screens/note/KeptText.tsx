import { useEffect, useRef } from "preact/hooks";

import { TextBox } from "../../parts/TextBox.tsx";
import { useDraft } from "../../store/book.ts";

interface Props {
  draftKey: string;
  /** What the record says. */
  said: string | null;
  /** Says whether it is on the disk. */
  keep: (text: string | null) => Promise<boolean>;
  label: string;
  hint: string;
  most: number;
  lines?: number;
}

/** Text that needs no saving: half typed it is a draft, left it is an entry, also when left with the screen or the app.
 * The draft goes once the record says the same and nobody is typing: even a space typed meanwhile stays. */
export function KeptText({ draftKey, said, keep, ...box }: Props) {
  const [text, setText, clear, flush] = useDraft(draftKey, said ?? "");
  const typed = text.trim() || null;
  const keeping = useRef<string | null | undefined>(undefined); // on its way, or there and not yet drawn
  const gone = useRef(false);
  const place = useRef<HTMLDivElement>(null);
  const settle = () => typed === said && !place.current?.contains(document.activeElement) && clear();
  const finish = useRef(async (): Promise<void> => undefined);
  finish.current = async () => {
    if (typed === (keeping.current === undefined ? said : keeping.current)) return void settle();
    keeping.current = typed;
    flush(); // a page killed right after must not find an older draft in front of what was kept
    const kept = await keep(typed);
    if (!kept) keeping.current = undefined;
    else if (gone.current) clear();
  };
  useEffect(() => {
    if (keeping.current === said) settle();
    keeping.current = undefined;
  }, [said]);
  useEffect(() => {
    const hidden = () => document.visibilityState === "hidden" && void finish.current();
    document.addEventListener("visibilitychange", hidden);
    return () => {
      gone.current = true;
      document.removeEventListener("visibilitychange", hidden);
      void finish.current();
    };
  }, []);
  return (
    <div ref={place} onFocusOut={() => void finish.current()}>
      <TextBox value={text} onInput={setText} {...box} />
    </div>
  );
}
