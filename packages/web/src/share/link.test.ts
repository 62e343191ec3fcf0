import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planFragment, planTextIn } from './link.ts';

describe('share link', () => {
  it('gives back the text that went in, any text', () => {
    const text = fc.string({ unit: 'grapheme', minLength: 1 }).filter((s) => s.trim() !== '');
    fc.assert(
      fc.property(text, (planText) => {
        expect(planTextIn(planFragment(planText))).toBe(planText);
      }),
    );
  });

  it('uses only characters that need no escaping in an address (RFC 3986, unreserved)', () => {
    const fragment = planFragment('title: Quarry Lane ½ é\n'.repeat(40));
    expect(fragment).toMatch(/^#plan=[A-Za-z0-9_-]+$/);
  });

  it('makes a plan shorter, not longer', () => {
    const planText = '  - hose: 5\n    lengthFt: 100\n    valve: open\n'.repeat(30);
    expect(planFragment(planText).length).toBeLessThan(planText.length / 4);
  });

  it('finds no plan in an ordinary address', () => {
    expect(planTextIn('')).toBeNull();
    expect(planTextIn('#limits')).toBeNull();
  });

  it('says in words that a cut link is damaged', () => {
    const whole = planFragment('title: Quarry Lane\nnote: a plan long enough to be cut\n');
    expect(() => planTextIn(whole.slice(0, whole.length - 12))).toThrow(/damaged/);
    expect(() => planTextIn('#plan=***')).toThrow(/damaged/);
  });
});
