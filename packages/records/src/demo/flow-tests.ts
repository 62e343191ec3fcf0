/** Three years of flow tests, read off the solved mains with the errors that gauges have. */
import type { FieldsIn } from '../model/index.ts';
import type { Chance } from './chance.ts';
import type { DemoHydrant } from './hydrant-places.ts';
import type { Draw, SolvedMains } from './solved-mains.ts';
import { distanceFt } from './town-map.ts';

export type DemoFlowTest = FieldsIn<'flow-tests'>;

/** Which hydrants flow while one is gauged, and through how many 2½ in outlets each. */
interface Setup {
  flowing: DemoHydrant[];
  outlets: number;
}

/** 29.84·c·d² of a rounded 2½ in outlet: 29.84 · 0.90 · 6.25. */
const OUTLET_K = 167.85;
/** Main to outlet of a hydrant: 6 psi at 500 gpm, as plans take it. */
const OUTLET_LOSS = 6 / 500 ** 2;
/** One reading of a gauge [psi], standard deviation; then rounded to 1 psi. */
const GAUGE_ERROR_PSI = 0.4;
/** NFPA 291 (from memory): the main should fall by 10 % or more. A crew opens more outlets until it does. */
const LEAST_DROP = 0.12;
const MAIN_POWER = 1.85;

/** Flow of one open outlet with this pressure in the main [gpm]: K·√(p − loss·q²) = q. */
const outletGpm = (mainPsi: number) =>
  OUTLET_K * Math.sqrt(Math.max(1, mainPsi) / (1 + OUTLET_LOSS * OUTLET_K ** 2));

export interface TestYear {
  year: number;
  mains: SolvedMains;
}

/**
 * Tests of every hydrant in every year. Each is solved with the flows that the outlets give at
 * the pressure found, so that static, residual and pitots belong together.
 */
export function runFlowTests(
  hydrants: readonly DemoHydrant[],
  years: readonly TestYear[],
  luck: Chance,
): DemoFlowTest[] {
  const statics = years.map(({ mains }) => {
    mains.draw([]);
    return new Map(hydrants.map((hydrant) => [hydrant, mains.pressurePsi(hydrant)]));
  });
  return hydrants.flatMap((hydrant) => {
    const firstMains = years[0]!.mains;
    const first = statics[0]!;
    const neighbours = nearest(hydrant, hydrants, 2);
    const trial = { flowing: neighbours.slice(0, 1), outlets: 1 };
    const trialGpm = outletGpm(0.6 * first.get(trial.flowing[0]!)!);
    const falls = fallsPerFlow(firstMains, first, hydrant, trial, trialGpm);
    const setup = enough(
      neighbours,
      first.get(hydrant)!,
      (gpm) => falls.gauged * gpm ** MAIN_POWER,
    );
    const testDay = luck.whole(0, 27);
    let fallPerFlow = falls.flowing;
    return years.map(({ year, mains }, i) => {
      const rest = statics[i]!;
      const draws = openOutlets(mains, rest, setup, fallPerFlow);
      // What was solved this year is next year's guess.
      fallPerFlow = draws.fallPerFlow;
      const staticPsi = reading(rest.get(hydrant)!, luck);
      const residualPsi = Math.min(reading(mains.pressurePsi(hydrant), luck), staticPsi - 1);
      return {
        hydrantId: hydrant.name,
        testedOn: testDate(year, hydrant, testDay),
        staticPsi,
        residualPsi: Math.max(0, residualPsi),
        flowing: draws.flows.flatMap(({ hydrant: open }) => {
          const eachGpm = outletGpm(mains.pressurePsi(open));
          return Array.from({ length: setup.outlets }, () => ({
            hydrant: open.name,
            outletIn: 2.5,
            coefficient: 0.9,
            pitotPsi: Math.max(1, reading((eachGpm / OUTLET_K) ** 2, luck)),
          }));
        }),
        by: luck.pick(['A watch', 'B watch', 'C watch']),
        origins: readOff,
      };
    });
  });
}

