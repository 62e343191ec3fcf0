/** "What if": one thing varied, the question asked at every value. */

import { checkLimits } from '../limits/check-limits.ts';
import type { HoseSize, Plan } from '../plan/plan.ts';
import type { LimitCheck } from './answers.ts';
import { mainLay, withLine } from './main-lay.ts';
import { type MostWaterOptions, mostWater, withSettings } from './most-water.ts';
import { settingsFor } from './settings-for.ts';
import { solveNow } from './what-now.ts';

export type SweptValue =
  | 'lay length'
  | 'rise'
  | 'lay lines'
  | 'demand'
  | 'pdp'
  | 'coefficient'
  | 'static'
  | 'hose';

export interface SweepRow {
  value: number | HoseSize;
  /** Greatest flow, flow as set, or the demand, by the question [gpm]. */
  flowGpm: number;
  sceneIntakePsi: number;
  /** By rig [psi]. */
  pdpPsi: Record<string, number>;
  /** Least main residual in use [psi]; left out where there is no hydrant. */
  mainPsi?: number;
  /** Demand met; always true for the greatest flow above 0. */
  possible: boolean;
  binding: LimitCheck[];
}

export interface SweepOptions {
  vary: SweptValue;
  /** Inside units; hose sizes for `hose`. */
  values: readonly (number | HoseSize)[];
  /** The rig whose discharge pressure varies; the first before the scene where left out. */
  rig?: string;
}

/**
 * Runs a sweep. Varying the lay's length, hose, lines, coefficient, the rise or the hydrant's static asks
 * for the most water; varying the demand asks for the settings; varying a pump's discharge pressure
 * asks what happens then.
 * @throws RangeError where the plan has nothing of the kind to vary; NetworkError
 */
export function sweep(plan: Plan, options: SweepOptions, asked: MostWaterOptions = {}): SweepRow[] {
  return options.values.map((value) => rowAt(plan, options, value, asked));
}

function rowAt(
  plan: Plan,
  options: SweepOptions,
  value: number | HoseSize,
  asked: MostWaterOptions,
): SweepRow {
  if (options.vary === 'demand') {
    const answer = settingsFor(plan, Number(value), asked);
    return rowOf(
      value,
      answer.possible ? answer.demandGpm : answer.demandGpm - answer.shortfallGpm,
      answer.state,
      answer.possible,
      answer.possible
        ? answer.limits.filter((l) => l.binds && l.weight === 'hard')
        : answer.failing,
    );
  }
  if (options.vary === 'pdp') {
    const rig =
      options.rig ?? plan.rigs.find((candidate) => candidate.id !== plan.scene)?.id ?? plan.scene;
    if (!plan.rigs.some((candidate) => candidate.id === rig)) {
      throw new RangeError(
        `The plan has no rig "${rig}". Its rigs are ${plan.rigs.map((r) => r.id).join(', ')}.`,
      );
    }
    const set = withSettings(plan, new Map([[rig, Number(value)]]));
    const state = solveNow(set);
    const limits = checkLimits(set, state).filter((limit) => limit.weight === 'hard');
    return rowOf(
      value,
      state.sceneGpm,
      state,
      !limits.some((limit) => limit.passed),
      limits.filter((limit) => limit.passed || limit.binds),
    );
  }
  const answer = mostWater(varied(plan, options.vary, value), asked);
  return rowOf(value, answer.flowGpm, answer.state, answer.flowGpm > 0, answer.binding);
}

function varied(plan: Plan, vary: SweptValue, value: number | HoseSize): Plan {
  if (vary === 'static') {
    return {
      ...plan,
      hydrants: plan.hydrants.map((hydrant) => ({
        ...hydrant,
        staticPsi: Number(value),
        residualPsi: hydrant.residualPsi + Number(value) - hydrant.staticPsi,
      })),
    };
  }
  const lay = mainLay(plan);
  if (!lay) throw new RangeError(`No line runs to ${plan.scene}: there is no lay to vary.`);
  switch (vary) {
    case 'lay length':
      return withLine(plan, lay.id, { lengthFt: Number(value), terrain: undefined });
    case 'lay lines':
      return withLine(plan, lay.id, { count: Number(value) });
    case 'coefficient':
      return withLine(plan, lay.id, { coefficient: Number(value) });
    case 'hose':
      return withLine(plan, lay.id, {
        hose: value as HoseSize,
        coefficient: undefined,
        coefficientOrigin: undefined,
      });
    default: {
      const from = plan.hydrants[0]?.elevationFt ?? plan.drafts[0]?.waterElevationFt ?? 0;
      const scene = plan.rigs.find((rig) => rig.id === plan.scene)!;
      const by = from + Number(value) - scene.elevationFt;
      return {
        ...plan,
        rigs: plan.rigs.map((rig) =>
          rig.id === plan.scene ? { ...rig, elevationFt: rig.elevationFt + by } : rig,
        ),
        nozzles: plan.nozzles.map((nozzle) => ({
          ...nozzle,
          elevationFt: nozzle.elevationFt + by,
        })),
      };
    }
  }
}

function rowOf(
  value: number | HoseSize,
  flowGpm: number,
  state: {
    rigs: { id: string; pdpPsi: number }[];
    hydrants: { mainPsi: number }[];
    sceneIntakePsi: number;
  },
  possible: boolean,
  binding: LimitCheck[],
): SweepRow {
  const row: SweepRow = {
    value,
    flowGpm,
    sceneIntakePsi: state.sceneIntakePsi,
    pdpPsi: Object.fromEntries(state.rigs.map((rig) => [rig.id, rig.pdpPsi])),
    possible,
    binding,
  };
  if (state.hydrants.length > 0)
    row.mainPsi = Math.min(...state.hydrants.map((hydrant) => hydrant.mainPsi));
  return row;
}
