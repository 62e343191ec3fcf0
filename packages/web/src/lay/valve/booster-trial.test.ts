import { type AssistValve, boostedAtHydrant } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { boosterOn, tryPressure, valveSentence } from './booster-trial.ts';
import { streamPx } from './stream-width.ts';

const plan = boostedAtHydrant({ lay: { lengthFt: 900 }, attackLines: [{}, {}, {}] });
const valve = plan.appliances.find((one): one is AssistValve => one.kind === 'assist-valve')!;
const tried = (psi: number) => {
  const { state } = tryPressure(plan, 'V1', 'B1', psi);
  const net = state.rigs.find((one) => one.id === 'B1')!.netPsi;
  return { valve: state.assistValves[0]!, net };
};

describe('trying booster pressures', () => {
  it('finds the booster behind the valve', () => {
    expect(boosterOn(plan, valve)).toBe('B1');
  });

  it('has the clapper open under hydrant pressure and shut above it, as clappers work', () => {
    expect(tried(0).valve.clapper).toBe('open');
    const boosted = tried(150);
    expect(boosted.valve.clapper).toBe('shut');
    expect(boosted.valve.dischargePsi).toBeGreaterThan(boosted.valve.hydrantPsi);
  });

  it('loses no water in the valve: what comes in goes out', () => {
    for (const psi of [0, 40, 80, 150]) {
      const { clapperGpm, suctionGpm, dischargeGpm } = tried(psi).valve;
      expect(suctionGpm).toBeCloseTo(dischargeGpm, 3);
      expect(clapperGpm).toBeGreaterThanOrEqual(-1e-6);
    }
  });

  it('tells each state in its own words', () => {
    const words = [0, 150].map((psi) => valveSentence(tried(psi).valve, tried(psi).net));
    expect(words[0]).toContain('adds nothing yet');
    expect(words[1]).toContain('closed the clapper');
  });
});

describe('streams in the drawing', () => {
  it('are wide where much flows, thin where little does, gone where none does', () => {
    expect(streamPx(0, 1000)).toBe(0);
    expect(streamPx(10, 1000)).toBeLessThan(streamPx(500, 1000));
    expect(streamPx(1000, 1000)).toBeLessThan(48);
  });
});
