/**
 * Records of a table as it streams by (RFC 4180, any delimiter and line end). A parser of our own,
 * because the usual ones stop or repeat rows at a quote that is never closed: here such a quote is a
 * letter like any other, and its line is one record.
 */

export interface CsvRecord {
  cells: string[];
  /** Line of the file on which it begins, from 1. */
  line: number;
  /** As it stood, without the line's end. */
  raw: string;
}

/** A quoted cell past either is a quote that was never closed. */
const LONGEST_CELL = 1_000_000;
const MOST_LINES = 1000;

interface Scanned {
  cells: string[];
  /** Where the text goes on after the record and its line end. */
  next: number;
  /** Where the record's own text ends. */
  end: number;
  lines: number;
}

export async function* csvRecords(
  texts: AsyncIterable<string>,
  delimiter: string,
): AsyncIterable<CsvRecord> {
  let held = '';
  let line = 1;
  function* take(final: boolean): Iterable<CsvRecord> {
    let from = 0;
    while (from < held.length) {
      let found = scan(held, from, delimiter, final, true);
      if (found === 'never closed') found = scan(held, from, delimiter, final, false);
      if (found === 'more' || found === 'never closed') break;
      yield { cells: found.cells, line, raw: held.slice(from, found.end) };
      line += found.lines;
      from = found.next;
    }
    held = held.slice(from);
  }
  for await (const text of texts) {
    held += text;
    yield* take(false);
  }
  yield* take(true);
}

/** One record from `from`; `more` where the text held ends inside it. */
function scan(
  text: string,
  from: number,
  delimiter: string,
  final: boolean,
  quotes: boolean,
): Scanned | 'more' | 'never closed' {
  const cells: string[] = [];
  let lines = 1;
  let at = from;
  for (;;) {
    let cell: string;
    if (quotes && text[at] === '"') {
      const close = closingQuote(text, at + 1, delimiter, final);
      if (close === 'more') {
        return isTooLong(text, at) ? 'never closed' : 'more';
      }
      if (close === 'never closed') return close;
      const inside = text.slice(at + 1, close);
      lines += lineEnds(inside);
      if (lines > MOST_LINES) return 'never closed';
      cell = inside.includes('"') ? inside.replaceAll('""', '"') : inside;
      at = close + 1;
      while (text[at] === ' ') at += 1;
    } else {
      const start = at;
      at = endOfBare(text, at, delimiter);
      cell = text.slice(start, at);
    }
    cells.push(cell);
    if (at >= text.length) {
      return final ? { cells, next: at, end: at, lines } : 'more';
    }
    if (text[at] === delimiter) {
      at += 1;
      continue;
    }
    if (text[at] === '\r' && at + 1 >= text.length && !final) return 'more';
    const next = text[at] === '\r' && text[at + 1] === '\n' ? at + 2 : at + 1;
    return { cells, next, end: at, lines };
  }
}

/** The quote that closes a cell: one before a delimiter or a line's end. Others are letters. */
function closingQuote(
  text: string,
  from: number,
  delimiter: string,
  final: boolean,
): number | 'more' | 'never closed' {
  for (let at = text.indexOf('"', from); at >= 0; at = text.indexOf('"', at + 1)) {
    if (text[at + 1] === '"') {
      at += 1;
      continue;
    }
    let after = at + 1;
    while (text[after] === ' ') after += 1;
    if (after >= text.length) return final ? at : 'more';
    const letter = text[after];
    if (letter === delimiter || letter === '\n' || letter === '\r') return at;
  }
  return final ? 'never closed' : 'more';
}

function endOfBare(text: string, from: number, delimiter: string): number {
  const delimiterCode = delimiter.charCodeAt(0);
  for (let at = from; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === delimiterCode || code === 10 || code === 13) return at;
  }
  return text.length;
}

const isTooLong = (text: string, from: number) =>
  text.length - from > LONGEST_CELL || lineEnds(text.slice(from), MOST_LINES) >= MOST_LINES;

function lineEnds(text: string, most = Number.POSITIVE_INFINITY): number {
  let count = 0;
  for (let at = text.indexOf('\n'); at >= 0 && count < most; at = text.indexOf('\n', at + 1)) {
    count += 1;
  }
  return count;
}
