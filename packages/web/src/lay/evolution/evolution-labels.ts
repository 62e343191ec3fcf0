/** What is written on the evolution, and what it must not cover. */
import { nameOf, type Plan, pieceOf, type SupplyState } from '@plugside/fireground';
import type { Units } from '../../editing/use-units.ts';
import { alongCurve } from '../scene/curves.ts';
import type { DrawingSizes } from '../scene/drawing-sizes.ts';
import type { EvolutionScene } from '../scene/evolution-scene.ts';
import type { FittingFigure } from '../scene/figures.ts';
import type { LabelSpec } from '../scene/LabelLayer.tsx';
import { type Rect, rectsAlong } from '../scene/label-placement.ts';

export interface EvolutionLabels {
  labels: LabelSpec[];
  obstacles: Rect[];
  soft: Rect[];
}

/** How far each figure reaches from its origin at full size: left, top, right, bottom [px]. */
const EXTENTS: Partial<Record<FittingFigure['kind'], readonly [number, number, number, number]>> = {
  hydrant: [-18, -31, 18, 42],
  valve: [-21, -14, 21, 22],
  draft: [-35, -6, 35, 22],
  nozzle: [0, -9, 22, 9],
};

/** Collects labels and what they keep off. */
export function evolutionLabels(
  plan: Plan,
  state: SupplyState,
  scene: EvolutionScene,
  sizes: DrawingSizes,
  units: Units,
): EvolutionLabels {
  const labels: LabelSpec[] = [];
  const obstacles: Rect[] = [];
  const unit = sizes.compact ? 0.62 : 1;
  for (const rig of scene.rigs) {
    obstacles.push({ x: rig.x - 2, y: rig.y - 2, width: rig.width + 4, height: rig.height * 1.25 });
    const piece = pieceOf(plan, rig.id);
    if (!piece) continue;
    labels.push({
      id: `rig:${rig.id}`,
      x: rig.x + rig.width / 2,
      y: rig.y + rig.height * 1.22,
      alternates: [[rig.x + rig.width / 2, rig.y - 2]],
      lines: [nameOf(piece)],
      look: 'strong',
      priority: 9,
      sides: ['below', 'above'],
      gap: 3,
      reach: sizes.compact ? 9 : 30,
    });
  }
  for (const one of scene.fittings) {
    const [left, top, right, bottom] = EXTENTS[one.kind] ?? [-11, -11, 11, 11];
    obstacles.push({
      x: one.x + left * unit,
      y: one.y + top * unit,
      width: (right - left) * unit,
      height: (bottom - top) * unit,
    });
    const piece = pieceOf(plan, one.id);
    if (!piece) continue;
    if (one.kind === 'hydrant' || one.kind === 'draft') {
      const found = state.hydrants.find((hydrant) => hydrant.id === one.id);
      const main = found && !sizes.compact ? [`main ${units.text(found.mainPsi, 'pressure')}`] : [];
      labels.push({
        id: `source:${one.id}`,
        x: one.x,
        y: one.y,
        lines: [nameOf(piece), ...main],
        look: 'strong',
        priority: 10,
        sides: ['above', 'above right', 'below'],
        gap: 34 * unit,
        reach: 36,
      });
    }
    if (one.kind === 'valve') {
      const found = state.assistValves.find((valve) => valve.id === one.id);
      if (found) {
        labels.push({
          id: `valve:${one.id}`,
          x: one.x,
          y: one.y,
          lines: [`clapper ${found.clapper}`],
          priority: 7,
          sides: ['above', 'above right'],
          gap: 18 * unit,
          reach: 30,
        });
      }
    }
    if (one.kind === 'wye' || one.kind === 'manifold' || one.kind === 'siamese') {
      labels.push({
        id: `fitting:${one.id}`,
        x: one.x,
        y: one.y,
        lines: [nameOf(piece)],
        look: 'soft',
        priority: 2,
        sides: ['below', 'above'],
        gap: 12,
        reach: 18,
      });
    }
  }
  labels.push(...hoseLabels(plan, state, scene, sizes, units));
  const soft = scene.hoses.flatMap((hose) => rectsAlong(hose.curve.points, hose.widthPx + 4));
  const ground = scene.tracks.flatMap((track) => rectsAlong(track.ground, 4));
  return { labels, obstacles, soft: [...soft, ...ground] };
}

