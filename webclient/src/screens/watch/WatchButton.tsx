import type { ComponentChildren } from "preact";
import { useMemo, useRef } from "preact/hooks";

import { Key } from "./Key.tsx";
import { pressing } from "./press.ts";

interface Props {
  tone: "go" | "stop" | "split";
  children: ComponentChildren;
  detail?: string;
  /** The key that does the same, as it is written on keyboards. */
  keys?: string;
  onPress: (timeStamp: number) => void;
}

/** A giant button whose press is stamped when the finger comes down. */
export function WatchButton({ tone, children, detail, keys, onPress }: Props) {
  const newest = useRef(onPress);
  newest.current = onPress;
  const press = useMemo(() => pressing((timeStamp) => newest.current(timeStamp)), []);
  return (
    <button
      type="button" data-watch class={`watch-button watch-button--${tone}`}
      onPointerDown={press.down} onPointerUp={press.up} onPointerCancel={press.cancel} onClick={press.click}
    >
      <span class="watch-button__words">{children}</span>
      {detail !== undefined && <span class="watch-button__detail">{detail}</span>}
      {keys && <Key of={keys} />}
    </button>
  );
}
