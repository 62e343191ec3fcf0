/** What is to be done before the server stops, by those who know. */
const work = new WeakMap<object, (() => Promise<void>)[]>();

/** Has it done when the app's server closes, while its connections are still open. */
export function whenClosing(app: object, close: () => Promise<void>): void {
  work.set(app, [...(work.get(app) ?? []), close]);
}

export async function closeAll(app: object): Promise<void> {
  for (const close of work.get(app) ?? []) await close();
}
