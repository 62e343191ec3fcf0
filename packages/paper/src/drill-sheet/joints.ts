/** How a plan's pieces are joined, told as crews join them: each line by one crew, looked over by the other. */
import {
  type Duty,
  formatHoseSize,
  hoseCatalogue,
  type Line,
  nameOf,
  type Plan,
  pieceOf,
  portOf,
  type Rig,
  type RigOrder,
  splitPortRef,
} from '@plugside/fireground';
import type { Figures } from '../sheet/figures.ts';
import type { DrillStep } from './data.ts';

/** What the steps are told with. */
export interface Telling {
  plan: Plan;
  orders: readonly RigOrder[];
  figures: Figures;
  /** Each rig's part as the supply was chosen: who lays is told there, none is inferred. */
  duties: readonly Duty[];
  /** By line that ends at an engine at the fire other than the scene's rig: that engine. */
  /** What comes to the scene, where that is less than is wanted [gpm]. */
  comesGpm?: number;
  takers?: ReadonlyMap<string, string>;
}

/** The engine that a line ends at, where the plan draws it to the scene's rig for another. */
export function takersOf({ scene, rigs, sceneEngines = [] }: Plan): Map<string, string> {
  const drawn = rigs.find(({ id }) => id === scene);
  return new Map(
    sceneEngines
      .filter(({ name }) => !drawn || name !== nameOf(drawn))
      .flatMap(({ name, lines = [] }) => lines.map((line): [string, string] => [line, name])),
  );
}

/** Where a line ends: "Engine 1, intake 1"; at another engine at the fire "Ladder 1, intake". */
function endWords({ plan, takers }: Telling, { id, to }: Line): string {
  const taker = takers?.get(id);
  return taker ? `${taker}, intake` : portWords(plan, to);
}

export const owner = (ref: string) => splitPortRef(ref).pieceId;

/** Hose shorter than this is a hookup that nobody lays from an engine [ft]. Ours. */
const LEAST_LAY_FT = 75;

/** Lines into and out of a rig. */
export function linesOf({ lines }: Plan, rig: Pick<Rig, 'id'>): { into: Line[]; out: Line[] } {
  return {
    into: lines.filter(({ to }) => owner(to) === rig.id),
    out: lines.filter(({ from }) => owner(from) === rig.id),
  };
}

/** The crew at the upper end connects a line between two engines; the one below looks it over. */
export function connectedBelow(plan: Plan, line: Line): boolean {
  return !plan.rigs.some(({ id }) => id === owner(line.from));
}

export function connect(telling: Telling, line: Line): DrillStep {
  const { plan, figures } = telling;
  const gate = typeof line.valve === 'object' ? '; its valve is gated later' : '';
  const shut = line.valve === 'shut' ? '; its valve stays shut' : '';
  return {
    text: `Connect ${hoseOf(line, figures)}: ${portWords(plan, line.from)} to ${endWords(telling, line)}${gate}${shut}.`,
  };
}

/** Of the lines that come to an engine from another: looked over before water. */
export function check(telling: Telling, line: Line): DrillStep {
  return {
    text: `Check ${hoseOf(line, telling.figures)} on ${endWords(telling, line)}: locked, no twist, its gate shut, air bleeder open.`,
  };
}

export function hoseOf(line: Line, { full, units }: Figures): string {
  const count = line.count > 1 ? `${line.count} lines of ` : '';
  return `${count}${full(line.lengthFt, 'length')} of ${formatHoseSize(line.hose, units)}`;
}

/** Lays that a rig makes: its own discharge to the next engine, or from the hydrant to itself where it is the last. */
export function layStep(telling: Telling, rig: Rig): DrillStep[] {
  const { plan, figures } = telling;
  if (telling.duties.length > 0) return [];
  const { into, out } = linesOf(plan, rig);
  const isLaid = ({ hose, lengthFt }: Line) =>
    lengthFt >= LEAST_LAY_FT && hoseCatalogue[hose].diameterIn >= 2.5;
  const hazard = 'Stand clear of hose that pays out: a length that snags breaks legs.';
  const reverse = out
    .filter((line) => isLaid(line) && plan.rigs.some(({ id }) => id === owner(line.to)))
    .map((line) => ({
      text: `Lay ${hoseOf(line, figures)} from ${pieceWords(plan, line.to)} to your place: to one side of the road, no twists, a length to spare.`,
      hazard,
    }));
  const forward = into
    .filter((line) => isLaid(line) && connectedBelow(plan, line))
    .map((line) => ({
      text: `Lay ${hoseOf(line, figures)} from ${waterAt(plan, line.from)} to your place; leave a crew there with wrench and fittings. To one side of the road, no twists.`,
      hazard,
    }));
  return [...forward, ...reverse];
}

/** "H-114", also where the line leaves the valve that stands on it. */
function waterAt(plan: Plan, ref: string): string {
  const piece = pieceOf(plan, owner(ref));
  if (piece && 'on' in piece && piece.on) return pieceWords(plan, piece.on);
  return pieceWords(plan, ref);
}

export function pieceWords(plan: Plan, ref: string): string {
  const piece = pieceOf(plan, owner(ref));
  return piece ? nameOf(piece) : owner(ref);
}

/** "H-114, steamer outlet" */
export function portWords(plan: Plan, ref: string): string {
  const found = portOf(plan, ref);
  if (!found) return pieceWords(plan, ref);
  const { piece, port } = found;
  if ('open' in piece) return nameOf(piece);
  return `${nameOf(piece)}, ${port.label[0]!.toLowerCase()}${port.label.slice(1)}`;
}

export function listed(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? '';
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
