// One tab syncs at a time. Should two ever do, nothing breaks: sending twice is answered `already`.

import { type PhoneDb, getMeta, setMeta } from "../store/db.ts";

const LEASE_MS = 30_000;

/** Runs `work` if no other tab is at it; null if one is. */
export async function inOneTab<T>(db: PhoneDb, work: () => Promise<T>): Promise<T | null> {
  const name = `${db.name}-sync`;
  if (navigator.locks) return navigator.locks.request(name, { ifAvailable: true }, (lock) => (lock ? work() : null));
  if (!(await takeLease(db))) return null;
  const renewing = setInterval(() => void takeLease(db, true), LEASE_MS / 3);
  try {
    return await work();
  } finally {
    clearInterval(renewing);
    await setMeta(db, "lease", 0);
  }
}

function takeLease(db: PhoneDb, mine = false): Promise<boolean> {
  return db.transaction(["meta"], async (inside) => {
    const until = (await getMeta<number>(inside, "lease")) ?? 0;
    if (!mine && until > Date.now() && until <= Date.now() + LEASE_MS) return false;
    await setMeta(inside, "lease", Date.now() + LEASE_MS);
    return true;
  });
}
