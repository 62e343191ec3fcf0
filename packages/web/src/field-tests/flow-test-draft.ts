/** A flow test while it is being written, and the record it becomes. */
import type { FlowingOutlet } from '@plugside/fireground';
import type { FieldsIn } from '@plugside/records/model';
import { newOutlet, type OutletDraft } from './outlet-draft.ts';
import { ownFields, type Row, rowOf, written } from './reading-rows.ts';

export type FlowTestFields = FieldsIn<'flow-tests'>;

export interface FlowTestDraft {
  testedOn: string;
  staticPsi: number | undefined;
  residualPsi: number | undefined;
  outlets: Row<OutletDraft>[];
  statedFlowGpm: number | undefined;
  by: string;
  note: string;
}

/** From a record, or an empty one dated today. */
export function flowTestDraft(
  initial: Partial<FlowTestFields> | undefined,
  today: string,
): FlowTestDraft {
  const outlets = (initial?.flowing ?? []).map((outlet) => {
    const empty = newOutlet().value;
    return rowOf<OutletDraft>({
      hydrant: outlet.hydrant ?? '',
      by: outlet.flowGpm !== undefined ? 'meter' : 'pitot',
      outletIn: outlet.outletIn ?? empty.outletIn,
      coefficient: outlet.coefficient ?? empty.coefficient,
      pitotPsi: outlet.pitotPsi,
      flowGpm: outlet.flowGpm,
    });
  });
  return {
    testedOn: initial?.testedOn ?? today,
    staticPsi: initial?.staticPsi,
    residualPsi: initial?.residualPsi,
    outlets: initial ? outlets : [newOutlet()],
    statedFlowGpm: initial?.statedFlowGpm,
    by: initial?.by ?? '',
    note: initial?.note ?? '',
  };
}

const outletOf = ({ value }: Row<OutletDraft>): FlowingOutlet => {
  const hydrant = value.hydrant.trim() || undefined;
  return written<FlowingOutlet>(
    value.by === 'meter'
      ? { hydrant, flowGpm: value.flowGpm }
      : {
          hydrant,
          outletIn: value.outletIn,
          coefficient: value.coefficient,
          pitotPsi: value.pitotPsi,
        },
  );
};

/** What of a draft can be judged already; null until both pressures stand. */
export function judged(draft: FlowTestDraft) {
  const { testedOn, staticPsi, residualPsi } = draft;
  if (staticPsi === undefined || residualPsi === undefined || testedOn === '') return null;
  return {
    testedOn,
    staticPsi,
    residualPsi,
    flowing: draft.outlets.map(outletOf),
    statedFlowGpm: draft.statedFlowGpm,
  };
}

/** The record's fields; null until it can be saved. What the form does not show stays as it was. */
export function flowTestFields(
  draft: FlowTestDraft,
  hydrantId: string,
  initial: Partial<FlowTestFields> | undefined,
): FlowTestFields | null {
  const test = judged(draft);
  if (!test || test.residualPsi > test.staticPsi) return null;
  const { by, note, statedFlowGpm } = draft;
  // An outlet that nobody touched says nothing and would count as a missing reading.
  const flowing = test.flowing.filter(
    ({ hydrant, pitotPsi, flowGpm }) => hydrant || pitotPsi !== undefined || flowGpm !== undefined,
  );
  return written({
    ...ownFields(initial ?? {}),
    ...test,
    hydrantId,
    flowing,
    statedFlowGpm,
    by: by.trim(),
    note: note.trim(),
  });
}
