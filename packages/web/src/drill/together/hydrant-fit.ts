/** Whether an evolution can be drilled on a hydrant of the records, and what it makes of it. */
import { evolutionOf, sceneWithHydrant } from '@plugside/drill';
import { demandOf, mostWater } from '@plugside/fireground';
import type { Fields } from '@plugside/records/model';
import { hydrantFromRecord, type PlanningNotice } from '@plugside/records/planning';

export interface HydrantFit {
  fits: boolean;
  /** What there is to doubt in it, and why it does not fit. */
  notices: PlanningNotice[];
  /** In words of its own, where the evolution cannot take it. */
  problem?: string;
  /** What the evolution's lines take, and the most that they get with it [gpm]; left out: not worked out. */
  lines?: { demandGpm: number; mostGpm: number };
}

/**
 * An evolution on a hydrant, looked at before it is made. Never throws for what records may hold.
 * @param key of the evolution
 * @param test that plans take; left out: none is on record
 * @param today ISO date, to be told when the test is old
 */
export function hydrantFit(
  key: string,
  record: Fields<'hydrants'>,
  test: Fields<'flow-tests'> | undefined,
  today: string,
): HydrantFit {
  const notices: PlanningNotice[] = [];
  const { hydrant, steamer } = hydrantFromRecord('H1', record, test, 0, notices, today);
  const evolution = evolutionOf(key);
  if (!hydrant || !evolution) return { fits: false, notices };
  if (!steamer) {
    return {
      fits: false,
      // What a plan would take instead of a large outlet is of no use here.
      notices: notices.filter(({ code }) => code !== 'no-steamer'),
      problem: `${record.name} has no large outlet on record, which the evolution’s hose lies on. Enter it, or pick another hydrant.`,
    };
  }
  try {
    const { plan } = sceneWithHydrant(evolution.scene(), hydrant);
    const demandGpm = demandOf(plan);
    return { fits: true, notices, lines: { demandGpm, mostGpm: mostWater(plan).flowGpm } };
  } catch (error) {
    return {
      fits: false,
      notices,
      problem: error instanceof Error ? error.message : String(error),
    };
  }
}

/** Whether the lines get less than they take, by more than a gauge shows [gpm]. */
export const isShort = ({ demandGpm, mostGpm }: NonNullable<HydrantFit['lines']>): boolean =>
  mostGpm < demandGpm - 5;
