// A logbook's server in a few lines, with the faults a real one can have. It speaks docs/protocol.md.

import type { Entry, Numbering } from "../../webclient/src/entries/entry.ts";
import { LOGBOOK } from "./storage.ts";

type Kept = Entry & Numbering & { number: number };
type Sent = Entry & Partial<Numbering>;
type Answer = (request: { method: string; url: string; body: { log_id: string | null; entries: Sent[] } | null }) => Response | null | "lost";

export class PretendServer {
  entries: Kept[] = [];
  log_id = "log-1";
  requests: string[] = [];
  pushes: { log_id: string | null; entries: Sent[] }[] = [];
  /** Asked before each request: a response stands in for ours; "lost" does the work and drops the reply. */
  fault: Answer = () => null;
  refuses: (entry: Entry) => { code: string; message: string } | null = () => null;
  holds: (entry: Entry) => boolean = () => false;
  author = { author: "11111111-1111-4111-8111-111111111111", author_name: "Rika" };

  fetch: typeof fetch = async (input, init) => {
    const url = String(input);
    const method = init?.method ?? "GET";
    const body = init?.body ? JSON.parse(String(init.body)) : null;
    this.requests.push(`${method} ${url}`);
    const fault = this.fault({ method, url, body });
    if (fault instanceof Response) return fault;
    const response = this.answer(method, new URL(url, "http://here"), body);
    if (fault === "lost") throw new TypeError("network gone");
    return response;
  };

  answer(method: string, url: URL, body: { log_id: string | null; entries: Sent[] } | null): Response {
    if (url.pathname !== `/api/logbooks/${LOGBOOK}/entries`) return problem(404, "not_found");
    return method === "POST" ? this.push(body!) : this.pull(Number(url.searchParams.get("after")), Number(url.searchParams.get("limit")));
  }

  push(body: { log_id: string | null; entries: Sent[] }): Response {
    if (body.log_id !== null && body.log_id !== this.log_id) return problem(409, "log_changed", [{ log_id: this.log_id }]);
    this.pushes.push(body);
    const answers = body.entries.map((entry) => this.take(entry));
    return json({ log_id: this.log_id, last_number: this.entries.length, answers, server_time: new Date().toISOString() });
  }

  take(entry: Sent): object {
    const known = this.entries.find((kept) => kept.id === entry.id);
    if (known) return JSON.stringify(known.body) === JSON.stringify(entry.body) ? { id: entry.id, result: "already", number: known.number } : { id: entry.id, result: "refused", code: "id_taken", message: "taken" };
    const refusal = this.refuses(entry);
    if (refusal) return { id: entry.id, result: "refused", field: null, fix: null, ...refusal };
    if (this.holds(entry)) return { id: entry.id, result: "held" };
    return { id: entry.id, result: "accepted", number: this.append(entry).number };
  }

  append(entry: Sent): Kept {
    const origin = entry.receipt ? { author: entry.author!, author_name: entry.author_name! } : this.author;
    const kept = { ...entry, ...origin, number: this.entries.length + 1, receipt: `r-${entry.id}` };
    this.entries.push(kept);
    return kept;
  }

  pull(after: number, limit: number): Response {
    const entries = this.entries.filter((entry) => entry.number > after).slice(0, limit);
    const more = (entries.at(-1)?.number ?? after) < this.entries.length;
    return json({ log_id: this.log_id, last_number: this.entries.length, entries, more, server_time: new Date().toISOString() });
  }

  /** Back to a backup of `count` entries; the log id is renewed, as `fieldtally restore` does. */
  restore(count: number): void {
    this.entries = this.entries.slice(0, count);
    this.log_id = `${this.log_id}+`;
  }
}

export function json(data: unknown, status = 200): Response {
  return new Response(JSON.stringify(data), { status, headers: { "Content-Type": "application/json" } });
}

export function problem(status: number, code: string, details: object[] = []): Response {
  return json({ error: { code, message: code, field: null, fix: null, details } }, status);
}

export function page(status = 200): Response {
  return new Response("<!doctype html><title>Welcome to the station’s wifi</title>", { status, headers: { "Content-Type": "text/html" } });
}
