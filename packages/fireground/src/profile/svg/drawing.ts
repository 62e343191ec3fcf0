import type { PressureProfile, ProfilePath } from '../profile.ts';
import { type AcrossPage, layOut } from './lay-out.ts';
import type { ProfileSvgOptions } from './options.ts';
import type { Box, Point } from './place-labels.ts';
import { textWidth } from './text-width.ts';
import { axisTicks } from './ticks.ts';
import { TONES, type Tone } from './tones.ts';
import { element, escapeXml } from './xml.ts';

export const FONT_PX = 12;

/** A hose limit further above the pressures than this share would squeeze them: it is not drawn. */
const LIMIT_SHARE = 1.5;

/** A path with its stations' places on the page. */
export interface DrawnPath {
  path: ProfilePath;
  side: 'supply' | 'attack';
  points: Point[];
}

/** Everything that the parts of the drawing share. */
export interface Drawing {
  profile: PressureProfile;
  options: ProfileSvgOptions;
  tone: Tone;
  /** Inside the axes. */
  frame: Box;
  page: AcrossPage;
  paths: DrawnPath[];
  psiTicks: number[];
  yOf: (psi: number) => number;
  nameOf: (piece: string) => string;
  /** Whether a hose limit is near enough to the pressures to be drawn. */
  showsLimit: (limitPsi: number) => boolean;
}

/** Scales and places for a page of that size. */
export function drawingOf(
  profile: PressureProfile,
  options: ProfileSvgOptions,
  width: number,
  height: number,
): Drawing {
  const all = [...profile.supply, ...profile.attack];
  const pressures = all.flatMap(({ stations }) => stations.map(({ psi }) => psi));
  const greatest = Math.max(20, ...pressures);
  const showsLimit = (limitPsi: number) => limitPsi <= LIMIT_SHARE * greatest;
  const limits = all
    .flatMap(({ spans }) => spans.map((span) => (span.kind === 'hose' ? span.limitPsi : 0)))
    .filter(showsLimit);
  const psiTicks = axisTicks(
    Math.min(0, ...pressures),
    1.08 * Math.max(greatest, ...limits),
    options.pressureUnitPsi ?? 1,
    6,
  );
  const axisWidth = Math.max(
    ...psiTicks.map((psi) => textWidth(options.formatPressure(psi), FONT_PX)),
  );
  const frame = { left: axisWidth + 20, right: width - 24, top: 52, bottom: height - 46 };
  const [low, high] = [psiTicks[0]!, psiTicks.at(-1)!];
  const yOf = (psi: number) =>
    frame.bottom - ((psi - low) / (high - low)) * (frame.bottom - frame.top);
  const page = layOut(profile, frame.left + 8, frame.right - 8);
  const drawn = (side: DrawnPath['side']) => (path: ProfilePath) => ({
    path,
    side,
    points: path.stations.map(({ psi }, index) => ({
      x: page.x.get(path.id)![index]!,
      y: yOf(psi),
    })),
  });
  return {
    profile,
    options,
    tone: TONES[options.tone ?? 'light'],
    frame,
    page,
    paths: [...profile.supply.map(drawn('supply')), ...profile.attack.map(drawn('attack'))],
    psiTicks,
    yOf,
    nameOf: options.nameOf ?? ((piece) => piece),
    showsLimit,
  };
}

/** A line of text at its baseline. */
export function textAt(
  x: number,
  y: number,
  words: string,
  fill: string,
  more: Record<string, string | number> = {},
): string {
  return element('text', { x, y, fill, ...more }, escapeXml(words));
}

/** A straight stroke. */
export function strokeAt(
  [a, b]: readonly [Point, Point],
  stroke: string,
  width: number,
  more: Record<string, string | undefined> = {},
): string {
  return element('line', {
    x1: a.x,
    y1: a.y,
    x2: b.x,
    y2: b.y,
    stroke,
    'stroke-width': width,
    ...more,
  });
}
