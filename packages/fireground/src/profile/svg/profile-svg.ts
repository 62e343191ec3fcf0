import type { PressureProfile, ProfilePath, ProfileStation } from '../profile.ts';
import { layOut } from './lay-out.ts';
import type { ProfileSvgOptions } from './options.ts';
import { type Box, type LabelWish, type Point, placeLabels } from './place-labels.ts';
import { textWidth } from './text-width.ts';
import { axisTicks } from './ticks.ts';
import { TONES } from './tones.ts';
import { element, escapeXml } from './xml.ts';

const FONT = 12;
const FONT_FAMILY = 'Helvetica, Arial, sans-serif';
const NOTE_PX = 17;
/** A hose limit further above the pressures than this share would squeeze them: it is not drawn. */
const LIMIT_SHARE = 1.5;

/** What a station's label says of it. */
const STATION_WORDS: Record<ProfileStation['kind'], string> = {
  main: 'main',
  outlet: 'outlet',
  appliance: '',
  intake: 'intake',
  discharge: 'discharge',
  nozzle: '',
  water: 'water',
  terrain: '',
};

interface Drawn {
  path: ProfilePath;
  points: Point[];
  side: 'supply' | 'attack';
}

/**
 * The pressure profile as a standalone SVG image: pressure [psi] up, hose [ft] across, the hookup
 * at the hydrant not to scale; hose limits and floors as hatched bands. Numbers are written by the
 * options' functions, so it shows any unit. Throws RangeError for a page under 480 × 280 px.
 */
