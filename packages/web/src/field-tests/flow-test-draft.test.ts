import { recordSchemas } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { type FlowTestFields, flowTestDraft, flowTestFields } from './flow-test-draft.ts';

const hydrantId = '01ARZ3NDEKTSV4RRFFQ69G5FAV';
const record: FlowTestFields = {
  hydrantId,
  testedOn: '2024-05-20',
  staticPsi: 72,
  residualPsi: 44,
  flowing: [
    { hydrant: 'H-2', outletIn: 2.5, coefficient: 0.8, pitotPsi: 12 },
    { hydrant: 'H-3', flowGpm: 640 },
  ],
  statedFlowGpm: 1150,
  by: 'Station 2',
  note: 'Valve at the corner found half shut.',
  origins: { staticPsi: { kind: 'measured', text: 'own gauge' } },
  externalSource: 'water utility list',
  externalId: '17',
};

describe('a flow test in its form', () => {
  it('comes out as it went in, with what the form does not show', () => {
    const stored = { ...record, id: hydrantId, version: 3, createdAt: 'x', updatedAt: 'y' };
    expect(flowTestFields(flowTestDraft(stored, '2026-01-01'), hydrantId, stored)).toEqual(record);
  });

  it('is a record that the schema takes', () => {
    const fields = flowTestFields(flowTestDraft(record, '2026-01-01'), hydrantId, record);
    expect(recordSchemas['flow-tests'].safeParse(fields).success).toBe(true);
  });

  it('cannot be saved before both pressures stand, nor with residual above static', () => {
    const empty = flowTestDraft(undefined, '2026-01-01');
    expect(flowTestFields(empty, hydrantId, undefined)).toBeNull();
    const swapped = { ...empty, staticPsi: 40, residualPsi: 60 };
    expect(flowTestFields(swapped, hydrantId, undefined)).toBeNull();
  });

  it('leaves out an outlet that nobody read, and fields left empty', () => {
    const draft = { ...flowTestDraft(undefined, '2026-01-01'), staticPsi: 60, residualPsi: 40 };
    const fields = flowTestFields({ ...draft, statedFlowGpm: 900 }, hydrantId, undefined);
    expect(fields).toEqual({
      hydrantId,
      testedOn: '2026-01-01',
      staticPsi: 60,
      residualPsi: 40,
      flowing: [],
      statedFlowGpm: 900,
    });
  });
});
