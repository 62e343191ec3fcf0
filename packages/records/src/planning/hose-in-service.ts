import { formatHoseSize, isDatedAhead, parseHoseSize } from '@plugside/fireground';
import type { Fields } from '../model/index.ts';
import { ft, notice, type PlanningNotice } from './notice.ts';
import { testsAhead } from './tests-ahead.ts';

type Rig = Fields<'rigs'>;
export type LengthOfHose = Fields<'hose'>;

/** Whether a length may be laid: not retired, and its newest service test not failed. */
export function isInService(
  { retiredOn, serviceTests }: Pick<LengthOfHose, 'retiredOn' | 'serviceTests'>,
  today: string,
): boolean {
  if (retiredOn !== undefined && retiredOn <= today) return false;
  const newest = serviceTests
    .filter(({ testedOn }) => !isDatedAhead(testedOn, today))
    .reduce<(typeof serviceTests)[number] | undefined>(
      (a, b) => (a && a.testedOn > b.testedOn ? a : b),
      undefined,
    );
  return newest?.passed ?? true;
}

/**
 * A rig with no more hose of a size than its lengths on record have in service. A size without
 * lengths on record stays as the rig says. What is missing is taken from the supply bed first, which
 * is the careful way; the difference goes to `notices`, and so do service tests dated ahead of today.
 * @param lengths of hose of any rig
 * @param today ISO date
 */
export function withHoseInService<R extends Rig>(
  rig: R & { id?: string },
  lengths: readonly LengthOfHose[],
  today: string,
  notices: PlanningNotice[],
): R {
  const own = lengths.filter(({ rigId }) => rigId !== undefined && rigId === rig.id);
  notices.push(
    ...testsAhead(
      `A service test of hose on ${rig.name}`,
      own.flatMap(({ serviceTests }) => serviceTests),
      today,
    ),
  );
  const sizes = new Set(own.flatMap(({ size }) => parseHoseSize(size) ?? []));
  let hose = rig.hose;
  for (const size of sizes) {
    const ofSize = own.filter((one) => parseHoseSize(one.size) === size);
    const sound = ofSize.filter((one) => isInService(one, today));
    const soundFt = sound.reduce((sum, { lengthFt }) => sum + lengthFt, 0);
    const carriedFt = hose
      .filter((load) => parseHoseSize(load.size) === size)
      .reduce((sum, { lengthFt }) => sum + lengthFt, 0);
    if (soundFt >= carriedFt) continue;
    let missingFt = carriedFt - soundFt;
    const first = [...hose].sort((a, b) => Number(isSupply(b)) - Number(isSupply(a)));
    const left = new Map<(typeof hose)[number], number>();
    for (const load of first) {
      if (parseHoseSize(load.size) !== size) continue;
      const takenFt = Math.min(missingFt, load.lengthFt);
      missingFt -= takenFt;
      left.set(load, load.lengthFt - takenFt);
    }
    hose = hose.flatMap((load) => {
      const lengthFt = left.get(load) ?? load.lengthFt;
      return lengthFt > 0 ? [{ ...load, lengthFt }] : [];
    });
    const out = ofSize.length - sound.length;
    notices.push(
      notice(
        'caution',
        'hose-not-in-service',
      )`${rig.name} carries ${ft(carriedFt)} of ${formatHoseSize(size)} by its record; its lengths in service are ${ft(soundFt)} (${`${out}`} of ${`${ofSize.length}`} retired or failed). Plans lay no more than that.`,
    );
  }
  return hose === rig.hose ? rig : { ...rig, hose };
}

const isSupply = ({ where }: { where?: string | undefined }): boolean =>
  /supply/i.test(where ?? '');
