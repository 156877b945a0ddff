// This browser's own id, which its entries carry: made once with the store, gone with it.

import { getMeta, type PhoneDb, setMeta } from "../store/db.ts";

export async function deviceOf(db: PhoneDb): Promise<string> {
  return db.transaction(["meta"], async (inside) => {
    const known = await getMeta<string>(inside, "device");
    if (known) return known;
    const made = crypto.randomUUID();
    await setMeta(inside, "device", made);
    return made;
  });
}
