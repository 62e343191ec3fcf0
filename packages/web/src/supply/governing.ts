/** What a plan goes by: a flow, and the method that it is by where one is. */
export interface Governing {
  gpm: number | null;
  method: string | null;
}

/** Whether a method's own answer is gone by; the same flow by another is not. */
export function isGoverning({ gpm, method }: Governing, title: string, neededGpm: number): boolean {
  return method?.toLowerCase() === title.toLowerCase() && Math.round(neededGpm) === gpm;
}
