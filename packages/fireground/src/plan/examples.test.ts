import { describe, expect, test } from 'vitest';
import coldStore from '../../../../examples/cold-store.yaml?raw';
import hillRelay from '../../../../examples/hill-relay.yaml?raw';
import twoHydrants from '../../../../examples/two-hydrants.yaml?raw';
import { whatNow } from '../questions/what-now.ts';
import type { Plan } from './plan.ts';
import { readPlan } from './read-plan.ts';
import { writePlan } from './write-plan.ts';

const examples = [
  ['cold-store.yaml', coldStore],
  ['hill-relay.yaml', hillRelay],
  ['two-hydrants.yaml', twoHydrants],
] as const;

function read(fileName: string, text: string): Plan {
  const reading = readPlan(text, { fileName });
  if (!reading.ok) throw new Error(reading.issues.map((issue) => issue.message).join('\n'));
  expect(reading.notices).toEqual([]);
  return reading.plan;
}

describe('examples', () => {
  test.each(examples)('%s is read, is marked as made up and comes back as it was', (name, text) => {
    const plan = read(name, text);
    expect(plan.invented).toBe(true);
    for (const format of ['yaml', 'json'] as const) {
      expect(readPlan(writePlan(plan, format))).toEqual({ ok: true, plan, notices: [] });
    }
  });

  test.each(examples)('%s works as it is set: no limit is passed', (name, text) => {
    const passed = whatNow(read(name, text)).limits.filter((limit) => limit.passed);
    expect(passed.map((limit) => limit.id)).toEqual([]);
  });

  test('the cold store: what feeds the booster, and what the nozzles stand on', () => {
    const plan = read('cold-store.yaml', coldStore);
    const into = plan.lines.filter((line) => line.to.startsWith('E7.')).map((line) => line.from);
    expect(into).toEqual(['V1.pump-suction', 'H-114.side1', 'H-114.side2']);
    expect(plan.nozzles.map((nozzle) => nozzle.elevationFt)).toEqual([35, 45, 35, 35]);
  });

  test('the timber yard in metric is what it is in US units', () => {
    const plan = read('two-hydrants.yaml', twoHydrants);
    // 1 bar is 14.504 psi, 1 L/min 0.26417 gpm, 1 m 3.2808 ft (NIST SP 811, rounded).
    expect(plan.hydrants[0]?.staticPsi).toBeCloseTo(4.5 * 14.504, 2);
    expect(plan.hydrants[0]?.testGpm).toBeCloseTo(4500 * 0.26417, 0);
    expect(plan.hydrants[1]?.elevationFt).toBeCloseTo(-3 * 3.2808, 3);
    expect(plan.lines.map((line) => line.hose)).toEqual(['5', '4', '3', '3']);
    expect(plan.nozzles[0]).toMatchObject({ tipIn: 1.75 });
  });
});
