/** What each source of a way brings, and when. */
import { sectionsOf } from '../catalogue/hose-sections.ts';
import { readState } from '../network/read-state.ts';
import type { Plan } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';
import type { SupplyState } from '../questions/answers.ts';
import { withSettings } from '../questions/most-water.ts';
import { SupplySearch } from '../questions/supply-search.ts';
import { unassistedPlan } from '../questions/unassisted.ts';
import type { LaidHose, LegWork } from './arrangement.ts';
import { type AsSet, supplyAsSet } from './as-set.ts';
import type { CandidateContext } from './candidate.ts';
import type { SourcePart, WaterTimes } from './choice.ts';
import { sourceId, sourceName } from './leg.ts';
import { planOfLegs } from './leg-plan.ts';

/** A way that is solved and set. */
export interface SetWay {
  /** With its pumps set. */
  plan: Plan;
  mostGpm: number;
  work: readonly LegWork[];
  /** By leg. */
  times: readonly WaterTimes[];
}

/**
 * A way's sources, in order, with the state that it is set to.
 * @throws NetworkError where the plan cannot be solved
 */
export function sourceParts(
  context: CandidateContext,
  { plan, mostGpm, work, times }: SetWay,
): { parts: SourcePart[]; asSet: AsSet } {
  const asSet = supplyAsSet(plan, Math.min(context.demandGpm, mostGpm));
  // One source gives all that there is.
  const atMost = work.length > 1 ? stateAtMost(plan, mostGpm) : undefined;
  const parts = work.map(({ leg, suction, laid }, at): SourcePart => {
    const id = sourceId(leg);
    return {
      sourceId: id,
      sourceName: sourceName(leg),
      kind: leg.source.kind === 'hydrant' ? 'hydrant' : 'open water',
      pumps: leg.pumps.map(({ rig }) => rig.id),
      valve: leg.valve,
      hose: [...leg.stretches[0]!.lines],
      suction: suction.map(({ hose }) => hose),
      lengthFt: leg.source.at.lengthFt,
      ...longestOf(laid),
      setGpm: flowFrom(plan, asSet.state, id),
      mostGpm: atMost ? flowFrom(plan, atMost, id) : mostGpm,
      startGpm: startGpm(context, { leg, suction, laid }),
      waterAtMin: times[at]!.waterAtMin,
      fullAtMin: times[at]!.fullAtMin,
    };
  });
  return { parts, asSet };
}

function stateAtMost(plan: Plan, mostGpm: number): SupplyState {
  const search = new SupplySearch(plan);
  search.roomAt(mostGpm);
  return readState({ ...search.solved, plan: withSettings(plan, search.pdpPsi) });
}

/** The longest line from the water to the fire, as it is laid. */
function longestOf(laid: LegWork['laid']): Pick<SourcePart, 'laidFt' | 'laidSections'> {
  const lineFt = (line: readonly LaidHose[]) => line.reduce((ft, { lengthFt }) => ft + lengthFt, 0);
  const longest = laid.flatMap(
    (lines) => [...lines].sort((one, two) => lineFt(two) - lineFt(one))[0] ?? [],
  );
  const laidSections = sectionsOf(longest);
  return { laidFt: lineFt(longest), ...(laidSections && { laidSections }) };
}

/** Water out of a source [gpm]. */
function flowFrom({ lines }: Plan, state: SupplyState, id: string): number {
  const hydrant = state.hydrants.find((one) => one.id === id);
  if (hydrant) return hydrant.flowGpm;
  const drawn = lines.filter(({ from }) => splitPortRef(from).pieceId === id);
  return state.lines
    .filter((line) => drawn.some((one) => one.id === line.id))
    .reduce((gpm, { flowGpm }) => gpm + flowGpm, 0);
}

/** On hydrant pressure alone, before its engine on the valve is set [gpm]. */
function startGpm(
  { crew, demandGpm, department, scene }: CandidateContext,
  { leg, suction, laid }: Pick<LegWork, 'leg' | 'suction' | 'laid'>,
): number {
  if (!leg.valve) return 0;
  const situation = {
    title: 'Before the pump is set',
    invented: false,
    scene,
    demandGpm,
    department,
  };
  const plan = planOfLegs(situation, crew.attack, [{ leg, suction, laid }], situation.title);
  return new SupplySearch(unassistedPlan(plan)).greatestGpm();
}
