/** Coordinates written as text: degrees, minutes and seconds, letters, decimal commas. */

export type Axis = 'longitude' | 'latitude';

/**
 * One coordinate in degrees: `49.5272578`, `49,5272578`, `49°31'38.1"N`, `N 49 31.635`,
 * `84 23 15 W`. Undefined where it is none. A letter of the other axis makes it none as well.
 * A projected coordinate (`2,230,000.5`) comes back as the number it is.
 */
export function readCoordinate(text: string, axis: Axis): number | undefined {
  const plain = text
    .trim()
    .replace(/^[−–]/, '-')
    .replace(/[º˚]/g, '°')
    .replace(/[’′`]/g, "'")
    .replace(/[”″]|''/g, '"');
  const letters = axis === 'latitude' ? 'NS' : 'EWO';
  const body = new RegExp(`^([${letters}])?\\s*(.*?)\\s*([${letters}])?$`, 'i').exec(plain);
  if (!body || (body[1] && body[3])) return undefined;
  const letter = (body[1] ?? body[3])?.toUpperCase();
  const value = readAngle(body[2]!);
  if (value === undefined) return undefined;
  if (letter === undefined) return value;
  if (value < 0) return undefined;
  return letter === 'S' || letter === 'W' ? -value : value;
}

function readAngle(text: string): number | undefined {
  const single = /^([+-]?\d*(?:[.,]\d+)?|[+-]?\d+[.,]?)\s*°?$/.exec(text);
  if (single && /\d/.test(text)) return Number(single[1]!.replace(',', '.'));
  if (/^[+-]?\d{1,3}(,\d{3})+\.\d+$/.test(text) || /^[+-]?\d{1,3}(,\d{3}){2,}$/.test(text)) {
    return Number(text.replaceAll(',', ''));
  }
  // `5.934.123,10`, `5 934 123.1`: thousands apart, as projected coordinates are written.
  if (/^[+-]?\d{1,3}(\.\d{3})+,\d+$/.test(text) || /^[+-]?\d{1,3}(\.\d{3}){2,}$/.test(text)) {
    return Number(text.replaceAll('.', '').replace(',', '.'));
  }
  if (/^[+-]?\d{1,3}([ \u00a0\u202f']\d{3})+([.,]\d+)?$/.test(text)) {
    return Number(text.replace(/[ \u00a0\u202f']/g, '').replace(',', '.'));
  }
  const parts =
    /^([+-]?)(\d{1,3})(?:\s*°\s*|\s+|:|-)(\d{1,2}(?:[.,]\d+)?)\s*(?:'|:|-|\s|$)\s*(?:(\d{1,2}(?:[.,]\d+)?)\s*"?)?$/.exec(
      text,
    );
  if (!parts) return undefined;
  const minutes = Number(parts[3]!.replace(',', '.'));
  const seconds = Number((parts[4] ?? '0').replace(',', '.'));
  if (minutes >= 60 || seconds >= 60) return undefined;
  const size = Number(parts[2]) + minutes / 60 + seconds / 3600;
  return parts[1] === '-' ? -size : size;
}

/** Two coordinates in one cell, in the order in which they stand; undefined where they are not two. */
export function readPair(text: string): [string, string] | undefined {
  // An address with its place in brackets after it, as portals write locations.
  const last = /\(\s*([-+]?[\d.]+\s*[,;]\s*[-+]?[\d.]+)\s*\)\s*$/.exec(text)?.[1] ?? text;
  const plain = last.trim().replace(/^[([]\s*|\s*[)\]]$/g, '');
  const semicolon = plain.split(/\s*;\s*/);
  if (semicolon.length === 2) return [semicolon[0]!, semicolon[1]!];
  const comma = plain.split(/\s*,\s*/);
  if (comma.length === 2) return [comma[0]!, comma[1]!];
  const lettered = /^(.*?[NSEWO])\s+(.+[NSEWO])$/i.exec(plain);
  if (lettered) return [lettered[1]!, lettered[2]!];
  const space = plain.split(/\s+/);
  return space.length === 2 ? [space[0]!, space[1]!] : undefined;
}
