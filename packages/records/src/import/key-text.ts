/** A list's own key of a row, however a program has written it. */

const guid = /^\{?([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})\}?$/i;

/**
 * A key as the same text for the same key: a whole number without the decimals that a spreadsheet or a
 * column of decimals puts behind it (`12.0` is 12; `007` stays as it is), and a UUID in small letters
 * without braces (RFC 4122, section 3: read whatever the case, written in lower case).
 */
export function keyText(text: string): string {
  const trimmed = text.trim();
  const whole = /^(\d+)\.0+$/.exec(trimmed);
  if (whole) return whole[1]!;
  const uuid = guid.exec(trimmed);
  return uuid ? uuid[1]!.toLowerCase() : trimmed;
}
