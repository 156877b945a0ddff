import { useState } from "preact/hooks";
import { Link, useLocation, useSearchParams } from "wouter-preact";

import { Button } from "../../parts/BigButton.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRole } from "../../store/book.ts";
import { layOut } from "../../sketch/layout.ts";
import { t } from "../../words/index.ts";
import { Placing } from "./Placing.tsx";
import { Sketch } from "./Sketch.tsx";
import { type FieldView, useField } from "./useField.ts";
import { WayList } from "./WayList.tsx";

/** The field from above: its fences where they stand, without anybody's map. In an outing (`?outing=`) a tap leads
 * to recording at the fence. */
export function SketchScreen({ params }: { params: { id: string } }) {
  const view = useField(params.id);
  if (view === "missing") return <NotHere />;
  if (view === "loading") return <p class="screen quiet">{t("field.loading")}</p>;
  return <Shown view={view} />;
}

function Shown({ view: { field, fences } }: { view: FieldView }) {
  const [search] = useSearchParams();
  const [, navigate] = useLocation();
  const [placing, setPlacing] = useState(false);
  const mayPlace = useRole() !== "reader" && fences.length > 0;
  const outing = search.get("outing");
  const hrefOf = (id: string) => (outing ? `/outing/${outing}/fence/${id}` : `/fence/${id}`);
  const layout = layOut(fences);
  return (
    <Screen
      title={field.body.name} back={outing ? `/outing/${outing}` : `/field/${field.record_id}`}
      actions={mayPlace && <Button pressed={placing} onClick={() => setPlacing(!placing)}>{t("field.place_by_hand")}</Button>}
    >
      {placing ? <Placing fences={fences} layout={layout} /> : (
        <>
          {layout.spots.size > 0 && <Sketch fences={fences} layout={layout} onTap={(id) => id && navigate(hrefOf(id))} />}
          {layout.spots.size === 0 && <p>{t("field.no_positions")} <Link href={`/field/${field.record_id}/walk`}>{t("field.walk")}</Link></p>}
          <WayList fences={fences} layout={layout} hrefOf={hrefOf} />
        </>
      )}
    </Screen>
  );
}
