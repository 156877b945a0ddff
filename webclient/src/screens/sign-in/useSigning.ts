// One attempt to sign in at a time, and what stood in its way.

import { useState } from "preact/hooks";

import type { SignTrouble } from "../../account/sign.ts";
import { t } from "../../words/index.ts";
import { toldFault } from "../../words/told.ts";

export interface Signing {
  busy: boolean;
  /** The trouble as a whole, in words; null when there is none or it belongs to a field. */
  trouble: string | null;
  troubleAt: (field: string) => string | null;
  submit: (event: Event) => void;
}

/** `attempt` signs in; `done` is what follows when it worked. */
export function useSigning(attempt: () => Promise<SignTrouble | null>, done: () => void): Signing {
  const [busy, setBusy] = useState(false);
  const [found, setFound] = useState<SignTrouble | null>(null);
  const go = async () => {
    setBusy(true);
    const trouble = await attempt();
    setBusy(false);
    setFound(trouble);
    if (!trouble) done();
  };
  const submit = (event: Event) => {
    event.preventDefault();
    if (!busy) void go();
  };
  const at = found && found !== "offline" ? found.field : null;
  return {
    busy,
    trouble: at ? null : inWords(found),
    troubleAt: (field) => (at === field ? inWords(found) : null),
    submit,
  };
}

function inWords(trouble: SignTrouble | null): string | null {
  if (trouble === "offline") return t("sign.offline");
  return trouble && toldFault(trouble).words;
}
