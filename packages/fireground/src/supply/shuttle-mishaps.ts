/** What one thing going wrong does to a tender shuttle. */
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { Mishap, ShuttlePart, TenderRound } from './choice.ts';
import { SLACK_GPM, WEAKER } from './mishap-measures.ts';

/** Rounds on a bad road: half as long again under way. Ours, no source. */
const SLOWER = 1.5;

type Round = Pick<TenderRound, 'loadGal' | 'outMin' | 'fillMin' | 'backMin' | 'dumpMin'>;

/**
 * A tender drops out, filling is a fifth slower, the road takes half as long again, more is wanted:
 * what the shuttle still keeps up, with what comes beside it.
 * @param wantedGpm asked of it and what is beside it together [gpm]
 * @param besideGpm what hose brings beside it [gpm]
 * @param moreGpm wanted more in the last case [gpm]
 */
export function shuttleMishaps(
  { tenders, place, gpm }: ShuttlePart,
  { wantedGpm, besideGpm, moreGpm }: { wantedGpm: number; besideGpm: number; moreGpm: number },
  units: UnitSystem,
): Mishap[] {
  const say = sayIn(units);
  const told = (what: string, keepsUpGpm: number, askedGpm: number, note: string): Mishap => {
    const mostGpm = besideGpm + keepsUpGpm;
    const flowGpm = Math.min(askedGpm, mostGpm);
    const stillMeets = mostGpm >= askedGpm - SLACK_GPM;
    const shortfallGpm = stillMeets ? 0 : askedGpm - mostGpm;
    const comes =
      keepsUpGpm < SLACK_GPM
        ? 'the shuttle brings nothing'
        : `the shuttle keeps up ${say.full(keepsUpGpm, 'flow')}`;
    const beside = besideGpm > 0 ? `, with ${say.full(besideGpm, 'flow')} by hose beside it` : '';
    const end = stillMeets
      ? 'The demand is met.'
      : `${say.full(shortfallGpm, 'flow')} short: shut lines to match, and call more tenders.`;
    return {
      what,
      flowGpm,
      resetGpm: flowGpm,
      wantedGpm: askedGpm,
      stillMeets,
      shortfallGpm,
      text: `${what}: ${comes}${beside}. ${note}${note ? ' ' : ''}${end}`,
      orders: [],
      passed: [],
    };
  };
  const slowerFill = (one: Round): Round => ({
    ...one,
    fillMin: one.fillMin + (one.loadGal / place.fillGpm) * (1 / (1 - WEAKER) - 1),
  });
  const slowerRoad = (one: Round): Round => ({
    ...one,
    outMin: SLOWER * one.outMin,
    backMin: SLOWER * one.backMin,
  });
  return [
    ...tenders.map(({ rigId, rigName }) =>
      told(
        `${rigName} drops out of the shuttle`,
        keptUpGpm(tenders.filter((one) => one.rigId !== rigId)),
        wantedGpm,
        'Ease the draw before the portable tank is dry.',
      ),
    ),
    told(
      `${place.name} fills ${Math.round(WEAKER * 100)} % slower`,
      keptUpGpm(tenders.map(slowerFill)),
      wantedGpm,
      '',
    ),
    told(
      'The road takes half as long again',
      keptUpGpm(tenders.map(slowerRoad)),
      wantedGpm,
      'No flow is worth haste on it.',
    ),
    told(
      `One more hand line (${say.full(moreGpm, 'flow')}) is wanted`,
      gpm,
      wantedGpm + moreGpm,
      '',
    ),
  ];
}

/**
 * Flow that some rounds keep up [gpm], one filling and one dumping at a time: the sum of their own, or
 * what either site passes.
 */
export function keptUpGpm(rounds: readonly Round[]): number {
  if (rounds.length === 0) return 0;
  const sum = (of: (one: Round) => number) => rounds.reduce((all, one) => all + of(one), 0);
  const loadGal = sum((one) => one.loadGal);
  return Math.min(
    sum((one) => one.loadGal / (one.outMin + one.fillMin + one.backMin + one.dumpMin)),
    loadGal / sum((one) => one.fillMin),
    loadGal / sum((one) => one.dumpMin),
  );
}
