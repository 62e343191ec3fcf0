import { pumpCurve, type Rig, usualRating } from '@plugside/fireground';
import { type Fields, isFilledIn } from '../model/index.ts';
import type { OwnValve } from './assist-valve-of.ts';
import type { LengthOfHose } from './hose-in-service.ts';
import { gpm, notice, type PlanningNotice } from './notice.ts';

/** A rig with its own pump tests, the newest of which gives its curve. */
export interface PickedRig {
  rig: Fields<'rigs'> & { id?: string };
  pumpTests?: readonly Fields<'pump-tests'>[];
  /** Lengths of hose on record, of any rig; none where left out. */
  lengths?: readonly LengthOfHose[];
  /** Own figures of the assist valve that it brings; the defaults where left out. */
  valve?: OwnValve;
}

/** A pattern's rig with the record's name, rating, pump curve and fittings; what is assumed goes to `notices`. */
export function rigFromRecord(
  drawn: Rig,
  { rig, pumpTests = [] }: PickedRig,
  elevationFt: number,
  notices: PlanningNotice[],
): Rig {
  if (rig.ratedGpm === undefined) {
    notices.push(
      notice(
        'caution',
        'no-rating',
      )`${rig.name} has no pump rating on record. The plan assumes ${gpm(usualRating)}.`,
    );
  }
  const ratedGpm = rig.ratedGpm ?? usualRating;
  const curve = pumpTests.length > 0 ? pumpCurve(pumpTests, ratedGpm) : null;
  const capability = curve?.points ?? null;
  for (const one of curve?.notices ?? []) {
    if (one.code !== 'dated-ahead') continue;
    const of = `${rig.name}: `;
    notices.push({ ...one, parts: [of, ...one.parts], text: of + one.text });
  }
  if (!capability) {
    notices.push(
      notice(
        'fact',
        'no-pump-test',
      )`${rig.name} has no usable pump test on record: its pump is the default for its rating.`,
    );
  }
  const portsAssumed = ['intakes', 'discharges'].filter((field) => isFilledIn('rigs', rig, field));
  if (portsAssumed.length > 0) {
    notices.push(
      notice(
        'fact',
        'ports-assumed',
      )`Nobody has entered the ${portsAssumed.join(' and ')} of ${rig.name}: the plan takes the default, ${`${rig.intakes}`} intakes and ${`${rig.discharges}`} discharges.`,
    );
  }
  return {
    ...drawn,
    name: rig.name,
    elevationFt,
    ratedGpm,
    intakes: Math.max(1, Math.min(8, rig.intakes)),
    discharges: Math.max(1, rig.discharges),
    ...(capability && { capability }),
    ...(rig.tankGal && { tankGal: rig.tankGal }),
    ...(rig.intakeReliefPsi !== undefined && { intakeReliefPsi: rig.intakeReliefPsi }),
  };
}
