import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

import { Icon } from "./Icon.tsx";
import { goBack } from "./goBack.ts";
import { t } from "../words/index.ts";

interface Props {
  title: string;
  /** Where “back” leads when there is no earlier screen; leave out on the five main screens. */
  back?: string;
  /** Buttons beside the title. */
  actions?: ComponentChildren;
  /** Recording: the controls get the lower half and the main navigation steps aside. */
  recording?: boolean;
  /** Uses the whole width of a desk. */
  wide?: boolean;
  children: ComponentChildren;
}

/** The frame of every screen: its title, the way back, its content. */
export function Screen({ title, back, actions, recording, wide, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · ${t("frame.title")}`;
  }, [title]);
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  return (
    <main id="content" class={`screen${recording ? " screen--recording" : ""}${wide ? " screen--wide" : ""}`}>
      <header class="screen__head">
        {back !== undefined && (
          <button type="button" class="icon-button" aria-label={t("frame.back")} onClick={() => goBack(back)}>
            <Icon name="back" />
          </button>
        )}
        <h1 class="screen__title" tabIndex={-1} ref={heading}>{title}</h1>
        {actions && <div class="screen__actions">{actions}</div>}
      </header>
      {children}
    </main>
  );
}
