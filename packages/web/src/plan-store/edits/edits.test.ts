import {
  addMasterStream,
  boostedAtHydrant,
  checkPlan,
  limitsFor,
  mostWater,
} from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { isBoosting, setBoosting } from './boost.ts';
import { addAttackLine, addSideLine, removeLine } from './lines.ts';
import { changeHose, patchLine, raiseNozzle } from './pieces.ts';
import { setLimit, takeSettings } from './settings.ts';

const plan = boostedAtHydrant({ lay: { lengthFt: 900, riseFt: 35 }, attackLines: [{}, {}] });

describe('changes to a plan', () => {
  it('leave it sound, and the old one as it was', () => {
    const before = structuredClone(plan);
    const changed = [
      addSideLine(plan, 'B1', '3'),
      addAttackLine(plan, 'A1'),
      removeLine(plan, 'attack1'),
      setBoosting(plan, 'B1', false),
      changeHose(plan, 'lay', '4'),
      setLimit(plan, 'supplyHosePsi', 150),
    ];
    for (const one of changed) {
      expect(checkPlan(one)).toEqual([]);
      expect(one).not.toEqual(plan);
    }
    expect(plan).toEqual(before);
  });

  it('come undone by their opposites', () => {
    expect(removeLine(addSideLine(plan, 'B1', '3'), 'side1')).toEqual(plan);
    expect(removeLine(addAttackLine(plan, 'A1'), 'attack3')).toEqual(plan);
    expect(
      limitsFor(setLimit(setLimit(plan, 'supplyHosePsi', 150), 'supplyHosePsi', null)),
    ).toEqual(limitsFor(plan));
  });

  it('take a monitor away with its last line, not before', () => {
    const withStream = addMasterStream(plan, 'A1');
    const one = removeLine(withStream, 'stream1');
    expect(one.appliances.some((piece) => piece.kind === 'monitor')).toBe(true);
    const none = removeLine(one, 'stream2');
    expect(none.appliances.some((piece) => piece.kind === 'monitor')).toBe(false);
    expect(none.nozzles).toEqual(plan.nozzles);
    expect(checkPlan(none)).toEqual([]);
  });

  it('put the valve handle and the pump together when the booster goes on and off', () => {
    const off = setBoosting(plan, 'B1', false);
    expect(isBoosting(plan, 'B1')).toBe(true);
    expect(isBoosting(off, 'B1')).toBe(false);
    expect(mostWater(off).flowGpm).toBeLessThan(mostWater(plan).flowGpm);
    expect(isBoosting(setBoosting(off, 'B1', true), 'B1')).toBe(true);
  });

  it('drop a coefficient that was measured on the hose before', () => {
    const measured = patchLine(plan, 'lay', { coefficient: 0.066 });
    expect(
      changeHose(measured, 'lay', '4').lines.find((one) => one.id === 'lay'),
    ).not.toHaveProperty('coefficient');
  });

  it('raise a nozzle with the monitor under it', () => {
    const raised = raiseNozzle(addMasterStream(plan, 'A1'), 'N3', 80);
    expect(raised.nozzles.find((one) => one.id === 'N3')?.elevationFt).toBe(80);
    expect(raised.appliances.find((one) => one.kind === 'monitor')?.elevationFt).toBe(80);
  });

  it('set the pumps as an answer found them, and nothing else', () => {
    const answer = mostWater(plan);
    const set = takeSettings(plan, answer.plan);
    expect(set.rigs.map((rig) => rig.setting)).toEqual(answer.plan.rigs.map((rig) => rig.setting));
    expect({ ...set, rigs: [], lines: [] }).toEqual({ ...plan, rigs: [], lines: [] });
  });
});
