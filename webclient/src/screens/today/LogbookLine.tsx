import { chooseLogbook, logbooks } from "../../account/session.ts";
import { logbookId } from "../../store/place.ts";
import { inside, t } from "../../words/index.ts";

/** Whose logbook this is, where a person has more than one or reads somebody else's. */
export function LogbookLine() {
  const books = logbooks.value;
  const current = books.find((book) => book.id === logbookId.value);
  if (!current || (books.length === 1 && current.role === "rider")) return null;
  if (books.length === 1) return <p class="quiet">{t("today.whose", { title: current.title, role: inside(t(`role.${current.role}`)) })}</p>;
  return (
    <label class="text-box">
      <span class="text-box__label">{t("today.logbook")}</span>
      <select value={current.id} onChange={(event) => chooseLogbook(event.currentTarget.value)}>
        {books.map((book) => <option value={book.id} key={book.id}>{book.title} ({inside(t(`role.${book.role}`))})</option>)}
      </select>
    </label>
  );
}
