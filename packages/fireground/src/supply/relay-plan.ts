/** Where the pumps of a relay stand, and what each is set to. */
import {
  applianceLossPsi,
  hoseFrictionPsi,
  PSI_PER_FT,
  parallelCoefficient,
} from '@plugside/hydraulics';
import { adapterLoss } from '../catalogue/appliances.ts';
import { coefficientFor, hoseCatalogue } from '../catalogue/hose.ts';
import { defaultLimits, hosePressureLimit } from '../catalogue/limits.ts';
import { capabilityAt, capabilityFor } from '../catalogue/pumps.ts';
import type { DepartmentValues, HoseSize, Rig } from '../plan/plan.ts';
import { elevationAtFt, type GroundLine, groundPoints } from './ground.ts';

/** Hose from one place of the lay to the next, in order from the water. */
export interface RelayHose {
  /** One or two lines side by side. */
  lines: readonly HoseSize[];
  lengthFt: number;
}

export interface RelayQuestion {
  ground: GroundLine;
  /** Together as long as the ground. Where one kind ends a pump stands, or of single lines an adapter joins them. */
  hose: readonly RelayHose[];
  /** Flow to carry [gpm, above 0]. */
  flowGpm: number;
  /** In the order in which they would stand from the water; the attack engine is not one of them. */
  pumps: readonly Pick<Rig, 'ratedGpm' | 'capability'>[];
  department?: DepartmentValues;
  /** Pressure at the first pump's intake at this flow [psi]; the least for a hose-fed pump where left out. */
  sourceIntakePsi?: number;
  /** No pump above this, whatever its hose bears [psi]. */
  mostPdpPsi?: number;
}

export interface RelayStation {
  /** From the water along the lay [ft]. */
  alongFt: number;
  elevationFt: number;
  intakePsi: number;
  /** Discharge pressure that brings the next intake its least and keeps the hose between under pressure [psi]. */
  pdpPsi: number;
  /** At its discharge when nothing flows: its own setting, or what comes through from the pumps before [psi]. */
  restPsi: number;
  /** Hose from here to the next pump, or to the attack engine [ft]. */
  legFt: number;
  lines: readonly HoseSize[];
  /** Where the hose from here changes size at an adapter. */
  change?: { hose: HoseSize; alongFt: number };
}

export type RelayPlan =
  | { possible: true; stations: RelayStation[]; attackIntakePsi: number }
  | { possible: false; reason: 'too far' | 'hose at rest' };

/** Room for rounding in comparisons of pressure [psi]. */
const SLACK_PSI = 1e-6;

/**
 * A relay with as few pumps as carry the flow, and of those the placing whose highest discharge
 * pressure is lowest.
 *
 * Pumps stand at whole sections of hose. Between pumps the pressure never falls under the next
 * intake's least (also on a hill between) nor rises over the hose's limit, flowing or at rest,
 * when every pump's setting still stands and pressure from above comes through. No pump is asked
 * for more net pressure than it has at the flow.
 *
 * L = (PDP − least)·100/(C·(Q/100)² + 0.434·slope) is what it comes to on an even slope:
 * "Relay Pumping Operations" lesson p3, Firehouse.
 *
 * @returns stations from the water on; or why there is no such relay with these pumps
 * @throws RangeError for hose that is not as long as the ground, or no flow
 */
export function relayPlan(question: RelayQuestion): RelayPlan {
  check(question);
  let reason: 'too far' | 'hose at rest' = 'too far';
  for (let pumps = 1; pumps <= question.pumps.length; pumps++) {
    const stations = placed(question, pumps);
    if (!stations) continue;
    if (restHolds(question, stations))
      return { possible: true, stations, attackIntakePsi: leastPsi(question) };
    reason = 'hose at rest';
  }
  return { possible: false, reason };
}

