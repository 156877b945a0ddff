// This browser's own id, which its entries carry: made once with the store, gone with it.

import { getMeta, type PhoneDb, setMeta } from "../store/db.ts";

export async function deviceOf(db: PhoneDb): Promise<string> {
  return db.transaction("rw", db.meta, async () => {
    const known = await getMeta<string>(db, "device");
    if (known) return known;
    const made = crypto.randomUUID();
    await setMeta(db, "device", made);
    return made;
  });
}
