import { describe, expect, it } from 'vitest';
import { distanceScale } from '../scene/distance-scale.ts';
import { distanceTicks, greatestShown, profileFrame } from './profile-frame.ts';

describe('the pressure scale', () => {
  it('has higher pressures higher, and keeps all of them in the frame', () => {
    const frame = profileFrame([20, 185, 32], 300, 'us');
    expect(frame.y(185)).toBeLessThan(frame.y(20));
    for (const psi of [0, 20, 32, 185]) {
      expect(frame.y(psi)).toBeGreaterThanOrEqual(frame.topPx);
      expect(frame.y(psi)).toBeLessThanOrEqual(frame.bottomPx);
    }
    expect(frame.psiAt(frame.y(110))).toBeCloseTo(110, 9);
  });

  it('reaches below zero for a vacuum at a drafting intake', () => {
    const frame = profileFrame([-11, 120], 300, 'us');
    expect(frame.y(-11)).toBeLessThanOrEqual(frame.bottomPx);
    expect(frame.y(0)).toBeLessThan(frame.y(-11));
  });

  it('rules at round numbers of the unit shown', () => {
    for (const tick of profileFrame([185], 300, 'si').ticks) {
      // 1 bar is 100 kPa and 1 psi is 6.894757 kPa (NIST SP 811, B.8).
      expect((tick.psi * 6.894757) / 100).toBeCloseTo(Number(tick.text), 6);
    }
  });

  it('does not let a pressure at rest flatten the flowing ones', () => {
    expect(greatestShown([185], [200])).toBe(200);
    expect(greatestShown([185], [420])).toBe(185);
  });
});

describe('the distance ticks', () => {
  const scale = distanceScale({
    widthPx: 1000,
    hookupPx: 300,
    layFt: 900,
    attackFt: 200,
    leastAttackPx: 100,
    endPx: 90,
    rigsAtFt: [900],
    rigPx: 70,
  });

  it('begin at the source, end at the scene and keep apart', () => {
    const ticks = distanceTicks(scale, 900, 'us', 70);
    expect(ticks[0]).toMatchObject({ text: '0', x: scale.hookupEndX });
    expect(ticks.at(-1)).toMatchObject({ text: '900', x: scale.sceneX });
    for (const [i, tick] of ticks.slice(1).entries()) {
      expect(tick.x - ticks[i]!.x).toBeGreaterThanOrEqual(70);
    }
  });

  it('tell metres in metric: 900 ft is 274 m', () => {
    expect(distanceTicks(scale, 900, 'si', 70).at(-1)?.text).toBe('274');
  });
});
