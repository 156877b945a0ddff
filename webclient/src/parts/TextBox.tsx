import { useId } from "preact/hooks";

interface Props {
  label: string;
  value: string;
  onInput: (text: string) => void;
  /** A short sentence under the box. */
  hint?: string | undefined;
  /** What is wrong with the text, in words; null or absent when nothing is. */
  trouble?: string | null | undefined;
  lines?: number;
  type?: "text" | "password" | "date" | "search";
  inputMode?: "text" | "decimal" | "numeric";
  autoComplete?: string;
  most?: number;
  required?: boolean;
  autoCapitalize?: "none" | "sentences" | "words";
  enterKeyHint?: "done" | "next" | "go" | "search" | "send";
  list?: readonly string[];
}

/** One or more lines of text with its label, its hint and its trouble. */
export function TextBox({ label, value, onInput, hint, trouble, lines, list, most, type = "text", ...rest }: Props) {
  const id = useId();
  const about = [hint && `${id}-hint`, trouble && `${id}-trouble`].filter(Boolean).join(" ") || undefined;
  const common = {
    id, value, maxLength: most, class: "text-box__input", "aria-describedby": about, "aria-invalid": trouble ? true : undefined,
    onInput: (event: { currentTarget: { value: string } }) => onInput(event.currentTarget.value),
  };
  return (
    <div class="text-box">
      <label class="text-box__label" for={id}>{label}</label>
      {lines ? <textarea rows={lines} {...common} {...rest} /> : <input type={type} list={list && `${id}-list`} {...common} {...rest} />}
      {list && <datalist id={`${id}-list`}>{list.map((each) => <option value={each} key={each} />)}</datalist>}
      {hint && <p class="text-box__hint" id={`${id}-hint`}>{hint}</p>}
      {trouble && <p class="text-box__trouble" id={`${id}-trouble`}>{trouble}</p>}
    </div>
  );
}
