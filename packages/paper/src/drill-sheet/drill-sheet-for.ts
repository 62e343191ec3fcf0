/** From a plan to what each crew does, and to what. */
import {
  coefficientFor,
  type Duty,
  demandOf,
  nameOf,
  type Plan,
  settingsFor,
  type UnitSystem,
} from '@plugside/fireground';
import { figuresIn, inTens } from '../sheet/figures.ts';
import type { Source } from '../sheet/notes.ts';
import { hoseWords, originWords } from '../words.ts';
import { manyAtFire, ordersAtFire } from './at-fire.ts';
import type { Benchmark, DrillSheet } from './data.ts';
import { type Telling, takersOf } from './joints.ts';
import { rolesOf } from './steps.ts';

export interface DrillSheetRequest {
  plan: Plan;
  /** The building that it is drilled for: the sheet's title. */
  place?: string;
  /** Each rig's part, where the plan was chosen for a building: who lays, and rigs without a pump in the plan. */
  duties?: readonly Duty[];
  /** The department's own; blanks are printed for the usual ones where left out. */
  benchmarks?: readonly Benchmark[];
  units?: UnitSystem;
}

/** What is usually timed; a department fills in its own targets. */
const USUAL_BENCHMARKS: readonly Benchmark[] = [
  { text: 'First water from the tank at the first nozzle' },
  { text: 'Supply line connected at both ends' },
  { text: 'Supply water at the attack engine’s intake' },
  { text: 'Pumps before the fire at their set pressure' },
  { text: 'Wanted flow at the scene, every limit kept' },
];

function pointsFor({ hydrants, drafts, rigs, scene }: Plan): string[] {
  const drafting = drafts.length > 0;
  const relayed = rigs.some(({ id, role }) => role === 'relay' && id !== scene);
  return [
    'Protective clothing, gloves, a lookout for traffic',
    ...(hydrants.length > 0 ? ['Hydrant flushed before anything was connected'] : []),
    ...(drafting
      ? [
          'Suction joined tight before the primer was used; prime within its time and kept',
          'Strainer covered on every side, off the bottom',
        ]
      : []),
    'Couplings hand-tight, no twists, lay to one side',
    'Orders and answers on the radio were plain and repeated back',
    'Charged slowly, pressure raised in steps, no line interrupted',
    'Every intake kept at or above its least',
    ...(relayed ? ['Intake reliefs set; changes called down the line before they were made'] : []),
    'Pressures given were within a tenth of those on this sheet',
    'Shut down in order, no water hammer',
  ];
}

/**
 * A drill sheet for a plan: its evolution set for the demand, or for the most there is, and what
 * each crew does in order.
 * @throws RangeError where nothing is wanted at the scene; NetworkError where the plan cannot be solved
 */
export function drillSheetFor(request: DrillSheetRequest): DrillSheet {
  const { plan, place, duties, units = 'us' } = request;
  const answer = settingsFor(plan, demandOf(plan), { units });
  const set = { ...answer.plan, demandGpm: answer.demandGpm };
  const figures = figuresIn(units);
  const shortGpm = answer.possible ? 0 : answer.shortfallGpm;
  const orders = ordersAtFire(set, answer.orders, answer.state, figures);
  const takers = takersOf(set);
  const telling: Telling = {
    plan: set,
    orders,
    figures,
    duties: duties ?? [],
    takers,
    comesGpm: answer.demandGpm - shortGpm,
  };
  const pumpsBefore = plan.rigs.some(({ id }) => id !== plan.scene);
  const hasTank = (plan.rigs.find(({ id }) => id === plan.scene)?.tankGal ?? 0) > 0;
  const usual = USUAL_BENCHMARKS.filter(
    ({ text }) =>
      (pumpsBefore || !text.startsWith('Pumps')) && (hasTank || !text.includes('from the tank')),
  );
  return {
    title: place ?? plan.title,
    ...(place && place !== plan.title && { supply: plan.title }),
    ...(plan.note && { note: plan.note.trim() }),
    invented: plan.invented,
    plan: set,
    state: answer.state,
    demandGpm: answer.demandGpm,
    shortGpm,
    orders,
    limits: answer.limits
      .filter(({ weight }) => weight === 'hard')
      .sort((a, b) => a.marginFraction - b.marginFraction),
    roles: rolesOf(telling, duties),
    benchmarks: [...(request.benchmarks ?? usual)],
    points: pointsFor(plan),
    cautions: [
      ...manyAtFire(set),
      ...answer.notices.filter(({ level }) => level === 'caution').map(({ text }) => inTens(text)),
    ],
    sources: sourcesOf(set, units),
  };
}

function sourcesOf(plan: Plan, units: UnitSystem): Source[] {
  const { full } = figuresIn(units);
  const list: Source[] = plan.hydrants.map((hydrant) => ({
    what: `${nameOf(hydrant)}: ${full(hydrant.staticPsi, 'pressure')} static, ${full(hydrant.residualPsi, 'pressure')} at ${full(hydrant.testGpm, 'flow')}`,
    from: hydrant.testedOn ? `flow test of ${hydrant.testedOn}` : 'flow test without a date',
  }));
  const seen = new Set<string>();
  for (const line of plan.lines) {
    const { coefficient, origin } = coefficientFor(plan, line);
    const what = hoseWords(line.hose, coefficient, units);
    if (seen.has(what)) continue;
    seen.add(what);
    list.push({ what, from: originWords(origin, units) });
  }
  for (const rig of plan.rigs) {
    list.push({
      what: `Pump of ${nameOf(rig)}`,
      from: rig.capability ? 'its own pump test' : `its rating, ${full(rig.ratedGpm, 'flow')}`,
    });
  }
  return list;
}
