import { useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { ASKS, type Ask, type Profile } from "../../entries/bodies.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { ManyChoices } from "../../parts/Choices.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { ASKS_BY_PROFILE } from "../../recording/asks.ts";
import { DIMENSION_LIMITS_CM, withinLimits } from "../../recording/dimensions.ts";
import { NOT_MEASURED, type Typed } from "../../recording/fenceForm.ts";
import { madeUpBody, mainDimension } from "../../recording/madeUp.ts";
import { asksAtOuting } from "../../recording/profiles.ts";
import { nextOrder } from "../../recording/reorder.ts";
import { save } from "../../store/book.ts";
import { showHeight } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";
import { FitLine } from "../fence/FitLine.tsx";
import { LengthBox } from "../fence/LengthBox.tsx";
import { ProfileChoice } from "../fence/ProfileChoice.tsx";
import { type OutingView, useOuting } from "./useOuting.ts";

/** A fence made up on the spot: one tap for how it is built, the rest only if there is time. */
export function MadeUpFence({ params }: { params: { id: string } }) {
  const view = useOuting(params.id);
  if (view === "missing") return <NotHere />;
  if (view === "loading") return <p class="screen quiet">{t("outing.loading")}</p>;
  return <Form view={view} />;
}

function Form({ view }: { view: OutingView }) {
  const [, navigate] = useLocation();
  const [profile, setProfile] = useState<Profile | null>(null);
  const [asks, setAsks] = useState<Ask[] | null>(null);
  const [height, setHeight] = useState<Typed>(NOT_MEASURED);
  const [label, setLabel] = useState("");
  const [keepIt, setKeepIt] = useState(false);
  const byNature = (each: Profile): Ask[] => asksAtOuting(view.outing.body.activity) ?? [...ASKS_BY_PROFILE[each]];
  const home = `/outing/${view.outing.record_id}`;
  const trouble = profile === null ? null : troubleOf(profile, height);
  const make = async () => {
    if (!profile || trouble) return toast(trouble ?? t("fence.profile_missing"));
    const field_id = keepIt ? view.outing.body.field_id : null;
    const order = field_id ? nextOrder(view.fences.filter((fence) => fence.body.field_id)) : null;
    const made = { profile, asks: asks ?? byNature(profile), asks_ticked: true, label, height, field_id, order };
    const saved = await save("fence", madeUpBody(made, (each) => t(`profile.${each}`), view.fences)).catch(() => null);
    if (!saved) return toast(t("fence.not_saved"));
    navigate(`${home}/fence/${saved.record_id}`, { replace: true });
  };
  return (
    <Screen title={t("outing.make_up")} back={home} recording>
      <ProfileChoice label={t("fence.profile")} value={profile} activity={view.outing.body.activity} onChoose={setProfile} />
      {profile && <>
        <LengthBox dimension={mainDimension(profile)} value={height} problem={trouble ? { path: "height", code: height.bad ? "not_a_number" : "out_of_range" } : undefined} onChange={setHeight} />
        <FitLine horse={view.horse} fence={madeUpBody({ profile, asks: asks ?? byNature(profile), asks_ticked: true, label, height, field_id: null, order: null }, String, [])} />
        <ManyChoices
          label={t("fence.asks")} values={asks ?? byNature(profile)} onChange={setAsks}
          choices={ASKS.filter((ask) => ask !== "combination").map((value) => ({ value, words: t(`ask.${value}`) }))}
        />
      </>}
      <TextBox label={t("outing.made_up_label")} value={label} onInput={setLabel} most={60} autoComplete="off" hint={profile ? t("outing.made_up_label_hint", { word: t(`profile.${profile}`) }) : undefined} />
      {view.outing.body.field_id && (
        <label class="tick">
          <input type="checkbox" checked={keepIt} onChange={() => setKeepIt(!keepIt)} />
          <span>{t("outing.keep_in_field", { field: view.field?.body.name ?? "" })}</span>
        </label>
      )}
      <div class="panel__controls"><BigButton tone="main" onClick={() => void make()}>{t("outing.use_it")}</BigButton></div>
    </Screen>
  );
}

function troubleOf(profile: Profile, height: Typed): string | null {
  if (height.bad) return t("fence.not_a_length");
  const dimension = mainDimension(profile);
  if (height.value === null || withinLimits(dimension, height.value)) return null;
  const [least, most] = DIMENSION_LIMITS_CM[dimension];
  return t("fence.length_range", { least: showHeight(least), most: showHeight(most) });
}
