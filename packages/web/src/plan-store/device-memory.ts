/** The browser's own store, which may be switched off or full: then nothing is remembered. */

/** Text kept under a name on this device; null where there is none. */
export function kept(name: string): string | null {
  try {
    return globalThis.localStorage?.getItem(name) ?? null;
  } catch {
    return null;
  }
}

/** Keeps text under a name; false where the device refuses. */
export function keep(name: string, text: string): boolean {
  try {
    globalThis.localStorage?.setItem(name, text);
    return true;
  } catch {
    return false;
  }
}

/** Takes away what is kept under a name. */
export function drop(name: string): void {
  try {
    globalThis.localStorage?.removeItem(name);
  } catch {
    // Switched off: nothing is kept.
  }
}
