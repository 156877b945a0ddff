import type { ComponentChildren } from "preact";

interface Props {
  children: ComponentChildren;
  onClick?: (event: MouseEvent) => void;
  /** Fires on touch already, for taps whose moment counts. */
  onPointerDown?: (event: PointerEvent) => void;
  /** plain: paper. main: the one thing to do here. stop: a refusal, a fall, a taking back. */
  tone?: "plain" | "main" | "stop" | "quiet";
  /** A second line, such as a count. */
  detail?: ComponentChildren;
  disabled?: boolean;
  pressed?: boolean;
  label?: string;
  type?: "button" | "submit";
}

/** A control for cold hands and gloves: at least 64 by 64 px. */
export function BigButton({ children, tone = "plain", detail, pressed, label, type = "button", ...rest }: Props) {
  return (
    <button type={type} class={`big-button big-button--${tone}`} aria-pressed={pressed} aria-label={label} {...rest}>
      <span class="big-button__words">{children}</span>
      {detail !== undefined && <span class="big-button__detail">{detail}</span>}
    </button>
  );
}

/** A control for home: at least 44 px high. */
export function Button({ children, tone = "plain", pressed, label, type = "button", detail: _, ...rest }: Props) {
  return (
    <button type={type} class={`button button--${tone}`} aria-pressed={pressed} aria-label={label} {...rest}>
      {children}
    </button>
  );
}
