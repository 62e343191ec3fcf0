/** Text safe between tags and in attributes. */
export function escapeXml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** A number for an attribute: two digits are finer than any screen. */
export function px(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

type Attributes = Record<string, string | number | undefined>;

/** One element; children are markup already. Attributes without a value are left out. */
export function element(name: string, attributes: Attributes, ...children: string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? px(value) : escapeXml(value!)}"`)
    .join('');
  return children.length > 0
    ? `<${name}${written}>${children.join('')}</${name}>`
    : `<${name}${written}/>`;
}
