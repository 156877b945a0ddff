import type { ComponentChildren } from "preact";
import { Link } from "wouter-preact";

import { Icon } from "./Icon.tsx";

interface RowProps {
  href: string;
  title: ComponentChildren;
  detail?: ComponentChildren;
  /** At the right: a count, a mark. */
  end?: ComponentChildren;
}

/** One line of a list that leads somewhere. */
export function Row({ href, title, detail, end }: RowProps) {
  return (
    <li class="row">
      <Link class="row__link" href={href}>
        <span class="row__words">
          <span class="row__title">{title}</span>
          {detail && <span class="row__detail">{detail}</span>}
        </span>
        {end && <span class="row__end">{end}</span>}
        <Icon name="forward" />
      </Link>
    </li>
  );
}

/** A list of rows, or `empty` in words when there are none. */
export function Rows({ children, empty }: { children: ComponentChildren[]; empty?: string }) {
  if (!children.length) return empty ? <p class="empty">{empty}</p> : null;
  return <ul class="rows">{children}</ul>;
}

/** A titled part of a screen. */
export function Section({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section class="section">
      <h2 class="section__title">{title}</h2>
      {children}
    </section>
  );
}
