// Requests about photos and voice notes: bytes where wire.ts has JSON. A reply without our own header is not
// ours and counts as offline.

import { PATIENCE_MS, type Reply, type WireError } from "./wire.ts";

export interface MediaWire {
  /** How many bytes the server has, and whether that is all. */
  ask(path: string): Promise<Reply<Received>>;
  send(path: string, piece: ArrayBuffer, offset: number, size_bytes: number): Promise<Reply<Received>>;
  fetch(path: string): Promise<Reply<ArrayBuffer>>;
}

export interface Received {
  received_bytes: number;
  complete: boolean;
}

type Read<T> = (response: Response) => Promise<T | null>;

export function mediaPath({ logbook_id, sha256 }: { logbook_id: string; sha256: string }): string {
  return `/api/logbooks/${logbook_id}/media/${sha256}`;
}

export function makeMediaWire(fetcher: typeof fetch = (...call) => fetch(...call)): MediaWire {
  return {
    ask: (path) => request(fetcher, path, { method: "HEAD" }, received),
    send: (path, body, offset, size_bytes) =>
      request(fetcher, path, { method: "PATCH", body, headers: { "Content-Type": "application/partial-upload", "Upload-Offset": `${offset}`, "Upload-Length": `${size_bytes}` } }, json<Received>),
    fetch: (path) => request(fetcher, path, { method: "GET" }, bytes),
  };
}

async function request<T>(fetcher: typeof fetch, path: string, init: RequestInit, read: Read<T>): Promise<Reply<T>> {
  try {
    const signal = AbortSignal.timeout(PATIENCE_MS);
    const response = await fetcher(path, { ...init, headers: { ...init.headers, "X-Fieldtally": "1" }, signal, cache: "no-cache", credentials: "same-origin" });
    if (response.redirected) return { kind: "offline" };
    if (!response.ok) return await failed(response);
    const data = await read(response);
    return data === null ? { kind: "offline" } : { kind: "ok", data };
  } catch {
    return { kind: "offline" };
  }
}

// the answer to HEAD has no body to say what was wrong
async function failed(response: Response): Promise<Reply<never>> {
  const said = (await json<{ error?: WireError }>(response))?.error;
  if (!said && !/^application\/json\b/.test(response.headers.get("Content-Type") ?? "")) return { kind: "offline" };
  const seconds = Number(response.headers.get("Retry-After") ?? NaN);
  const error = said ?? { code: "", message: "", field: null, fix: null, details: [] };
  return { kind: "failed", status: response.status, error, retry_after_ms: Number.isFinite(seconds) ? seconds * 1000 : null };
}

function json<T>(response: Response): Promise<T | null> {
  return response.json().then((data) => data as T, () => null);
}

async function received({ headers }: Response): Promise<Received | null> {
  const offset = headers.get("Upload-Offset");
  return offset === null ? null : { received_bytes: Number(offset), complete: headers.get("Upload-Complete") === "?1" };
}

async function bytes(response: Response): Promise<ArrayBuffer | null> {
  return /^(image|audio)\//.test(response.headers.get("Content-Type") ?? "") ? response.arrayBuffer() : null;
}
