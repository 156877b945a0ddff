// Keeps the screen on during a run, where the phone lets a page ask. A hope, never the plan: the time is
// right without it, and the screen says when it may turn off.

export type Wakefulness = "off" | "held" | "refused";

interface Lock {
  release: () => Promise<void>;
  addEventListener: (type: "release", listener: () => void) => void;
}

/** What this needs of the browser; tests bring their own. */
export interface WakeHost {
  request: (() => Promise<Lock>) | null;
  visible: () => boolean;
  onVisible: (listener: () => void) => () => void;
}

export const browserHost: WakeHost = {
  request: typeof navigator !== "undefined" && "wakeLock" in navigator ? () => navigator.wakeLock.request("screen") : null,
  visible: () => document.visibilityState === "visible",
  onVisible: (listener) => {
    document.addEventListener("visibilitychange", listener);
    return () => document.removeEventListener("visibilitychange", listener);
  },
};

export interface KeepAwake {
  release: () => void;
}

/**
 * Asks for the lock at once, again whenever the page is shown, and lets go on release. `onChange` hears every
 * change; nothing here ever throws or rejects.
 */
export function keepAwake(onChange: (state: Wakefulness) => void, host: WakeHost = browserHost): KeepAwake {
  let lock: Lock | null = null;
  let asking = false;
  let over = false;

  const lost = (gone: Lock): void => {
    if (lock !== gone || over) return;
    lock = null;
    onChange("refused");
  };

  const taken = (granted: Lock): void => {
    if (over) return letGo(granted);
    lock = granted;
    granted.addEventListener("release", () => lost(granted));
    onChange("held");
  };

  const ask = async (): Promise<void> => {
    if (over || asking || lock !== null || !host.visible()) return;
    if (host.request === null) return onChange("refused");
    asking = true;
    await host.request().then(taken, () => over || onChange("refused"));
    asking = false;
  };

  const stopListening = host.onVisible(() => void ask());
  void ask();
  return {
    release: () => {
      over = true;
      stopListening();
      if (lock !== null) letGo(lock);
      lock = null;
      onChange("off");
    },
  };
}

function letGo(lock: Lock): void {
  lock.release().catch(() => undefined); // already gone: what was wanted
}