function hoseLabels(
  plan: Plan,
  state: SupplyState,
  scene: EvolutionScene,
  sizes: DrawingSizes,
  units: Units,
): LabelSpec[] {
  const laidTo = new Map<string, number>();
  return scene.hoses.flatMap((hose): LabelSpec[] => {
    const line = plan.lines.find((one) => one.id === hose.line);
    const found = state.lines.find((one) => one.id === hose.line);
    if (!line || !found || hose.beside) return [];
    const flow = Math.abs(found.flowGpm);
    const still = flow < 0.5;
    const shut = line.valve === 'shut';
    const amount = still ? (shut ? 'shut' : 'no flow') : units.text(flow, 'flow');
    // Lines laid side by side are labelled one after the other along them.
    const nth = laidTo.get(line.to.split('.')[0]!) ?? 0;
    laidTo.set(line.to.split('.')[0]!, nth + 1);
    const share = hose.region === 'lay' ? [0.68, 0.4, 0.54][nth % 3]! : 0.5;
    const { at } = alongCurve(hose.curve.points, share);
    if (hose.region === 'attack') {
      const end = hose.curve.points.at(-1)!;
      const nozzle = scene.fittings.some(
        (one) => one.kind === 'nozzle' && Math.hypot(one.x - end[0], one.y - end[1]) < 2,
      );
      const master = plan.nozzles.some(
        (one) => one.use === 'master stream' && one.on?.startsWith(`${line.to.split('.')[0]}.`),
      );
      const size = `${units.hose(line.hose)} · `;
      return [
        {
          id: `hose:${hose.line}`,
          x: nozzle ? end[0] + (master ? 32 : 24) : at[0],
          y: nozzle ? end[1] : at[1],
          lines: [
            sizes.compact
              ? units.number(flow, 'flow')
              : `${size}${still ? amount : units.number(flow, 'flow')}`,
          ],
          look: still ? 'soft' : 'plain',
          priority: 6,
          sides: nozzle ? ['right'] : ['above', 'below'],
          gap: 2,
          reach: 10,
        },
      ];
    }
    if (hose.region === 'lay') {
      const friction = `${units.number(found.frictionPsi, 'pressure')} friction`;
      const height =
        Math.abs(found.elevationPsi) < 0.5
          ? ''
          : ` · ${units.number(found.elevationPsi, 'pressure')} height`;
      const over = found.greatestPsi > found.limitPsi + 0.05;
      const warning = over
        ? [
            `▲ ${units.number(found.greatestPsi, 'pressure')}, at most ${units.number(found.limitPsi, 'pressure')}`,
          ]
        : [];
      const detail = still ? [] : [`${friction}${height}, ${units.of(1, 'pressure').unit}`];
      return [
        {
          id: `hose:${hose.line}`,
          x: at[0],
          y: at[1],
          lines: sizes.compact
            ? [amount, ...warning]
            : [`${amount}, ${units.hose(line.hose)}`, ...detail, ...warning],
          look: over ? 'warning' : 'water',
          priority: 5,
          sides: ['above', 'below'],
          gap: 12,
          reach: 60,
        },
      ];
    }
    return [
      {
        id: `hose:${hose.line}`,
        x: at[0],
        y: at[1],
        alternates: [0.35, 0.65, 0.25, 0.75, 0.15, 0.85].map(
          (share) => alongCurve(hose.curve.points, share).at,
        ),
        others: scene.hoses
          .filter((other) => other !== hose && other.region !== 'attack')
          .flatMap((other) => rectsAlong(other.curve.points, other.widthPx)),
        lines: [sizes.compact && !still ? units.number(flow, 'flow') : amount],
        look: still ? 'soft' : 'water',
        priority: 4 + flow / 1e5,
        sides: line.to.endsWith('.pump-discharge')
          ? ['right', 'above right', 'below right', 'left']
          : ['left', 'below', 'below left', 'above left', 'right', 'above right', 'below right'],
        gap: 9,
        reach: sizes.compact ? 9 : 36,
      },
    ];
  });
}
