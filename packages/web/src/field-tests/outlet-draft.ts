import { USUAL_OUTLET } from '@plugside/fireground';
import { type Row, rowOf } from './reading-rows.ts';

/** A flowing outlet while it is being written. */
export interface OutletDraft {
  hydrant: string;
  by: 'pitot' | 'meter';
  outletIn: number | undefined;
  coefficient: number;
  pitotPsi: number | undefined;
  flowGpm: number | undefined;
}

export const newOutlet = (hydrant = ''): Row<OutletDraft> =>
  rowOf({
    hydrant,
    by: 'pitot' as const,
    outletIn: USUAL_OUTLET.outletIn,
    coefficient: USUAL_OUTLET.coefficient,
    pitotPsi: undefined,
    flowGpm: undefined,
  });