/** Greatest flow that a relay of all these pumps carries [gpm], to within 1; 0 where none. */
export function relayMostGpm(question: Omit<RelayQuestion, 'flowGpm'>, atMostGpm: number): number {
  const carries = (flowGpm: number) => relayPlan({ ...question, flowGpm }).possible;
  if (carries(atMostGpm)) return atMostGpm;
  let low = 0;
  let high = atMostGpm;
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (carries(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function check({ ground, hose, flowGpm, pumps }: RelayQuestion): void {
  if (!(flowGpm > 0) || !Number.isFinite(flowGpm)) {
    throw new RangeError(`flowGpm is ${flowGpm}; give a flow above 0.`);
  }
  const totalFt = hose.reduce((sum, { lengthFt }) => sum + lengthFt, 0);
  if (!(ground.lengthFt > 0) || Math.abs(totalFt - ground.lengthFt) > 0.01) {
    throw new RangeError(
      `The hose is ${totalFt} ft and the ground ${ground.lengthFt} ft; both must be the same, above 0.`,
    );
  }
  if (pumps.length === 0) throw new RangeError('pumps is empty; a relay has at least one.');
}

function leastPsi({ department }: RelayQuestion): number {
  return department?.limits?.hoseFedIntakePsi ?? defaultLimits.hoseFedIntakePsi;
}

/** A place along the lay where a pump may stand, or where height counts. */
interface Mark {
  alongFt: number;
  elevationFt: number;
  stand: boolean;
  /** No hose goes on from here without a pump: the fire, or where the number of lines changes. */
  end: boolean;
}

function marksOf({ ground, hose }: RelayQuestion): Mark[] {
  const marks = new Map<number, Mark>();
  const add = (alongFt: number, more: Partial<Mark>) => {
    const before = marks.get(alongFt) ?? {
      alongFt,
      elevationFt: elevationAtFt(ground, alongFt),
      stand: false,
      end: false,
    };
    marks.set(alongFt, { ...before, ...more });
  };
  let from = 0;
  let before: RelayHose | undefined;
  for (const part of hose) {
    const { lines, lengthFt } = part;
    const section = Math.max(...lines.map((size) => hoseCatalogue[size].sectionFt));
    add(from, { stand: true, end: !before || !joins(before, part) });
    before = part;
    for (let along = section; along < lengthFt; along += section)
      add(from + along, { stand: true });
    from += lengthFt;
  }
  add(ground.lengthFt, { stand: true, end: true });
  for (const { alongFt } of groundPoints(ground)) add(alongFt, {});
  return [...marks.values()].sort((one, two) => one.alongFt - two.alongFt);
}

/** Whether an adapter joins two kinds of hose. */
function joins(before: RelayHose, after: RelayHose): boolean {
  return before.lines.length === 1 && after.lines.length === 1;
}

function hoseFrom(hose: readonly RelayHose[], alongFt: number): RelayHose {
  let end = 0;
  for (const part of hose) {
    end += part.lengthFt;
    if (alongFt < end - 1e-9) return part;
  }
  return hose[hose.length - 1]!;
}

/** Lowest of the highest discharge pressures, by places reached with one pump more each round. */
function placed(question: RelayQuestion, count: number): RelayStation[] | undefined {
  const marks = marksOf(question);
  const last = marks.length - 1;
  let best: { highest: number; via: number[] }[] = [];
  best[0] = { highest: 0, via: [] };
  for (let pump = 0; pump < count; pump++) {
    const next: typeof best = [];
    for (let at = 0; at < last; at++) {
      const before = best[at];
      if (!before || !marks[at]!.stand) continue;
      for (const { to, pdpPsi } of reachesFrom(question, marks, at, pump)) {
        if (pump === count - 1 && to !== last) continue;
        const highest = Math.max(before.highest, pdpPsi);
        const known = next[to];
        if (!known || highest < known.highest - SLACK_PSI)
          next[to] = { highest, via: [...before.via, at] };
      }
    }
    best = next;
  }
  const found = best[last];
  return found?.via.map((at, pump) =>
    station(question, marks, at, found.via[pump + 1] ?? last, pump),
  );
}

/** Places that a pump reaches from a mark, with the discharge pressure each takes. */
function reachesFrom(
  question: RelayQuestion,
  marks: readonly Mark[],
  at: number,
  pump: number,
): { to: number; pdpPsi: number }[] {
  const { flowGpm, department = {}, mostPdpPsi = Number.POSITIVE_INFINITY } = question;
  const least = leastPsi(question);
  const start = marks[at]!;
  let part = hoseFrom(question.hose, start.alongFt);
  let limitPsi = linesLimitPsi(part.lines, department);
  const pumpPsi = Math.min(mostPdpPsi, pumpMostPsi(question, pump));
  const reached: { to: number; pdpPsi: number }[] = [];
  let needPsi = Number.NEGATIVE_INFINITY;
  let dropPsi = 0;
  let lossPsi = 0;
  let changed = false;
  for (let to = at + 1; to < marks.length; to++) {
    const [last, mark] = [marks[to - 1]!, marks[to]!];
    const here = hoseFrom(question.hose, last.alongFt);
    if (here !== part) {
      if (changed) break;
      changed = true;
      part = here;
      limitPsi = Math.min(limitPsi, linesLimitPsi(part.lines, department));
      lossPsi += applianceLossPsi(adapterLoss, flowGpm);
    }
    lossPsi += frictionPerFt(part.lines, flowGpm, department) * (mark.alongFt - last.alongFt);
    const risePsi = PSI_PER_FT * (mark.elevationFt - start.elevationFt);
    needPsi = Math.max(needPsi, least + lossPsi + risePsi);
    dropPsi = Math.max(dropPsi, -risePsi);
    // At rest there is no friction to take off: the lowest place bears the setting and its depth.
    const most = Math.min(pumpPsi, limitPsi, limitPsi - dropPsi);
    if (needPsi > most + SLACK_PSI) break;
    if (mark.stand) reached.push({ to, pdpPsi: Math.max(needPsi, 0) });
    if (mark.end) break;
  }
  return reached;
}

function frictionPerFt(
  lines: readonly HoseSize[],
  flowGpm: number,
  department: DepartmentValues,
): number {
  const coefficients = lines.map((hose) => coefficientFor({ department }, { hose }).coefficient);
  return hoseFrictionPsi(parallelCoefficient(coefficients), flowGpm, 1);
}

function linesLimitPsi(lines: readonly HoseSize[], department: DepartmentValues): number {
  return Math.min(...lines.map((hose) => hosePressureLimit({ department }, { hose }).limitPsi));
}

/** What a pump can discharge at the flow [psi]; 0 past its wall. */
function pumpMostPsi(question: RelayQuestion, pump: number): number {
  const rig = question.pumps[pump]!;
  const { points } = capabilityFor(rig);
  if (question.flowGpm > points[points.length - 1]![0]) return 0;
  return intakePsi(question, pump) + capabilityAt(rig, question.flowGpm);
}

function intakePsi(question: RelayQuestion, pump: number): number {
  return pump === 0 ? (question.sourceIntakePsi ?? leastPsi(question)) : leastPsi(question);
}

function station(
  question: RelayQuestion,
  marks: readonly Mark[],
  at: number,
  to: number,
  pump: number,
): RelayStation {
  const { alongFt, elevationFt } = marks[at]!;
  const pdpPsi = reachesFrom(question, marks, at, pump).find((reach) => reach.to === to)!.pdpPsi;
  const change = changeBetween(question.hose, alongFt, marks[to]!.alongFt);
  return {
    alongFt,
    elevationFt,
    intakePsi: intakePsi(question, pump),
    pdpPsi,
    restPsi: pdpPsi,
    legFt: marks[to]!.alongFt - alongFt,
    lines: hoseFrom(question.hose, alongFt).lines,
    ...(change && { change }),
  };
}

/** The first change of size between two places, ends left out. */
function changeBetween(
  hose: readonly RelayHose[],
  fromFt: number,
  toFt: number,
): RelayStation['change'] {
  let alongFt = 0;
  for (const [at, { lengthFt }] of hose.entries()) {
    alongFt += lengthFt;
    const next = hose[at + 1];
    if (next && alongFt > fromFt && alongFt < toFt) return { hose: next.lines[0]!, alongFt };
  }
  return undefined;
}

/** Carries pressure at rest from pump to pump and holds it against every hose on the way. */
function restHolds(question: RelayQuestion, stations: RelayStation[]): boolean {
  const { ground, department = {} } = question;
  const points = groundPoints(ground);
  let standingFt = Number.NEGATIVE_INFINITY;
  let holds = true;
  for (const one of stations) {
    standingFt = Math.max(standingFt, one.elevationFt + one.pdpPsi / PSI_PER_FT);
    one.restPsi = (standingFt - one.elevationFt) * PSI_PER_FT;
    const end = one.alongFt + one.legFt;
    const lowest = Math.min(
      one.elevationFt,
      elevationAtFt(ground, end),
      ...points
        .filter(({ alongFt }) => alongFt > one.alongFt && alongFt < end)
        .map(({ elevationFt }) => elevationFt),
    );
    const sizes = one.change ? [...one.lines, one.change.hose] : one.lines;
    const limitPsi = linesLimitPsi(sizes, department);
    if ((standingFt - lowest) * PSI_PER_FT > limitPsi + SLACK_PSI) holds = false;
  }
  return holds;
}
