// Requests to our server, and what to make of whatever comes back. Never throws: a reply that is not ours (a
// captive portal's page, a foreign redirect, HTML from a proxy) counts as offline, like no reply at all.

/** The server's one error shape, or the little that is known without it. */
export interface WireError {
  code: string;
  message: string;
  field: string | null;
  fix: string | null;
  details: { [name: string]: unknown }[];
}

export type Reply<T> =
  | { kind: "ok"; data: T }
  | { kind: "offline" }
  | { kind: "failed"; status: number; error: WireError; retry_after_ms: number | null };

export interface Wire {
  get<T>(path: string): Promise<Reply<T>>;
  post<T>(path: string, body: unknown): Promise<Reply<T>>;
  remove(path: string): Promise<Reply<null>>;
}

/** Longest wait for an answer; a page of 500 entries over a slow field connection takes many seconds. */
export const PATIENCE_MS = 45_000;

export function makeWire(fetcher: typeof fetch = (...call) => fetch(...call), patience_ms = PATIENCE_MS): Wire {
  const ask = <T>(path: string, init: RequestInit) => request<T>(fetcher, path, init, patience_ms);
  return {
    get: (path) => ask(path, { method: "GET" }),
    post: (path, body) => ask(path, { method: "POST", body: JSON.stringify(body), headers: { "Content-Type": "application/json" } }),
    remove: (path) => ask(path, { method: "DELETE" }),
  };
}

async function request<T>(fetcher: typeof fetch, path: string, init: RequestInit, patience_ms: number): Promise<Reply<T>> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), patience_ms);
  const headers = { ...init.headers, Accept: "application/json", "X-Fieldtally": "1" };
  try {
    const response = await fetcher(path, { ...init, headers, signal: abort.signal, cache: "no-cache", credentials: "same-origin" });
    return await replyOf<T>(response);
  } catch {
    return { kind: "offline" };
  } finally {
    clearTimeout(timer);
  }
}

async function replyOf<T>(response: Response): Promise<Reply<T>> {
  if (response.redirected) return { kind: "offline" };
  if (response.status === 204) return { kind: "ok", data: null as T };
  if (!/^application\/json\b/.test(response.headers.get("Content-Type") ?? "")) return { kind: "offline" };
  const data = (await response.json()) as T & { error?: WireError };
  if (typeof data !== "object" || data === null) return { kind: "offline" };
  if (response.ok && !data.error) return { kind: "ok", data };
  if (typeof data.error?.code !== "string") return { kind: "offline" };
  return { kind: "failed", status: response.status, error: data.error, retry_after_ms: retryAfter(response) };
}

function retryAfter(response: Response): number | null {
  const seconds = Number(response.headers.get("Retry-After") ?? NaN);
  return Number.isFinite(seconds) ? seconds * 1000 : null;
}
