import { describe, expect, test } from 'vitest';
import {
  FIELD_FOG_REACTION_CONSTANT,
  FIELD_SMOOTH_BORE_REACTION_CONSTANT,
  fogReactionLb,
  smoothBoreReactionLb,
} from './nozzle-reaction.ts';
import { smoothBoreFlowGpm } from './nozzles.ts';
import { nozzleReactionRows, nozzleReactionRows2 } from './published/nozzles.ts';
import { misses, titled } from './published/published-row.ts';

describe('nozzle reaction', () => {
  test.each(titled(nozzleReactionRows))('%s', (_, row) => {
    const { flowGpm, nozzlePsi } = row.given;
    expect(misses(row, { reactionLb: fogReactionLb(flowGpm, nozzlePsi) })).toEqual([]);
  });

  test.each(titled(nozzleReactionRows2))('%s', (_, row) => {
    const { tipIn, nozzlePsi } = row.given;
    expect(misses(row, { reactionLb: smoothBoreReactionLb(tipIn, nozzlePsi) })).toEqual([]);
  });

  test('fog at 100 psi pushes half its gpm (published: Fireground Hydraulics in Your Head: Nozzle Reaction, Fire Engineering)', () => {
    expect(fogReactionLb(150, 100, FIELD_FOG_REACTION_CONSTANT)).toBeCloseTo(75, 9);
  });

  test('1⅛ in tip at 50 psi by the field constant: 94.9 lb (Formulas study cards)', () => {
    const got = smoothBoreReactionLb(1.125, 50, FIELD_SMOOTH_BORE_REACTION_CONSTANT);
    expect(got).toBeCloseTo(94.9, 1);
  });

  test('the two laws agree within 5 % on a smooth bore, for both are ρ·Q·v', () => {
    const flow = smoothBoreFlowGpm(1.25, 80);
    expect(fogReactionLb(flow, 80) / smoothBoreReactionLb(1.25, 80)).toBeCloseTo(0.955, 2);
  });

  test('refuses a negative flow', () => {
    expect(() => fogReactionLb(-1, 100)).toThrow('flowGpm is -1');
  });
});
