import { useState } from "preact/hooks";
import { useLocation, useSearchParams } from "wouter-preact";

import { BigButton, Button } from "../../parts/BigButton.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { bodyOf, NO_REST, type Problem, problemsOf, type Rest } from "../../recording/fenceForm.ts";
import { type Position, positionOf } from "../../recording/position.ts";
import { nextOrder } from "../../recording/reorder.ts";
import { edit, putBack, save, type SavedRecord, takeBack, useAsOpened, useDraft, useRecord, useRecords, useRole, useWhetherHere } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";
import { ForkNotice } from "../attempt/ForkNotice.tsx";
import { About } from "../media/About.tsx";
import { FenceFields } from "./FenceFields.tsx";
import { placeFence } from "./placeFence.ts";
import { PositionPart } from "./PositionPart.tsx";
import { useFenceForm } from "./useFenceForm.ts";

/** A new fence, of a field (`?field=`) or none, for an outing (`?outing=`) or none. */
export function NewFence() {
  const [search] = useSearchParams();
  const field_id = search.get("field");
  const fences = useRecords("fence", { field_id: field_id ?? "" }) ?? [];
  const rest = { ...NO_REST, field_id, order: field_id ? nextOrder(fences) : null };
  return <FenceForm title={t("fence.new")} draftKey={`fence new ${field_id ?? ""}`} fence={null} rest={rest} back={backTo(search, field_id)} />;
}

/** A kept fence. */
export function FenceScreen({ params }: { params: { id: string } }) {
  const [search] = useSearchParams();
  const whether = useWhetherHere("fence", params.id);
  const fence = useRecord("fence", params.id);
  if (whether === "missing") return <NotHere />;
  if (!fence) return <p class="screen quiet">{t("fence.loading")}</p>;
  const outing = search.get("outing");
  const back = outing ? `/outing/${outing}/fence/${params.id}` : backTo(search, fence.body.field_id);
  return <FenceForm title={fence.body.label} draftKey={`fence ${params.id}`} fence={fence} rest={fence.body} back={back} key={fence.record_id} />;
}

function backTo(search: URLSearchParams, field_id: string | null): string {
  const outing = search.get("outing");
  if (outing) return `/outing/${outing}`;
  return field_id ? `/field/${field_id}` : "/fields";
}

interface FormProps {
  title: string;
  draftKey: string;
  fence: SavedRecord<"fence"> | null;
  rest: Rest;
  back: string;
}

function FenceForm({ title, draftKey, fence, rest, back }: FormProps) {
  const [search] = useSearchParams();
  const [, navigate] = useLocation();
  const asOpened = useAsOpened(fence);
  const { form, change, startAfresh, recovered } = useFenceForm(draftKey, fence?.body ?? null);
  const [problems, setProblems] = useState<Problem[]>([]);
  const mayWrite = useRole() !== "reader";
  const [stood, setStood, forgetStood] = useDraft(`${draftKey} position`);
  const whole = { ...rest, ...(!fence && stood && (JSON.parse(stood) as Position)) };
  const place = (part: Partial<Position>) => (fence ? void placeFence(fence.record_id, part) : setStood(JSON.stringify({ ...positionOf(whole), ...part })));
  const keep = async () => {
    const found = problemsOf(form);
    setProblems(found);
    if (found.length) return toast(t("fence.problems", { n: found.length }));
    const body = bodyOf(form, restOf(whole));
    const saved = await (asOpened ? edit(asOpened, body) : save("fence", body)).catch(() => null);
    if (!saved) return toast(t("fence.not_saved"));
    startAfresh();
    forgetStood();
    toast(t("fence.saved", { label: saved.body.label }));
    navigate(fence || !back.startsWith("/outing/") ? back : `${back}/fence/${saved.record_id}`, { replace: true });
  };
  return (
    <Screen title={title} back={back}>
      {fence?.fork && <ForkNotice record={fence} />}
      {recovered && <Notice title={t("fence.recovered")} actions={<Button onClick={startAfresh}>{t("fence.start_afresh")}</Button>} />}
      <form class="form" onSubmit={(event) => { event.preventDefault(); void keep(); }}>
        <fieldset class="form" disabled={!mayWrite}>
          <FenceFields form={form} problems={problems.length ? problemsOf(form) : []} onChange={change} />
          {mayWrite && <PositionPart position={whole} onChange={place} />}
        </fieldset>
        {mayWrite && <BigButton tone="main" type="submit">{fence ? t("fence.save") : t("fence.add")}</BigButton>}
      </form>
      {fence && <About ids={[fence.record_id]} what={fence.body.label} />}
      {fence && mayWrite && <p><Button tone="stop" onClick={() => void remove(fence, () => navigate(backTo(search, fence.body.field_id), { replace: true }))}>{t("fence.take_back")}</Button></p>}
    </Screen>
  );
}

const restOf = (rest: Rest): Rest => ({ field_id: rest.field_id, order: rest.order, ...positionOf(rest) });

async function remove(fence: SavedRecord<"fence">, leave: () => void): Promise<void> {
  try {
    await takeBack(fence.record_id);
  } catch {
    return toast(t("fence.not_saved"));
  }
  toast(t("fence.taken_back", { label: fence.body.label }), () => putBack(fence.record_id));
  leave();
}
