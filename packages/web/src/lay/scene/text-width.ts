/** Width of text on the page, for placing it. */

type Measure = (text: string, font: string) => number;

/** Average widths of the condensed face as a share of its size; good to a few per cent for numbers. */
const estimate: Measure = (text, font) => {
  const px = Number(/([\d.]+)px/.exec(font)?.[1] ?? 14);
  return text.length * px * 0.5;
};

let measure: Measure | null = null;

function canvasMeasure(): Measure {
  if (typeof document === 'undefined') return estimate;
  const context = document.createElement('canvas').getContext('2d');
  if (!context) return estimate;
  const known = new Map<string, number>();
  return (text, font) => {
    const key = `${font}|${text}`;
    const seen = known.get(key);
    if (seen !== undefined) return seen;
    context.font = font;
    const width = context.measureText(text).width;
    known.set(key, width);
    return width;
  };
}

/**
 * Width [px] of one line of text.
 * @param weight CSS font weight
 */
export function textWidth(text: string, sizePx: number, weight = 500): number {
  measure ??= canvasMeasure();
  return measure(text, `${weight} ${sizePx}px "IBM Plex Sans Condensed"`);
}

/** Forgets measured widths: call once the fonts have arrived. */
export function forgetTextWidths(): void {
  measure = null;
}
