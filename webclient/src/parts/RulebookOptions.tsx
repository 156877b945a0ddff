import { inOrder } from "../levels/rows.ts";
import type { Rulebook } from "../pace/levels.ts";
import { t } from "../words/index.ts";

/** The rulebooks to choose from: those in force by title, then the older editions by themselves. */
export function RulebookOptions({ books }: { books: readonly Rulebook[] }) {
  const options = (some: readonly Rulebook[]) => some.map(({ id, title, edition }) => <option value={id} key={id}>{title}: {edition}</option>);
  const { current, older } = inOrder(books);
  return <>{options(current)}{older.length > 0 && <optgroup label={t("level.older_editions")}>{options(older)}</optgroup>}</>;
}
