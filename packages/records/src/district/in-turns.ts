/** Items between two turns: some milliseconds of reading. */
const ITEMS_AT_ONCE = 1000;

/** The same items, with other requests let in now and then: SQLite answers without ever waiting. */
export async function* inTurns<T>(items: AsyncIterable<T>): AsyncGenerator<T> {
  let read = 0;
  for await (const item of items) {
    yield item;
    read += 1;
    if (read % ITEMS_AT_ONCE === 0) await new Promise((resolve) => setImmediate(resolve));
  }
}
