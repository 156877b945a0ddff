// Who wants to know that something was stored, in this tab or another.

type Listener = (tables: string[]) => void;

const listeners = new Set<{ name: string; listener: Listener }>();
let channel: BroadcastChannel | null = null;

/** `listener` is told after every transaction on the database `name`, until the returned function is called. */
export function followChanges(name: string, listener: Listener): () => void {
  openChannel();
  const one = { name, listener };
  listeners.add(one);
  return () => void listeners.delete(one);
}

export function tellChanged(name: string, tables: string[]): void {
  tellHere(name, tables);
  openChannel()?.postMessage({ name, tables });
}

function tellHere(name: string, tables: string[]): void {
  for (const one of [...listeners]) if (one.name === name) one.listener(tables);
}

// without it each tab shows what it stored itself, and the rest when it is opened again
function openChannel(): BroadcastChannel | null {
  if (channel || typeof BroadcastChannel === "undefined") return channel;
  channel = new BroadcastChannel("fieldtally-changes");
  channel.onmessage = ({ data }) => tellHere(data.name, data.tables);
  (channel as { unref?: () => void }).unref?.();
  return channel;
}
