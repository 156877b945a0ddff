import type { ComponentChildren } from "preact";

import { Icon, type IconName } from "./Icon.tsx";

type Tone = "plain" | "attention" | "stop" | "good";

interface Props {
  tone?: Tone;
  title?: string;
  children?: ComponentChildren;
  /** Buttons at the end. */
  actions?: ComponentChildren;
  /** Read out at once by screen readers; for what just happened, not for what stands there anyway. */
  urgent?: boolean;
}

const MARKS: Record<Tone, IconName> = { plain: "info", attention: "attention", stop: "stop", good: "tick" };

/** Something to know: a mark, a word, a sentence, and what can be done. Never colour alone. */
export function Notice({ tone = "plain", title, children, actions, urgent }: Props) {
  return (
    <section class={`notice notice--${tone}`} role={urgent ? "alert" : undefined}>
      <Icon name={MARKS[tone]} />
      <div class="notice__words">
        {title && <h2 class="notice__title">{title}</h2>}
        {children}
        {actions && <div class="notice__actions">{actions}</div>}
      </div>
    </section>
  );
}
