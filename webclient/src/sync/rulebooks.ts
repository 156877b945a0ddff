// The rulebooks as data, for fitting a fence and picking a speed with no signal. Fetched once a day, or when
// the server was upgraded; the browser's own cache makes an unchanged one cost next to nothing.

import type { Plain } from "../entries/merge.ts";
import { getMeta, type PhoneDb, setMeta } from "../store/db.ts";
import { dataOf } from "./stop.ts";
import type { Wire } from "./wire.ts";

const CHECKED = "rulebooks_checked";

export async function pullRulebooks(db: PhoneDb, wire: Wire, serverVersion: string, now: number): Promise<void> {
  const wanted = `${serverVersion} ${new Date(now).toISOString().slice(0, 10)}`;
  if ((await getMeta<string>(db, CHECKED)) === wanted) return;
  const list = dataOf(await wire.get<{ id: string }[]>("/api/rulebooks"));
  const replies = await Promise.all(list.map(({ id }) => wire.get<Plain & { id: string }>(`/api/rulebooks/${encodeURIComponent(id)}`)));
  const rulebooks = replies.map(dataOf);
  await db.transaction(["rulebooks", "meta"], async (inside) => {
    await inside.rulebooks.bulkPut(rulebooks.map((rulebook) => ({ id: rulebook.id, digest: wanted, rulebook })));
    await setMeta(inside, CHECKED, wanted);
  });
}