export function profileSvg(profile: PressureProfile, options: ProfileSvgOptions): string {
  const {
    width = 960,
    height = 420,
    tone: toneName = 'light',
    title = 'Pressure profile',
  } = options;
  if (!(width >= 480 && height >= 280)) {
    throw new RangeError(
      `page is ${width} × ${height} px; allowed: 480 × 280 px or more. Give the drawing more room.`,
    );
  }
  const tone = TONES[toneName];
  const paths = [...profile.supply, ...profile.attack];
  const nameOf = options.nameOf ?? ((piece: string) => piece);

  const pressures = paths.flatMap(({ stations }) => stations.map(({ psi }) => psi));
  const greatest = Math.max(20, ...pressures);
  const limits = paths.flatMap(({ spans }) =>
    spans.flatMap((span) => (span.kind === 'hose' ? [span.limitPsi] : [])),
  );
  const shown = (limitPsi: number) => limitPsi <= LIMIT_SHARE * greatest;
  const unitPsi = options.pressureUnitPsi ?? 1;
  const psiTicks = axisTicks(
    Math.min(0, ...pressures),
    1.08 * Math.max(greatest, ...limits.filter(shown)),
    unitPsi,
    6,
  );
  const axisWidth = Math.max(
    ...psiTicks.map((psi) => textWidth(options.formatPressure(psi), FONT)),
  );
  const frame: Box = { left: axisWidth + 20, right: width - 24, top: 52, bottom: height - 46 };
  const lowPsi = psiTicks[0]!;
  const highPsi = psiTicks.at(-1)!;
  const yOf = (psi: number) =>
    frame.bottom - ((psi - lowPsi) / (highPsi - lowPsi)) * (frame.bottom - frame.top);
  const page = layOut(profile, frame.left + 8, frame.right - 8);
  const drawn: Drawn[] = paths.map((path) => ({
    path,
    side: profile.supply.includes(path) ? 'supply' : 'attack',
    points: path.stations.map(({ psi }, index) => ({
      x: page.x.get(path.id)![index]!,
      y: yOf(psi),
    })),
  }));

  const text = (x: number, y: number, words: string, more: Record<string, string | number> = {}) =>
    element('text', { x, y, fill: tone.ink, ...more }, escapeXml(words));
  const parts: string[] = [];

  // Hookup and attack, told apart under the axis.
  const hookupXs = drawn.flatMap(({ path, points, side }) =>
    side === 'supply'
      ? path.regions.flatMap((region, index) =>
          region === 'hookup' ? [points[index]!.x, points[index + 1]!.x] : [],
        )
      : [],
  );
  const taken: Box[] = [];
  if (hookupXs.length > 0) {
    const left = Math.min(...hookupXs);
    const right = Math.max(...hookupXs);
    parts.push(
      element('rect', {
        x: left,
        y: frame.top,
        width: right - left,
        height: frame.bottom - frame.top,
        fill: tone.hookup,
      }),
    );
  }

  // Grid and axes.
  for (const psi of psiTicks) {
    const y = yOf(psi);
    const stroke = psi === 0 ? tone.quiet : tone.grid;
    parts.push(
      element('line', { x1: frame.left, x2: frame.right, y1: y, y2: y, stroke, 'stroke-width': 1 }),
      text(frame.left - 8, y + 4, options.formatPressure(psi), {
        'text-anchor': 'end',
        fill: tone.quiet,
      }),
    );
  }
  parts.push(...distanceAxis());

  // Limits over hose, floors under the supply side.
  const bands: { x1: number; x2: number; psi: number; over: boolean; label: string }[] = [];
  for (const { path, points } of drawn) {
    for (const [index, span] of path.spans.entries()) {
      if (span.kind !== 'hose' || !shown(span.limitPsi)) continue;
      const [x1, x2] = [points[index]!.x, points[index + 1]!.x];
      const label = `hose limit ${options.formatPressure(span.limitPsi)}`;
      const same = bands.find(
        (band) => band.over && band.psi === span.limitPsi && band.x2 >= x1 - 60,
      );
      if (same) {
        same.x1 = Math.min(same.x1, x1);
        same.x2 = Math.max(same.x2, x2);
      } else bands.push({ x1, x2, psi: span.limitPsi, over: true, label });
    }
  }
  if (profile.supply.length > 0) {
    for (const { psi, label } of options.floors ?? []) {
      bands.push({ x1: frame.left, x2: page.sceneX, psi, over: false, label });
    }
  }
  for (const band of bands) {
    const y = yOf(band.psi);
    const edge = band.over ? frame.top : yOf(Math.max(lowPsi, 0));
    parts.push(
      element('rect', {
        x: band.x1,
        y: Math.min(y, edge),
        width: band.x2 - band.x1,
        height: Math.abs(edge - y),
        fill: 'url(#band)',
      }),
      element('line', {
        x1: band.x1,
        x2: band.x2,
        y1: y,
        y2: y,
        stroke: tone.warning,
        'stroke-width': 1.2,
        'stroke-dasharray': '8 4',
      }),
    );
    const wide = textWidth(band.label, FONT);
    const x = Math.min(band.x1 + 6, frame.right - wide);
    const box = { left: x, right: x + wide, top: y - (band.over ? 17 : -3), bottom: 0 };
    box.bottom = box.top + 14;
    if (
      taken.every(
        (each) =>
          box.right < each.left ||
          box.left > each.right ||
          box.bottom < each.top ||
          box.top > each.bottom,
      )
    ) {
      taken.push(box);
      parts.push(text(x, box.bottom - 3, band.label, { fill: tone.warning, class: 'halo' }));
    }
  }

  // The paths themselves.
  for (const [order, { path, points, side }] of drawn.entries()) {
    const first = order === 0;
    for (const [index, span] of path.spans.entries()) {
      const [a, b] = [points[index]!, points[index + 1]!];
      const common = { x1: a.x, y1: a.y, x2: b.x, y2: b.y, 'stroke-linecap': 'round' };
      if (span.kind === 'pump') {
        parts.push(
          element('line', {
            ...common,
            stroke: tone.pump,
            'stroke-width': 4,
            'marker-end': b.y < a.y - 14 ? 'url(#raise)' : undefined,
          }),
        );
      } else if (span.kind === 'piece') {
        parts.push(
          element('line', {
            ...common,
            stroke: tone.water,
            'stroke-width': 2,
            'stroke-dasharray': '1.5 4',
          }),
        );
      } else {
        const limitPsi = span.limitPsi;
        const over = [path.stations[index]!, path.stations[index + 1]!].some(
          ({ psi }) => psi > limitPsi + 0.05,
        );
        parts.push(
          element('line', {
            ...common,
            stroke: over ? tone.warning : tone.water,
            'stroke-width': over ? 5 : side === 'supply' ? 3 : 2,
            'stroke-dasharray': first || side === 'attack' ? undefined : '10 4',
          }),
        );
      }
    }
  }

  // Stations and their labels.
  const wishes: LabelWish[] = [];
  const seen = new Set<string>();
  for (const { path, points } of drawn) {
    for (const [index, station] of path.stations.entries()) {
      const { x, y } = points[index]!;
      const key = `${station.piece} ${station.kind} ${x.toFixed(0)} ${y.toFixed(0)}`;
      if (seen.has(key)) continue;
      seen.add(key);
      const radius = station.kind === 'terrain' || station.kind === 'outlet' ? 1.8 : 3.5;
      parts.push(
        element('circle', {
          cx: x,
          cy: y,
          r: radius,
          fill: station.kind === 'nozzle' ? '#ffffff' : tone.ink,
          stroke: tone.ink,
          'stroke-width': 1.5,
        }),
      );
      if (station.kind === 'terrain' || station.kind === 'outlet') continue;
      const words = [nameOf(station.piece), STATION_WORDS[station.kind]].filter((each) => each);
      const flow = station.kind === 'nozzle' ? `, ${options.formatFlow(path.flowGpm)}` : '';
      wishes.push({
        x,
        y,
        text: `${words.join(' ')} ${options.formatPressure(station.psi)}${flow}`,
        optional: station.kind === 'appliance',
      });
    }
  }
  const strokes = drawn.flatMap(({ points }) =>
    points.slice(1).map((point, index): [Point, Point] => [points[index]!, point]),
  );
  const ranked = [...wishes].sort((a, b) => Number(a.optional) - Number(b.optional));
  const { placed, left } = placeLabels(ranked, { frame, fontSize: FONT, strokes, taken });
  for (const { wish, box, leader } of placed) {
    if (leader) {
      const [a, b] = leader;
      parts.push(
        element('line', {
          x1: a.x,
          y1: a.y,
          x2: b.x,
          y2: b.y,
          stroke: tone.quiet,
          'stroke-width': 0.8,
        }),
      );
    }
    parts.push(text(box.left, box.bottom - FONT * 0.24, wish.text, { class: 'halo' }));
  }
  for (const [index, wish] of left.entries()) {
    const number = String(index + 1);
    parts.push(
      element('circle', { cx: wish.x, cy: wish.y, r: 7, fill: '#ffffff', stroke: tone.ink }),
      text(wish.x, wish.y + 3.5, number, { 'text-anchor': 'middle', 'font-size': 10 }),
      text(frame.left, height + index * NOTE_PX, `${number}  ${wish.text}`),
    );
  }

  const [supply] = profile.supply;
  const headline = supply
    ? `${supply.label}, ${options.formatFlow(supply.flowGpm)}`
    : 'No water reaches the scene.';
  const fullHeight = height + (left.length > 0 ? left.length * NOTE_PX + 6 : 0);
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${fullHeight}`,
      width,
      height: fullHeight,
      role: 'img',
      'font-family': FONT_FAMILY,
      'font-size': FONT,
    },
    element('title', {}, escapeXml(title)),
    element('desc', {}, escapeXml(inWords(profile, options, nameOf))),
    element(
      'style',
      {},
      'text{font-variant-numeric:tabular-nums}.halo{paint-order:stroke;stroke:#ffffff;stroke-width:3px;stroke-linejoin:round}',
    ),
    element(
      'defs',
      {},
      element(
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
          stroke: tone.warning,
          'stroke-width': 1,
          'stroke-opacity': 0.35,
        }),
      ),
      element(
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
        element('path', { d: 'M0 0L8 4L0 8z', fill: tone.pump }),
      ),
    ),
    element('rect', { width, height: fullHeight, fill: '#ffffff' }),
    text(frame.left, 20, title, { 'font-size': 15, 'font-weight': 600 }),
    text(frame.left, 38, headline, { fill: tone.quiet }),
    ...parts,
  );

  /** Distance from where the hose drawn to scale begins, as far as it is drawn. */
  function distanceAxis(): string[] {
    const { pxPerFt, sceneX } = page;
    if (pxPerFt <= 0) return [];
    const ends = drawn.flatMap(({ path, points, side }) => {
      const firstScaled = side === 'attack' ? 0 : path.regions.lastIndexOf('hookup') + 1;
      return points.slice(firstScaled).map(({ x }) => x);
    });
    const startX = Math.min(...ends);
    const endX = Math.max(...ends, sceneX);
    const ft = (endX - startX) / pxPerFt;
    const ticks = axisTicks(0, ft, options.distanceUnitFt ?? 1, 6).filter((at) => at <= ft + 1e-6);
    const y = frame.bottom;
    const marks = ticks.flatMap((at) => {
      const x = startX + at * pxPerFt;
      return [
        element('line', { x1: x, x2: x, y1: y, y2: y + 5, stroke: tone.quiet }),
        text(x, y + 18, options.formatDistance(at), { 'text-anchor': 'middle', fill: tone.quiet }),
      ];
    });
    const named = (from: number, to: number, words: string) =>
      to - from >= textWidth(words, FONT)
        ? [text((from + to) / 2, y + 35, words, { 'text-anchor': 'middle', fill: tone.quiet })]
        : [];
    const hookup =
      hookupXs.length > 0
        ? named(Math.min(...hookupXs), Math.max(...hookupXs), 'hookup, not to scale')
        : [];
    return [
      ...marks,
      ...hookup,
      ...(profile.supply.length > 0 ? named(startX, sceneX, 'lay') : []),
      ...(profile.attack.length > 0 ? named(sceneX, endX, 'attack') : []),
    ];
  }
}

/** The drawing in words, for those who cannot see it. */
function inWords(
  profile: PressureProfile,
  { formatPressure, formatDistance, formatFlow }: ProfileSvgOptions,
  nameOf: (piece: string) => string,
): string {
  return [...profile.supply, ...profile.attack]
    .map(({ label, flowGpm, stations }) => {
      const stops = stations
        .filter(({ kind }) => kind !== 'terrain')
        .map(({ piece, kind, alongFt, psi }) => {
          const words = [nameOf(piece), STATION_WORDS[kind]].filter((each) => each).join(' ');
          return `${words} ${formatPressure(psi)} at ${formatDistance(alongFt)}`;
        });
      return `${label}, ${formatFlow(flowGpm)}: ${stops.join('; ')}.`;
    })
    .join(' ');
}
