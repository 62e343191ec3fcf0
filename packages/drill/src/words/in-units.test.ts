/**
 * Every text that ships, for a reader of SI: no number is left without a unit beside one that was turned.
 * 1 psi = 0.06894757 bar, 1 ft = 0.3048 m (NIST SP 811, appendix B.8); hose sizes as in the drawing.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { formatQuantity, type Quantity } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import type { DrillAction } from '../action.ts';
import { createDrill } from '../drill.ts';
import { evolutions } from '../evolutions/index.ts';
import { judge } from '../judge.ts';
import { playedBy } from '../played-by.ts';
import { radioPresets, radioText } from '../radio.ts';
import { playedRoles } from '../role.ts';
import { TICKS_PER_S } from '../state.ts';
import { step } from '../step.ts';
import { inUnits, type WordUnits } from './in-units.ts';

const si: WordUnits = {
  system: 'si',
  text: (value: number, quantity: Quantity) => {
    const { number, unit } = formatQuantity(value, quantity, 'si');
    return `${number} ${unit}`;
  },
};

/** Numbers of a text that are neither an amount nor part of a name. */
function bareNumbers(text: string): string[] {
  const rest = text
    .replace(/\b[A-Z]{1,2}\d+\b/g, '')
    .replace(
      /\b(?:intake|discharge|outlet|line|hose|nozzle|lay|leg|suction|side|inlet|gate|engine)s? \d+\b/gi,
      '',
    )
    .replace(
      /\d[\d,]*(?:\.\d+)? (?:bar|kPa|L\/min|L|m|mm|s|%|minutes?|seconds?|turns?|times?)(?!\w)/g,
      '',
    );
  return rest.match(/\d[\d,.¼½¾]*|[¼½¾]/g) ?? [];
}

/** Asserts that a text leaves nothing bare beside what is turned, nor any US unit. */
function expectTurned(text: string): void {
  const turned = inUnits(text, si);
  expect(turned, text).not.toMatch(/\d (?:psi|gpm|gal|ft)\b|[¼½¾\d] in(?:[.,;:)]|$)/);
  if (turned !== text) expect(bareNumbers(turned), `${text} → ${turned}`).toEqual([]);
}

describe('a text in the reader’s units', () => {
  it('has pressures, lengths and sizes of hose turned', () => {
    expect(inUnits('100 psi at the nozzle and 70 psi lost in 200 ft of 1¾ in.', si)).toBe(
      '6.9 bar at the nozzle and 4.8 bar lost in 61 m of 45 mm.',
    );
    expect(inUnits('510 gal in 500 ft of 5 in.', si)).toMatch(/ L in 152 m of 125 mm\.$/);
    expect(inUnits('2½ in hose, 1-3/4 in line, 1 3/4 in, 3 in', si)).toBe(
      '65 mm hose, 45 mm line, 45 mm, 77 mm',
    );
  });

  it('keeps what is no size of hose', () => {
    for (const text of [
      'Discharge 3 in Attack engine',
      'Shut in 3 s',
      'Opened intake 2 in 4 s',
      'Mill Lane, 12 in, from 1960',
      'Line 2 in use',
    ])
      expect(inUnits(text, si)).toBe(text);
  });
});

describe.each(evolutions.map((one) => [one.key, one] as const))('what ships with %s', (_, one) => {
  it('leaves no number bare', () => {
    const scene = one.scene();
    for (const { what, why, water, hazard } of scene.steps)
      for (const text of [what, why, water, hazard ?? '']) expectTurned(text);
    for (const text of [one.title, one.teaches, ...one.cautions]) expectTurned(text);
    for (const { why } of scene.expectedMessages) expectTurned(why);
  });

  it('tells all that goes wrong in whole units, while it is played badly', () => {
    const scene = one.scene();
    scene.hoses.forEach((hose) => {
      hose.limitPsi = 60;
      hose.burstPsi = 130;
    });
    const drill = createDrill(scene, 3);
    const rush: DrillAction[] = scene.valves.map(({ id }) => ({
      do: 'set valve',
      valve: id,
      opening: 0,
    }));
    const isOver = () => drill.state.tick > 400 * TICKS_PER_S;
    for (let n = 0; !isOver(); n++) {
      const by = playedRoles.flatMap((role) => playedBy(role, scene, drill.state));
      const wild =
        n > 200 * TICKS_PER_S && n % 97 === 0
          ? playedRoles.flatMap((role) => [
              { role, action: rush[(n / 97) % rush.length]! },
              ...scene.hoses.map(({ id }) => ({
                role,
                action: { do: 'uncouple', hose: id, end: n % 2 ? 'to' : 'from' } as const,
              })),
              ...scene.pumps.map(({ rigId }) => ({
                role,
                action: { do: 'set governor', rig: rigId, pdpPsi: 400 } as const,
              })),
            ])
          : [];
      step(drill, [...by, ...wild]);
    }
    const told = new Set<string>();
    for (const entry of drill.log) {
      if (entry.kind === 'event') told.add(entry.event.text);
      if (entry.kind === 'refused') told.add(entry.problem.message);
    }
    expect(told.size).toBeGreaterThan(10);
    for (const text of told) expectTurned(text);
    for (const { label, notJudged, moments } of judge(scene, drill.state))
      for (const text of [label, notJudged ?? '', ...moments.map(({ note }) => note ?? '')])
        expectTurned(text);
  });
});

describe('what is said', () => {
  it('leaves no number bare', () => {
    for (const preset of radioPresets)
      expectTurned(radioText({ preset: preset.key, psi: 120, gpm: 250 }));
  });
});

describe('the source', () => {
  it('writes the unit behind every quantity that it puts into a sentence', () => {
    const folder = new URL('../', import.meta.url);
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
      (name) => name.endsWith('.ts') && !name.endsWith('.test.ts'),
    );
    expect(files.length).toBeGreaterThan(60);
    const bare = files.flatMap((name) =>
      [
        ...readFileSync(new URL(name, folder), 'utf8').matchAll(
          /\$\{(?:Math\.\w+\()?[\w.!-]*(Psi|Gpm|Gal|Ft|psi|gpm|gal)\)?\}(?! (?:psi|gpm|gal|ft)\b)/g,
        ),
      ].map(([found]) => `${name}: ${found}`),
    );
    expect(bare).toEqual([]);
  });
});
