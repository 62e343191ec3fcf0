import type { Appliance, DraftSource, Hydrant, Line, Nozzle, Plan, PortRef, Rig } from './plan.ts';

export type Piece = Hydrant | DraftSource | Rig | Appliance | Nozzle;

export type PieceKind = 'hydrant' | 'draft' | 'rig' | Appliance['kind'] | 'nozzle';

/** `out`: water leaves the piece here. */
export type PortDirection = 'in' | 'out' | 'either';

export interface Port {
  /** As in a port reference after the point. */
  name: string;
  direction: PortDirection;
  /** For people: "Side outlet 2". */
  label: string;
}

/** What a piece is, told by the fields that only its kind has. */
export function kindOf(piece: Piece): PieceKind {
  if ('testGpm' in piece) return 'hydrant';
  if ('waterElevationFt' in piece) return 'draft';
  if ('role' in piece) return 'rig';
  if ('open' in piece) return 'nozzle';
  return piece.kind;
}

/** A kind for people. */
export const kindNames: Readonly<Record<PieceKind, string>> = {
  hydrant: 'hydrant',
  draft: 'draft source',
  rig: 'rig',
  'assist-valve': 'hydrant assist valve',
  wye: 'wye',
  siamese: 'siamese',
  manifold: 'manifold',
  monitor: 'monitor',
  standpipe: 'standpipe',
  sprinkler: 'sprinkler connection',
  nozzle: 'nozzle',
};

// A plan being edited may hold any number for a moment; a list of ports must not grow with it.
const mostPorts = 50;

function series(direction: PortDirection, name: string, label: string, count: number): Port[] {
  const length = Number.isNaN(count) ? 0 : Math.max(0, Math.min(Math.floor(count), mostPorts));
  return Array.from({ length }, (_, index) => ({
    name: `${name}${index + 1}`,
    direction,
    label: `${label} ${index + 1}`,
  }));
}

const one = (direction: PortDirection, name: string, label: string): Port => ({
  name,
  direction,
  label,
});

/** Every port of a piece, inlets first. */
export function portsOf(piece: Piece): Port[] {
  if ('testGpm' in piece) {
    return [
      one('out', 'steamer', 'Steamer outlet'),
      ...series('out', 'side', 'Side outlet', piece.sideOutlets),
    ];
  }
  if ('waterElevationFt' in piece) return [one('out', 'water', 'Water')];
  if ('role' in piece) {
    return [
      ...series('in', 'intake', 'Intake', piece.intakes),
      ...series('out', 'discharge', 'Discharge', piece.discharges),
    ];
  }
  if ('open' in piece) return [one('in', 'inlet', 'Inlet')];
  switch (piece.kind) {
    case 'assist-valve':
      return [
        one('in', 'pump-discharge', 'Pump discharge'),
        one('out', 'pump-suction', 'Pump suction'),
        one('out', 'supply', 'Supply'),
      ];
    case 'wye':
      return [one('in', 'inlet', 'Inlet'), ...series('out', 'outlet', 'Outlet', 2)];
    case 'siamese':
      return [...series('in', 'inlet', 'Inlet', piece.inlets), one('out', 'outlet', 'Outlet')];
    case 'manifold':
    case 'standpipe':
      return [
        ...series('in', 'inlet', 'Inlet', piece.inlets),
        ...series('out', 'outlet', 'Outlet', piece.outlets),
      ];
    case 'monitor':
      return [...series('in', 'inlet', 'Inlet', piece.inlets), one('out', 'tip', 'Tip')];
    case 'sprinkler':
      return series('in', 'inlet', 'Inlet', piece.inlets);
  }
}

/** All pieces of a plan: sources, rigs, appliances, nozzles. */
export function piecesOf(plan: Plan): Piece[] {
  return [...plan.hydrants, ...plan.drafts, ...plan.rigs, ...plan.appliances, ...plan.nozzles];
}

/** The piece of that id, or undefined. */
export function pieceOf(plan: Plan, id: string): Piece | undefined {
  return piecesOf(plan).find((piece) => piece.id === id);
}

/** Splits `H-114.steamer`; a port name has no point, so the last one divides. */
export function splitPortRef(ref: PortRef): { pieceId: string; port: string } {
  const point = ref.lastIndexOf('.');
  if (point < 0) return { pieceId: ref, port: '' };
  return { pieceId: ref.slice(0, point), port: ref.slice(point + 1) };
}

/** The piece and port behind a reference; undefined where either does not exist. */
export function portOf(plan: Plan, ref: PortRef): { piece: Piece; port: Port } | undefined {
  const { pieceId, port: name } = splitPortRef(ref);
  const piece = pieceOf(plan, pieceId);
  const port = piece && portsOf(piece).find((candidate) => candidate.name === name);
  return piece && port && { piece, port };
}

/** What already takes a port up: the ids of lines, valves and nozzles that sit on it. */
export function occupantsOf(plan: Plan, ref: PortRef): string[] {
  const lines = plan.lines.filter((line) => line.from === ref || line.to === ref);
  const valves = plan.appliances.filter(
    (appliance) => appliance.kind === 'assist-valve' && appliance.on === ref,
  );
  const nozzles = plan.nozzles.filter(
    (nozzle) => nozzle.on === ref || (nozzle.on !== undefined && ref === `${nozzle.id}.inlet`),
  );
  return [...lines, ...valves, ...nozzles].map((occupant) => occupant.id);
}

/** Ports of a piece that nothing is on yet. */
export function freePortsOf(plan: Plan, piece: Piece, direction?: PortDirection): Port[] {
  return portsOf(piece).filter(
    (port) =>
      (direction === undefined || port.direction === direction) &&
      occupantsOf(plan, `${piece.id}.${port.name}`).length === 0,
  );
}

/** A piece's name for people: its own, else its kind and id. */
export function nameOf(piece: Piece): string {
  if (piece.name) return piece.name;
  const kind = kindNames[kindOf(piece)];
  return `${kind[0]?.toUpperCase()}${kind.slice(1)} ${piece.id}`;
}

/** `Hydrant 114 to Engine 3`: a line by what it joins, or by its own name. */
export function describeLine(plan: Plan, line: Line): string {
  if (line.name) return line.name;
  const end = (ref: PortRef) => {
    const { pieceId } = splitPortRef(ref);
    const piece = pieceOf(plan, pieceId);
    return piece ? nameOf(piece) : pieceId;
  };
  return `${end(line.from)} to ${end(line.to)}`;
}
