import "./results.css";

import type { ComponentChildren } from "preact";
import { useLocation, useSearch } from "wouter-preact";

import type { Bodies } from "../../entries/bodies.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { putBack, type SavedRecord, takeBack, useRecord, useRole, useWhetherHere } from "../../store/book.ts";
import { useBusy } from "../../update/busy.ts";
import { t } from "../../words/index.ts";
import { type Drafts, eventBody, flatworkBody, RESULT_KINDS, type ResultKind, roundBody } from "./drafts.ts";
import { EventForm } from "./EventForm.tsx";
import { FlatworkForm, useFlatworkScore } from "./FlatworkForm.tsx";
import { RoundForm } from "./RoundForm.tsx";
import { type ResultForm, useResultForm } from "./useResultForm.ts";

function known(kind: string): kind is ResultKind {
  return (RESULT_KINDS as readonly string[]).includes(kind);
}

/** /results/new/:kind, with ?horse= and ?outing= where they are known. */
export function NewResult({ params: { kind } }: { params: { kind: string } }) {
  const asked = new URLSearchParams(useSearch());
  if (!known(kind)) return <NotHere />;
  return <Entry kind={kind} before={undefined} given={{ horse_id: asked.get("horse"), outing_id: asked.get("outing") }} />;
}

/** /results/:kind/:id */
export function EditResult({ params: { kind, id } }: { params: { kind: string; id: string } }) {
  return known(kind) ? <EditKnown kind={kind} id={id} /> : <NotHere />;
}

function EditKnown({ kind, id }: { kind: ResultKind; id: string }) {
  const whether = useWhetherHere(kind, id);
  const record = useRecord(kind, id);
  if (whether === "missing") return <NotHere />;
  if (!record) return <Screen title={t(`result.edit_${kind}`)} back="/results">{null}</Screen>;
  return <Entry kind={kind} before={record} given={{}} />;
}

interface EntryProps<K extends ResultKind> {
  kind: K;
  before: SavedRecord<K> | undefined;
  given: Partial<Drafts[K]>;
}

function Entry<K extends ResultKind>(props: EntryProps<K>) {
  const role = useRole();
  const { kind, before } = props;
  const title = t(before ? `result.edit_${kind}` : `result.new_${kind}`);
  if (role === "reader") return <Screen title={title} back="/results"><p>{t("result.may_not")}</p></Screen>;
  return (
    <Screen title={title} back="/results" actions={before && <TakeAway record_id={before.record_id} />}>
      {kind === "flatwork_test" && <FlatworkEntry {...(props as unknown as EntryProps<"flatwork_test">)} />}
      {kind === "jumping_round" && <RoundEntry {...(props as unknown as EntryProps<"jumping_round">)} />}
      {kind === "event_result" && <EventEntry {...(props as unknown as EntryProps<"event_result">)} />}
    </Screen>
  );
}

function FlatworkEntry({ before, given }: EntryProps<"flatwork_test">) {
  const form = useResultForm("flatwork_test", before, given);
  const percent = useFlatworkScore(form.draft)?.percent ?? null;
  const kept = percent === null ? null : Math.round(percent * 1000) / 1000;
  return <Shell form={form} body={(draft) => flatworkBody(draft, kept) as Bodies["flatwork_test"]}><FlatworkForm form={form} /></Shell>;
}

function RoundEntry({ before, given }: EntryProps<"jumping_round">) {
  const form = useResultForm("jumping_round", before, given);
  return <Shell form={form} body={(draft) => roundBody(draft)}><RoundForm form={form} /></Shell>;
}

function EventEntry({ before, given }: EntryProps<"event_result">) {
  const form = useResultForm("event_result", before, given);
  return <Shell form={form} body={(draft) => eventBody(draft)}><EventForm form={form} /></Shell>;
}

interface ShellProps<K extends ResultKind> {
  form: ResultForm<K>;
  body: (draft: Drafts[K]) => Bodies[K];
  children: ComponentChildren;
}

function Shell<K extends ResultKind>({ form, body, children }: ShellProps<K>) {
  useBusy();
  const [, navigate] = useLocation();
  const submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const record_id = await form.store(body);
    if (record_id === null) return void document.querySelector("[aria-invalid], .text-box__trouble")?.scrollIntoView({ block: "center" });
    toast(t("result.saved"));
    navigate("/results", { replace: true });
  };
  return (
    <form class="form" noValidate onSubmit={(event) => void submit(event)}>
      {form.recovered && <Notice tone="good" actions={<Button onClick={form.startAfresh}>{t("result.start_afresh")}</Button>}><p>{t("result.recovered")}</p></Notice>}
      {children}
      <BigButton tone="main" type="submit">{t("result.save")}</BigButton>
    </form>
  );
}

function TakeAway({ record_id }: { record_id: string }) {
  const [, navigate] = useLocation();
  const takeAway = async (): Promise<void> => {
    await takeBack(record_id);
    navigate("/results", { replace: true });
    toast(t("result.taken_back"), () => putBack(record_id));
  };
  return <Button tone="stop" onClick={() => void takeAway()}>{t("result.take_back")}</Button>;
}
