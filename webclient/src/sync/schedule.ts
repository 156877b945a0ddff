// When to send and fetch.

/** Starts sending and fetching for as long as the app is open. */
export function startSync(): void {}

/** Sends and fetches now, because the person asked. */
export async function syncNow(): Promise<void> {}
