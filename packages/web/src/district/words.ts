/** Short words about places, hydrants and tests. */
import type { Units } from '../editing/use-units.ts';
import type { MapHydrant } from './district.ts';

/** "class A" with the colour that NFPA 291 gives it; the disc alone would tell nothing to many. */
const CLASS_COLOURS = { AA: 'light blue', A: 'green', B: 'orange', C: 'red' } as const;

export function classWords(of: MapHydrant['class']): string {
  return of === null ? 'not tested' : `class ${of}, ${CLASS_COLOURS[of]}`;
}

/** From the hydrant's side: what hose laid to the building climbs or falls. */
export function riseWords(riseFt: number | null, units: Units): string {
  if (riseFt === null) return 'rise not known';
  if (Math.abs(riseFt) < 0.5) return 'level';
  const by = units.text(Math.abs(riseFt), 'length');
  return riseFt > 0 ? `up ${by}` : `down ${by}`;
}

/** The same where no heading says that it is the lay's. */
export function layRiseWords(riseFt: number | null, units: Units): string {
  return riseFt === null ? 'rise not known' : `lay ${riseWords(riseFt, units)}`;
}

const MONTHS_A_YEAR = 12;

/** How long ago a day was, in whole months or years. */
export function agoWords(day: string, today: string): string {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  const [nowYear = 0, nowMonth = 0, nowDate = 0] = today.split('-').map(Number);
  const months = (nowYear - year) * MONTHS_A_YEAR + nowMonth - month - (nowDate < date ? 1 : 0);
  if (months < 1) return 'this month';
  if (months < 2 * MONTHS_A_YEAR) return months === 1 ? '1 month ago' : `${months} months ago`;
  return `${Math.floor(months / MONTHS_A_YEAR)} years ago`;
}

export const todayIso = (): string => new Date().toISOString().slice(0, 10);

/** What the test of a hydrant says of its age; null where there is none. */
export function testWords(hydrant: MapHydrant, today: string): string | null {
  if (hydrant.testedOn === null) return null;
  if (hydrant.retestOn === null) return `test of ${hydrant.testedOn} cannot be used`;
  const due = hydrant.retestOn < today ? ', test again' : '';
  return `tested ${agoWords(hydrant.testedOn, today)}${due}`;
}
