/** Pumps at the fire: all the water goes through them, and each puts out only so much. */
import { capabilityFlowGpm } from '@plugside/hydraulics';
import { defaultLimits } from '../catalogue/limits.ts';
import { practice } from '../catalogue/origins.ts';
import { capabilityFor } from '../catalogue/pumps.ts';
import { scenePumpLabel } from '../limits/check-limits.ts';
import type { DepartmentValues, Origin, Rig } from '../plan/plan.ts';
import type { LimitCheck } from '../questions/answers.ts';
import { type Crew, rigName } from './crew.ts';
import type { Leg } from './leg.ts';
import type { RespondingRig, Situation } from './situation.ts';

/** Discharge pressure that lines at the fire are taken to need where nobody says otherwise [psi]. */
export const usualFireLinePdpPsi = 150;

export const fireLineOrigin: Origin = practice(
  'No source: 150 psi at the pump serves the usual hand lines and master streams',
);

/** What the pumps at a fire are asked. */
export interface FirePressure {
  /** Discharge pressure that their lines need [psi]. */
  pdpPsi: number;
  /** At their intakes, the least that the supply keeps there [psi]. */
  intakePsi: number;
}

export function firePressureOf(situation: {
  fireLinePdpPsi?: number;
  department: DepartmentValues;
}): FirePressure {
  const { fireLinePdpPsi = usualFireLinePdpPsi, department } = situation;
  const intakePsi = department.limits?.hoseFedIntakePsi ?? defaultLimits.hoseFedIntakePsi;
  return { pdpPsi: fireLinePdpPsi, intakePsi };
}

/**
 * The most that a pump puts out at the fire: the flow at which its capability, by its own test or
 * its rating, is down to the net pressure that its lines need. 0 where even shut-off is less.
 * @returns [gpm]
 */
export function firePumpGpm(
  rig: Pick<Rig, 'ratedGpm' | 'capability'>,
  { pdpPsi, intakePsi }: FirePressure,
): number {
  const { points } = capabilityFor(rig);
  return capabilityFlowGpm(points, Math.max(0, pdpPsi - intakePsi));
}

/** The limit of a pump at the fire at a flow [gpm], named as other limits are. */
export function firePumpCheck(
  rig: RespondingRig,
  flowGpm: number,
  pressure: FirePressure,
): LimitCheck {
  const limit = firePumpGpm(rig.rig, pressure);
  const margin = limit - flowGpm;
  const { origin } = capabilityFor(rig.rig);
  const at = `at ${pressure.pdpPsi} psi with ${pressure.intakePsi} psi at its intake`;
  return {
    id: `scene pumps:${rig.rig.id}`,
    kind: 'scene pumps',
    piece: rig.rig.id,
    label: scenePumpLabel([rigName(rig)]),
    value: flowGpm,
    limit,
    sense: 'max',
    unit: 'gpm',
    margin,
    marginFraction: margin / rig.rig.ratedGpm,
    binds: Math.abs(margin) <= BINDS_WITHIN_GPM,
    passed: margin < -BINDS_WITHIN_GPM,
    weight: 'hard',
    origin: { ...origin, text: `${origin.text}; ${at}` },
  };
}

/** A margin under this counts as used up [gpm]. */
const BINDS_WITHIN_GPM = 0.02;

/** An aerial pumps only where its pump is known. */
function hasPump({ kind, rig, pumpKnown }: RespondingRig): boolean {
  return kind === 'engine' || (kind === 'aerial' && (pumpKnown ?? rig.capability !== undefined));
}

/** A rig that may be at the fire, and what its pump puts out there [gpm]. */
export interface Taker {
  rig: RespondingRig;
  gpm: number;
}

/** What the situation asks of the pumps at the fire. */
export interface FireAsk {
  /** The demand with what should be left to spare [gpm]. */
  wantedGpm: number;
  pressure: FirePressure;
  /** The attack engine first, then as they come. */
  takers: readonly [attack: Taker, ...others: Taker[]];
  /** The same without the attack engine, the strongest first. */
  strongest: readonly Taker[];
}

export function fireAskOf(
  situation: Pick<Situation, 'fireLinePdpPsi' | 'department'>,
  crew: Crew,
  wantedGpm: number,
): FireAsk {
  const pressure = firePressureOf(situation);
  const taker = (rig: RespondingRig): Taker => ({ rig, gpm: firePumpGpm(rig.rig, pressure) });
  const others = crew.all.filter((rig) => rig !== crew.attack && hasPump(rig)).map(taker);
  return {
    wantedGpm,
    pressure,
    takers: [taker(crew.attack), ...others],
    strongest: [...others].sort((one, two) => two.gpm - one.gpm),
  };
}

/** Those that can take a line at the fire: the ones that pump elsewhere left out. */
export function takersFor({ takers }: FireAsk, legs: readonly Leg[]): Taker[] {
  return takers.filter(({ rig }) => !legs.some(({ pumps }) => pumps.includes(rig)));
}

/** The most that all that can be at the fire put out together [gpm]; no more of them than lines come. */
export function fireMostGpm({ takers, strongest }: FireAsk, legs: readonly Leg[]): number {
  let lines = 0;
  for (const { stretches } of legs) lines += stretches[stretches.length - 1]!.lines.length;
  let { gpm } = takers[0];
  for (const { rig, gpm: more } of strongest) {
    if (lines < 2) break;
    if (legs.some(({ pumps }) => pumps.includes(rig))) continue;
    gpm += more;
    lines -= 1;
  }
  return gpm;
}
