import { useState } from "preact/hooks";
import { Link, useLocation } from "wouter-preact";

import { leaveLocal } from "../../account/local.ts";
import { exportAll } from "../../copies/exportAll.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";

/** A logbook without an account: what that means, and the ways out of it. Deleting it takes two steps. */
export function LocalPart() {
  const [sure, ask] = useState(false);
  const [, navigate] = useLocation();
  const leave = async (remove: boolean) => {
    await leaveLocal(remove);
    navigate("/", { replace: true });
  };
  return (
    <Section title={t("local.title")}>
      <p>{t("local.only")}</p>
      <div class="buttons">
        <Link class="button button--main" href="/sign-in">{t("local.sign_in")}</Link>
        <Button onClick={() => void leave(false)}>{t("local.close")}</Button>
        {!sure && <Button tone="stop" onClick={() => ask(true)}>{t("local.remove")}</Button>}
      </div>
      {sure && (
        <Notice
          tone="stop" urgent
          actions={
            <>
              <Button onClick={() => void exportAll()}>{t("settings.export")}</Button>
              <Button tone="stop" onClick={() => void leave(true)}>{t("local.remove_yes")}</Button>
              <Button tone="quiet" onClick={() => ask(false)}>{t("frame.cancel")}</Button>
            </>
          }
        >
          <p>{t("local.remove_sure", { n: syncState.value.waiting })}</p>
        </Notice>
      )}
    </Section>
  );
}