/** Of the readings: gauges that nobody held. */
const readOff = Object.fromEntries(
  ['staticPsi', 'residualPsi', 'flowing'].map((field) => [
    field,
    { kind: 'measured' as const, text: 'Flow test, invented' },
  ]),
);

function reading(psi: number, luck: Chance): number {
  return Math.round(psi + luck.error(GAUGE_ERROR_PSI));
}

/** How pressure falls at the gauged and at the flowing hydrant [psi/gpm^1.85], from one trial. */
function fallsPerFlow(
  mains: SolvedMains,
  rest: ReadonlyMap<DemoHydrant, number>,
  gauged: DemoHydrant,
  { flowing }: Setup,
  flowGpm: number,
): { gauged: number; flowing: number } {
  const open = flowing[0]!;
  mains.draw([{ hydrant: open, flowGpm }]);
  const fall = (hydrant: DemoHydrant) =>
    (rest.get(hydrant)! - mains.pressurePsi(hydrant)) / flowGpm ** MAIN_POWER;
  return { gauged: fall(gauged), flowing: fall(open) };
}

/** The fewest outlets that should drop the gauged hydrant enough. */
function enough(
  neighbours: DemoHydrant[],
  staticPsi: number,
  fallPsi: (flowGpm: number) => number,
): Setup {
  const each = outletGpm(0.7 * staticPsi);
  const setups: Setup[] = [
    { flowing: neighbours.slice(0, 1), outlets: 1 },
    { flowing: neighbours.slice(0, 1), outlets: 2 },
    { flowing: neighbours, outlets: 2 },
  ];
  const drops = ({ flowing, outlets }: Setup) => fallPsi(each * outlets * flowing.length);
  return setups.find((setup) => drops(setup) >= LEAST_DROP * staticPsi) ?? setups[2]!;
}

/** Solves with what the outlets give, where the main falls so much for what flows. */
function openOutlets(
  mains: SolvedMains,
  rest: ReadonlyMap<DemoHydrant, number>,
  { flowing, outlets }: Setup,
  fallPerFlow: number,
): { flows: Draw[]; fallPerFlow: number } {
  const flows = flowing.map((hydrant) => ({
    hydrant,
    flowGpm: flowWhere((flowGpm) => {
      const allGpm = flowGpm * flowing.length;
      return outlets * outletGpm(rest.get(hydrant)! - fallPerFlow * allGpm ** MAIN_POWER);
    }),
  }));
  mains.draw(flows);
  const allGpm = flows.reduce((sum, { flowGpm }) => sum + flowGpm, 0);
  const open = flowing[0]!;
  const fallPsi = rest.get(open)! - mains.pressurePsi(open);
  return { flows, fallPerFlow: fallPsi / allGpm ** MAIN_POWER };
}

/** Flow that gives itself, by halving [gpm]. */
function flowWhere(gives: (flowGpm: number) => number): number {
  let [low, high] = [0, 4000];
  for (let i = 0; i < 40; i += 1) {
    const middle = (low + high) / 2;
    if (gives(middle) > middle) low = middle;
    else high = middle;
  }
  return low;
}

function nearest(
  hydrant: DemoHydrant,
  hydrants: readonly DemoHydrant[],
  count: number,
): DemoHydrant[] {
  return hydrants
    .filter((other) => other !== hydrant)
    .map((other) => ({ other, feet: distanceFt(other.at, hydrant.at) }))
    .sort((a, b) => a.feet - b.feet)
    .slice(0, count)
    .map(({ other }) => other);
}

const MONTHS = { centre: 4, suburb: 5, hill: 6, industrial: 9, rural: 10, open: 10 } as const;

function testDate(year: number, { zone }: DemoHydrant, day: number): string {
  return `${year}-${`${MONTHS[zone]}`.padStart(2, '0')}-${`${day + 1}`.padStart(2, '0')}`;
}
