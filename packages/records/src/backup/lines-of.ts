/**
 * Text cut at line feeds alone: Node's own reading by lines also cuts at U+2028 and U+2029, which
 * JSON leaves standing in a text.
 */
export async function* linesOf(pieces: AsyncIterable<Uint8Array>): AsyncIterable<string> {
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  let rest = '';
  for await (const piece of pieces) {
    const lines = (rest + decoder.decode(piece, { stream: true })).split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
  }
  rest += decoder.decode();
  if (rest !== '') yield rest;
}
