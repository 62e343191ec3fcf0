/** The first tag of an XML text that does not close as it opened; null where all do. */
export function unbalanced(xml: string): string | null {
  const open: string[] = [];
  const body = xml.replace(/<\?[^>]*\?>|<!--[\s\S]*?-->/g, '');
  for (const [tag, closing, name, rest] of body.matchAll(/<(\/?)([A-Za-z][\w:-]*)([^<>]*)>/g)) {
    if (closing) {
      if (open.pop() !== name) return tag;
    } else if (!rest?.endsWith('/')) {
      open.push(name ?? '');
    }
    const attributes = rest
      ?.replace(/\s*[\w:-]+="[^"]*"/g, '')
      .replace('/', '')
      .trim();
    if (attributes) return tag;
  }
  const texts = body.replace(/<[^<>]*>/g, '');
  if (/[<>]|&(?!(amp|lt|gt|quot|apos|#\d+|#x[\da-f]+);)/i.test(texts)) return 'text';
  return open.pop() ?? null;
}
