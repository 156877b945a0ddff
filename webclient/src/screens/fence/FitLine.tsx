import { newestLast } from "../../levels/correction.ts";
import { type Rulebook, withCorrections } from "../../pace/levels.ts";
import { bodyOf, type FenceForm, NO_REST } from "../../recording/fenceForm.ts";
import { type SavedRecord, useRecords, useRulebooks } from "../../store/book.ts";
import { fenceCautions } from "../../trade/cautions.ts";
import { type Check, type FenceParts, type Fit, fit } from "../../trade/fit.ts";
import { say, t } from "../../words/index.ts";
import { checkWords, headline, laterWords, levelWords, whyNotLower } from "./fitWords.ts";

interface Props {
  fence: FenceParts;
  /** Whose rulebook counts; every horse's of the logbook where none is given. */
  horse?: SavedRecord<"horse"> | undefined;
}

/** Live, while it is being built: the lowest level that admits the fence, what decides it, and the room to each
 * limit. */
export function FitLine({ fence, horse }: Props) {
  const horses = useRecords("horse");
  const corrections = useRecords("rulebook_value");
  const ids = [...new Set((horse ? [horse] : horses ?? []).flatMap(({ body }) => body.rulebook_id ?? []))];
  const books = useRulebooks(ids) as Rulebook[] | undefined;
  if (!horses || !books || !corrections) return null;
  const bodies = newestLast(corrections);
  return (
    <section class="card" aria-label={t("fit.title")}>
      {ids.length === 0 && <p class="quiet">{t("fit.no_rulebook")}</p>}
      {books.length < ids.length && <p class="quiet">{t("level.none")}</p>}
      {books.map((book) => <OneFit found={fit(fence, withCorrections(book, bodies))} title={ids.length > 1 ? book.title : null} key={book.id} />)}
      {books.length > 0 && <p class="quiet">{t("fit.check")}</p>}
      <Cautions fence={fence} />
    </section>
  );
}

/** The same for the form on the screen, as soon as it says how everything is built. */
export function FormFit({ form }: { form: FenceForm }) {
  const parts = form.elements.length > 0 ? form.elements : [form];
  return parts.every(({ profile }) => profile) ? <FitLine fence={bodyOf(form, NO_REST)} /> : null;
}

function OneFit({ found, title }: { found: Fit; title: string | null }) {
  const { lowest_possible: shown, lowest_admitting: certain } = found;
  const why = whyNotLower(found);
  const later = shown && laterWords(shown);
  return (
    <>
      {title && <h2>{title}</h2>}
      <p role="status"><strong>{headline(found)}</strong></p>
      {shown && <ul class="points">{shown.checks.map((check) => <li key={check.part + check.limit}>{checkWords(check)}<Sure check={check} /></li>)}</ul>}
      {why && <p>{why.words}<Sure check={why.check} /></p>}
      {shown && certain && certain !== shown && <p>{t("fit.certain", { level: certain.level.name })}</p>}
      {later && <p>{later}</p>}
      <details>
        <summary class="more__summary">{t("fit.every_level")}</summary>
        <dl class="facts">{found.levels.map((each) => <><dt>{each.level.name}</dt><dd>{levelWords(each)}</dd></>)}</dl>
      </details>
    </>
  );
}

/** How sure the limit is. */
function Sure({ check: { grade } }: { check: Check }) {
  return grade ? <span class="quiet"> ({say({ key: `level.grade_${grade}` })})</span> : null;
}

function Cautions({ fence }: { fence: FenceParts }) {
  const codes = fenceCautions(fence);
  if (codes.length === 0) return null;
  return (
    <>
      {codes.map((code) => <p key={code}>{t(`fit.caution_${code}`)}</p>)}
      <p class="quiet">{t("fit.study")}</p>
    </>
  );
}
