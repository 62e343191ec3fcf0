/** The rigs that come, by what each can be asked to do. */
import { capabilityFor } from '../catalogue/pumps.ts';
import type { RespondingRig, Situation } from './situation.ts';

export interface Crew {
  /** The first engine to arrive: it attacks, and the water is for it. */
  attack: RespondingRig;
  /** Engines that come after it, in order of arrival: each can pump. */
  pumpers: readonly RespondingRig[];
  /** Everyone, in order of arrival. */
  all: readonly RespondingRig[];
}

/** The crew of a situation, or undefined where no engine comes. */
export function crewOf(situation: Pick<Situation, 'rigs'>): Crew | undefined {
  const all = [...situation.rigs].sort((one, two) => one.arrivesMin - two.arrivesMin);
  const engines = all.filter((rig) => rig.kind === 'engine');
  const attack = engines[0];
  return attack && { attack, pumpers: engines.slice(1), all };
}

/** A rig as crews call it. */
export function rigName({ rig }: Pick<RespondingRig, 'rig'>): string {
  return rig.name ?? rig.id;
}

/**
 * Pumps of which none is beaten by another in everything that counts for pumping: arrival, what the
 * pump can do, ports. Of two that are alike the first stays. Where one brings an assist valve and
 * the other none neither beats the other: a valve costs pressure, and saves the wait.
 */
export function pumpsWorthTrying({ pumpers }: Crew): RespondingRig[] {
  const beats = (one: RespondingRig, two: RespondingRig) =>
    one.assistValve === two.assistValve && isAsGood(one, two);
  return pumpers.filter(
    (rig, at) =>
      !pumpers.some(
        (other, index) => index !== at && beats(other, rig) && (index < at || !beats(rig, other)),
      ),
  );
}

function isAsGood(one: RespondingRig, two: RespondingRig): boolean {
  return (
    one.arrivesMin <= two.arrivesMin &&
    one.rig.intakes >= two.rig.intakes &&
    one.rig.discharges >= two.rig.discharges &&
    pumpsAsMuch(one, two)
  );
}

function pumpsAsMuch(one: RespondingRig, two: RespondingRig): boolean {
  if (one.rig.capability || two.rig.capability || one.rig.intakeLoss || two.rig.intakeLoss) {
    // Own tests and piping are compared only where they are the same.
    return (
      JSON.stringify([capabilityFor(one.rig).points, one.rig.intakeLoss]) ===
      JSON.stringify([capabilityFor(two.rig).points, two.rig.intakeLoss])
    );
  }
  return one.rig.ratedGpm >= two.rig.ratedGpm;
}

/** Hose of a size aboard a rig [ft]. */
export function carried(rig: RespondingRig, size: string): number {
  let sumFt = 0;
  for (const { hose, lengthFt } of rig.hose) if (hose === size) sumFt += lengthFt;
  return sumFt;
}
