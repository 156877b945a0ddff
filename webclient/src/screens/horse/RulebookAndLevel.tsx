import type { Rulebook } from "../../pace/levels.ts";
import { RulebookOptions } from "../../parts/RulebookOptions.tsx";
import { useRulebooks } from "../../store/book.ts";
import { t } from "../../words/index.ts";

interface Props {
  rulebook_id: string | null;
  level_id: string | null;
  onChoose: (rulebook_id: string | null, level_id: string | null) => void;
}

/** Under which rules the pair competes, and the level it competes at now. */
export function RulebookAndLevel({ rulebook_id, level_id, onChoose }: Props) {
  const books = useRulebooks() as Rulebook[] | undefined;
  const book = books?.find((each) => each.id === rulebook_id);
  return (
    <>
      <label class="text-box">
        <span class="text-box__label">{t("horse.rulebook")}</span>
        <select value={rulebook_id ?? ""} onChange={(event) => onChoose(event.currentTarget.value || null, null)}>
          <option value="">{t("horse.not_chosen")}</option>
          <RulebookOptions books={books ?? []} />
          {rulebook_id && !book && <option value={rulebook_id}>{rulebook_id}</option>}
        </select>
        <span class="text-box__hint">{books?.length === 0 ? t("horse.no_rulebooks") : t("horse.rulebook_hint")}</span>
      </label>
      {book && (
        <label class="text-box">
          <span class="text-box__label">{t("horse.level")}</span>
          <select value={level_id ?? ""} onChange={(event) => onChoose(book.id, event.currentTarget.value || null)}>
            <option value="">{t("horse.not_chosen")}</option>
            {book.levels.map(({ id, name }) => <option value={id} key={id}>{name}</option>)}
          </select>
        </label>
      )}
    </>
  );
}
