/**
 * Takes a JSON text apart as it streams by: one feature at a time is held, never the whole. Reads a
 * FeatureCollection (RFC 7946), features one per line or in a text sequence (RFC 8142), and a bare
 * list.
 */

/** One value found, or what is left that cannot be one. */
export type JsonPiece =
  /** An element of `features`, or of a bare list, or a value of its own. */
  | { is: 'feature'; text: string }
  /** The collection without its features. */
  | { is: 'collection'; text: string }
  | { is: 'broken'; text: string; why: string };

/** A feature longer than this is refused [characters]. */
const LONGEST_FEATURE = 64_000_000;

const states = { between: 0, value: 1, list: 2 } as const;

export async function* jsonPieces(texts: AsyncIterable<string>): AsyncIterable<JsonPiece> {
  let state: number = states.between;
  /** Depth of brackets inside the value being gathered. */
  let depth = 0;
  let inString = false;
  let escaped = false;
  /** Gathered text of the value, of the collection around a list. */
  let held = '';
  let around: string | undefined;
  let gathering = false;

  for await (const text of texts) {
    let from = 0;
    for (let at = 0; at < text.length; at += 1) {
      const code = text.charCodeAt(at);
      if (inString) {
        if (escaped) escaped = false;
        else if (code === 92) escaped = true;
        else if (code === 34) inString = false;
        continue;
      }
      if (state === states.value) {
        if (code === 34) inString = true;
        else if (code === 123 || code === 91) {
          depth += 1;
          // The list of features opens: what was gathered so far is the collection around it.
          if (code === 91 && depth === 2 && around === undefined) {
            const soFar = held + text.slice(from, at);
            if (/"features"\s*:\s*$/.test(soFar)) {
              around = `${soFar}[`;
              held = '';
              state = states.list;
              depth = 0;
              gathering = false;
            }
          }
        } else if (code === 125 || code === 93) {
          depth -= 1;
          if (depth === 0) {
            const value = held + text.slice(from, at + 1);
            held = '';
            state = states.between;
            yield around === undefined
              ? { is: 'feature', text: value }
              : { is: 'collection', text: around + value };
            around = undefined;
          }
        }
        continue;
      }
      if (state === states.list) {
        if (!gathering) {
          if (code === 93) {
            // After the list the collection goes on, or a bare list ends.
            if (around === undefined) state = states.between;
            else {
              state = states.value;
              depth = 1;
              from = at;
              held = '';
            }
          } else if (!isSpace(code) && code !== 44) {
            gathering = true;
            from = at;
            depth = code === 123 || code === 91 ? 1 : 0;
            inString = code === 34;
          }
          continue;
        }
        if (code === 34) inString = true;
        else if (code === 123 || code === 91) depth += 1;
        else if (code === 125 || code === 93 || (code === 44 && depth === 0)) {
          const inside = depth;
          if (code !== 44) depth -= 1;
          if (depth > 0) continue;
          const bare = inside === 0;
          const value = held + text.slice(from, bare ? at : at + 1);
          held = '';
          gathering = false;
          yield { is: 'feature', text: value };
          if (bare && code === 93) at -= 1;
        }
        continue;
      }
      // Between values: a record separator, a comma, white space, or the next value.
      if (isSpace(code) || code === 44 || code === 0x1e) continue;
      if (code === 123) {
        state = states.value;
        depth = 1;
        from = at;
        held = '';
      } else if (code === 91) {
        state = states.list;
        around = undefined;
        gathering = false;
        depth = 0;
      } else {
        const end = text.indexOf('\n', at);
        yield {
          is: 'broken',
          text: text.slice(at, end < 0 ? at + 200 : Math.min(end, at + 200)),
          why: 'it does not begin with a brace',
        };
        if (end < 0) at = text.length;
        else at = end;
      }
    }
    if (state === states.value || gathering) held += text.slice(from);
    if (held.length > LONGEST_FEATURE) {
      yield {
        is: 'broken',
        text: held.slice(0, 200),
        why: 'it is longer than 64 million characters',
      };
      return;
    }
  }
  if (gathering || state === states.value) {
    if (around !== undefined && !gathering) yield { is: 'collection', text: `${around}]}` };
    yield { is: 'broken', text: held.slice(0, 20_000), why: 'the file ends in the middle of it' };
  } else if (state === states.list) {
    yield { is: 'broken', text: '', why: 'the file ends inside the list of features' };
  }
}

const isSpace = (code: number) => code === 32 || code === 10 || code === 13 || code === 9;
