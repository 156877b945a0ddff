// Small settings of this browser (theme, units, who was here last) that must be known before the database
// opens. A browser may forbid even these: then they last as long as the page.

const forPage = new Map<string, string>();

export function recall<T>(key: string): T | null {
  const text = read(`fieldtally.${key}`);
  try {
    return text === null ? null : (JSON.parse(text) as T);
  } catch {
    return null;
  }
}

export function remember(key: string, value: unknown): void {
  const text = JSON.stringify(value);
  forPage.set(`fieldtally.${key}`, text);
  try {
    localStorage.setItem(`fieldtally.${key}`, text);
  } catch {
    // kept for this page only, see above
  }
}

export function forget(key: string): void {
  forPage.delete(`fieldtally.${key}`);
  try {
    localStorage.removeItem(`fieldtally.${key}`);
  } catch {
    // nothing was kept there
  }
}

function read(key: string): string | null {
  try {
    return localStorage.getItem(key) ?? forPage.get(key) ?? null;
  } catch {
    return forPage.get(key) ?? null;
  }
}
