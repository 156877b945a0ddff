// Files that the worker keeps beside the shell, each checked against its digest when it is fetched.

export const KEPT_HOME = "fieldtally-home";

export interface HomeFile {
  url: string;
  integrity: string;
}

/** The kept file, or the one from the server, which is then kept. */
export async function fromHome(file: HomeFile): Promise<Response> {
  return (await (await caches.open(KEPT_HOME)).match(file.url)) ?? fetchAndKeep(file);
}

/** Rejects without signal, or when what comes is not this file; no room to keep it is no reason to. */
export async function fetchAndKeep({ url, integrity }: HomeFile): Promise<Response> {
  const reply = await fetch(url, { integrity });
  if (reply.ok) await (await caches.open(KEPT_HOME)).put(url, reply.clone()).catch(() => undefined);
  return reply;
}
