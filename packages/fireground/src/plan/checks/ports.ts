import { issueAt, type PlanIssue } from '../issue.ts';
import { didYouMean } from '../nearest.ts';
import type { Plan, PortRef } from '../plan.ts';
import {
  kindNames,
  kindOf,
  type Piece,
  type Port,
  piecesOf,
  portsOf,
  splitPortRef,
} from '../ports.ts';

type Wanted = 'in' | 'out';

/** One use of a port: a line's end, a valve or nozzle that sits on it. */
interface PortUse {
  path: string;
  ref: PortRef;
  /** Which way water must be able to go through it. */
  wanted: Wanted;
  user: string;
}

function usesOf(plan: Plan): PortUse[] {
  const uses: PortUse[] = [];
  plan.appliances.forEach((part, index) => {
    if (part.kind !== 'assist-valve') return;
    uses.push({ path: `appliances[${index}].sits-on`, ref: part.on, wanted: 'out', user: part.id });
  });
  plan.nozzles.forEach((part, index) => {
    if (part.on === undefined) return;
    uses.push({ path: `nozzles[${index}].sits-on`, ref: part.on, wanted: 'out', user: part.id });
  });
  plan.lines.forEach((line, index) => {
    uses.push({ path: `lines[${index}].from`, ref: line.from, wanted: 'out', user: line.id });
    uses.push({ path: `lines[${index}].to`, ref: line.to, wanted: 'in', user: line.id });
  });
  return uses;
}

const listed = (piece: Piece, ports: readonly Port[]) =>
  ports.map((port) => `${piece.id}.${port.name}`).join(', ');

/** The port behind a use, or why there is none. */
function resolve(
  pieces: ReadonlyMap<string, Piece>,
  { path, ref, wanted }: PortUse,
): { piece: Piece; port: Port } | PlanIssue {
  const { pieceId, port: portName } = splitPortRef(ref);
  const piece = pieces.get(pieceId);
  if (!piece) {
    const ids = [...pieces.keys()];
    return issueAt(path, ref, {
      fault: `there is no piece "${pieceId}"${didYouMean(pieceId, ids)}`,
      allowed: `a port of one of ${ids.slice(0, 12).join(', ')}${ids.length > 12 ? ', …' : ''}`,
      remedy: 'Correct the id, or add the piece.',
    });
  }
  const ports = portsOf(piece);
  const kind = kindNames[kindOf(piece)];
  const port = ports.find((candidate) => candidate.name === portName);
  if (!port) {
    const names = ports.map((candidate) => candidate.name);
    return issueAt(path, ref, {
      fault: `${kind} ${piece.id} has no port "${portName}"${didYouMean(portName, names)}`,
      allowed: listed(piece, ports),
      remedy: 'Name one of its ports.',
    });
  }
  if (port.direction !== 'either' && port.direction !== wanted) {
    const fitting = ports.filter((candidate) => candidate.direction !== port.direction);
    const way = wanted === 'in' ? 'go in' : 'come out';
    return issueAt(path, ref, {
      fault: `water does not ${way} at the ${port.label.toLowerCase()} of ${kind} ${piece.id}`,
      allowed: listed(piece, fitting) || `no port of ${piece.id}: it has none of that kind`,
      remedy: wanted === 'in' ? 'Lead the line to an inlet.' : 'Take water from an outlet.',
    });
  }
  return { piece, port };
}

/** Tips take a nozzle, steamers a valve; every other use of those ports is a slip. */
function fitIssue(use: PortUse, piece: Piece, port: Port): PlanIssue | null {
  if (use.path.startsWith('lines') && port.name === 'tip') {
    return issueAt(use.path, use.ref, {
      fault: 'no hose goes on the tip of a monitor',
      allowed: 'a nozzle with sits-on',
      remedy: `Give the nozzle sits-on: ${use.ref} and take this line out.`,
    });
  }
  if (use.path.startsWith('appliances') && port.name !== 'steamer') {
    return issueAt(use.path, use.ref, {
      fault: `a hydrant assist valve does not sit on the ${port.label.toLowerCase()} of ${piece.id}`,
      allowed: "a hydrant's steamer outlet",
      remedy: 'Write the hydrant and its steamer, for instance H-114.steamer.',
    });
  }
  return null;
}

/** Every port named exists, passes water the right way, and is used once. */
export function portIssues(plan: Plan): PlanIssue[] {
  const pieces = new Map(piecesOf(plan).map((piece) => [piece.id, piece]));
  const users = new Map<PortRef, string>();
  for (const nozzle of plan.nozzles) {
    if (nozzle.on !== undefined) users.set(`${nozzle.id}.inlet`, `its own sits-on: ${nozzle.on}`);
  }
  const issues: PlanIssue[] = [];
  for (const use of usesOf(plan)) {
    const found = resolve(pieces, use);
    if (!('port' in found)) {
      issues.push(found);
      continue;
    }
    const unfit = fitIssue(use, found.piece, found.port);
    if (unfit) issues.push(unfit);
    const taken = users.get(use.ref);
    if (taken !== undefined) {
      const free = portsOf(found.piece).filter(
        (port) =>
          port.direction === found.port.direction && !users.has(`${found.piece.id}.${port.name}`),
      );
      issues.push(
        issueAt(use.path, use.ref, {
          fault: `${use.ref} is taken by ${taken}`,
          allowed: listed(found.piece, free) || `no free port is left on ${found.piece.id}`,
          remedy: 'Use another port, or a wye or siamese, or count for like lines side by side.',
        }),
      );
      continue;
    }
    users.set(use.ref, use.user);
  }
  return issues;
}

/** A line joins two pieces. */
export function lineEndIssues(plan: Plan): PlanIssue[] {
  return plan.lines.flatMap((line, index) => {
    const from = splitPortRef(line.from).pieceId;
    if (from !== splitPortRef(line.to).pieceId) return [];
    return [
      issueAt(`lines[${index}].to`, line.to, {
        fault:
          line.from === line.to
            ? `the line goes from ${line.from} to itself`
            : `the line leads from ${from} back to ${from}`,
        allowed: 'a port of another piece',
        remedy: 'Lead the line to the piece that takes its water.',
      }),
    ];
  });
}
