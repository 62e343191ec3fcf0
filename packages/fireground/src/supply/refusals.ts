/** What was looked at and cannot be used, and why. */
import type { HoseSize } from '../plan/plan.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { RefusedWay } from './choice.ts';
import type { Crew } from './crew.ts';
import { broughtFt, supplySizes } from './hose-pool.ts';
import { type LegSource, listed, sourceName } from './leg.ts';
import { changingLays, layLines } from './legs-of-source.ts';
import type { Situation } from './situation.ts';

/** Refusals that need no solving: out of service, too little hose, no engine, no valve. */
export function refusals(situation: Situation, crew: Crew, units: UnitSystem): RefusedWay[] {
  const refused: RefusedWay[] = [];
  for (const { hydrant, outOfService } of situation.hydrants) {
    if (outOfService === undefined) continue;
    const name = hydrant.name ?? hydrant.id;
    const why = outOfService.trim().replace(/\.$/, '');
    refused.push({
      kind: 'direct lay',
      title: name,
      reason: `${name} is out of service${why ? `: ${why}` : ''}.`,
    });
  }
  refused.push(...untestedRefusals(situation, units));
  for (const source of usableSources(situation)) refused.push(...hoseRefusals(source, crew, units));
  refused.push(...crewRefusals(situation, crew));
  return refused;
}

/** Of untested hydrants the nearest are told one by one; the others only by their number. */
const UNTESTED_TOLD = 5;

function untestedRefusals({ untested = [] }: Situation, units: UnitSystem): RefusedWay[] {
  const say = sayIn(units);
  const told = [...untested].sort((one, two) => one.lengthFt - two.lengthFt);
  const refused = told.slice(0, UNTESTED_TOLD).map(
    ({ name, lengthFt, why }): RefusedWay => ({
      kind: 'direct lay',
      title: `${name}, not tested`,
      reason: `${why} The lay from ${name} is ${say.full(lengthFt, 'length')}.`,
    }),
  );
  const more = told.length - refused.length;
  if (more > 0) {
    refused.push({
      kind: 'direct lay',
      title: `${more} more, not tested`,
      reason: `${more} more ${more === 1 ? 'hydrant' : 'hydrants'} within hose ${more === 1 ? 'has' : 'have'} no usable flow test on record.`,
    });
  }
  return refused;
}

/** Sources that a lay can start from. */
export function usableSources({ hydrants, waters }: Situation): LegSource[] {
  return [
    ...hydrants
      .filter(({ outOfService }) => outOfService === undefined)
      .map((at): LegSource => ({ kind: 'hydrant', at })),
    ...waters.map((at): LegSource => ({ kind: 'water', at })),
  ];
}

function hoseRefusals(source: LegSource, crew: Crew, units: UnitSystem): RefusedWay[] {
  const say = sayIn(units);
  const { lengthFt } = source.at;
  const name = sourceName({ source });
  const kind = source.kind === 'water' ? 'draft' : 'direct lay';
  const sizes = supplySizes(crew.all);
  const carry = (size: HoseSize) =>
    `${say.full(broughtFt(crew.all, size), 'length')} of ${formatHoseSize(size, units)}`;
  const lay = say.full(lengthFt, 'length');
  if (sizes.length === 0) {
    return [
      {
        kind,
        title: `Hose from ${name}`,
        reason: `The rigs carry no supply hose; the lay is ${lay}.`,
      },
    ];
  }
  const short = sizes.filter((size) => broughtFt(crew.all, size) < lengthFt);
  if (short.length === sizes.length) {
    if (changingLays(crew, lengthFt).length > 0) return [];
    const either =
      sizes.length > 1 ? ', and one size coupled to the next does not reach either' : '';
    const reason = `The rigs carry ${listed(short.map(carry))}; the lay is ${lay}${either}.`;
    return [{ kind, title: `Hose from ${name}`, reason }];
  }
  const largest = sizes.findIndex((size) => !short.includes(size));
  const refused: RefusedWay[] = sizes.slice(0, largest).map((size) => ({
    kind,
    title: `${formatHoseSize(size, units)} from ${name}`,
    reason: `The rigs carry ${carry(size)}; the lay is ${lay}.`,
  }));
  if (source.kind === 'hydrant' && !layLines(crew, lengthFt).some((lines) => lines.length > 1)) {
    refused.push({
      kind: 'dual lines',
      title: `Two lines from ${name}`,
      reason: `The rigs carry ${listed(sizes.map(carry))}; two lines of ${lay} need more.`,
    });
  }
  return refused;
}

function crewRefusals({ hydrants, waters }: Situation, crew: Crew): RefusedWay[] {
  const refused: RefusedWay[] = [];
  if (hydrants.length > 0 && crew.pumpers.length === 0) {
    refused.push({
      kind: 'boosted at the hydrant',
      title: 'A pump at the hydrant',
      reason: 'No second engine comes to pump at a hydrant.',
    });
  } else if (
    hydrants.length > 0 &&
    ![crew.attack, ...crew.pumpers].some((rig) => rig.assistValve)
  ) {
    refused.push({
      kind: 'boosted at the hydrant',
      title: 'Boosted through an assist valve',
      reason: 'No engine brings an assist valve: a pump at the hydrant stands in the line.',
    });
  }
  if (crew.pumpers.length === 1) {
    refused.push({
      kind: 'relay',
      title: 'A relay of two pumps',
      reason: 'A relay takes two engines besides the attack engine; one comes.',
    });
  }
  if (waters.length > 0 && crew.pumpers.length === 0) {
    refused.push({
      kind: 'draft',
      title: 'An engine at draft',
      reason: 'No second engine comes to draft.',
    });
  }
  return refused;
}
