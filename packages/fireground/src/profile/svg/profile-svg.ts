import type { PressureProfile } from '../profile.ts';
import { distanceAxis, pressureAxis } from './axes.ts';
import { limitBands } from './bands.ts';
import { drawingOf, FONT_PX, textAt } from './drawing.ts';
import { inWords } from './in-words.ts';
import type { ProfileSvgOptions } from './options.ts';
import { pathStrokes } from './runs.ts';
import { NOTE_PX, stationMarks } from './stations.ts';
import type { Tone } from './tones.ts';
import { element, escapeXml } from './xml.ts';

const STYLE =
  'text{font-variant-numeric:tabular-nums}' +
  '.halo{paint-order:stroke;stroke:#ffffff;stroke-width:3px;stroke-linejoin:round}';

/**
 * The pressure profile as a standalone SVG image: pressure [psi] up, hose [ft] across, the hookup
 * at the hydrant not to scale; hose limits and floors as hatched bands. Numbers are written by the
 * options' functions, so it shows any unit. It reads in black and white: nothing is told by colour
 * alone. Throws RangeError for a page under 480 × 280 px.
 */
export function profileSvg(profile: PressureProfile, options: ProfileSvgOptions): string {
  const { width = 960, height = 420, title = 'Pressure profile' } = options;
  if (!(width >= 480 && height >= 280)) {
    throw new RangeError(
      `page is ${width} × ${height} px; allowed: 480 × 280 px or more. Give the drawing more room.`,
    );
  }
  const drawing = drawingOf(profile, options, width, height);
  const { tone, frame } = drawing;
  const bands = limitBands(drawing);
  const stations = stationMarks(drawing, bands, height + FONT_PX);
  const fullHeight = height + (stations.notes > 0 ? stations.notes * NOTE_PX + FONT_PX : 0);
  const [supply] = profile.supply;
  const headline = supply
    ? `${supply.label}, ${options.formatFlow(supply.flowGpm)}`
    : 'No water reaches the scene.';
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${fullHeight}`,
      width,
      height: fullHeight,
      role: 'img',
      'font-family': 'Helvetica, Arial, sans-serif',
      'font-size': FONT_PX,
    },
    element('title', {}, escapeXml(title)),
    element('desc', {}, escapeXml(inWords(profile, options))),
    element('style', {}, STYLE),
    element('defs', {}, hatching(tone), arrowhead(tone)),
    element('rect', { width, height: fullHeight, fill: '#ffffff' }),
    textAt(frame.left, 20, title, tone.ink, { 'font-size': 15, 'font-weight': 600 }),
    textAt(frame.left, 38, headline, tone.quiet),
    ...pressureAxis(drawing),
    ...distanceAxis(drawing),
    ...bands.parts,
    ...pathStrokes(drawing),
    ...stations.parts,
  );
}

function hatching({ warning }: Tone): string {
  return element(
    'pattern',
    {
      id: 'band',
      width: 6,
      height: 6,
      patternUnits: 'userSpaceOnUse',
      patternTransform: 'rotate(45)',
    },
    element('line', {
      x1: 0,
      y1: 0,
      x2: 0,
      y2: 6,
      stroke: warning,
      'stroke-width': 1,
      'stroke-opacity': 0.35,
    }),
  );
}

function arrowhead({ pump }: Tone): string {
  return element(
    'marker',
    {
      id: 'raise',
      viewBox: '0 0 8 8',
      refX: 6,
      refY: 4,
      markerWidth: 3,
      markerHeight: 3,
      orient: 'auto',
    },
    element('path', { d: 'M0 0L8 4L0 8z', fill: pump }),
  );
}
