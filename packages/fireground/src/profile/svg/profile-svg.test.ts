import { describe, expect, test } from 'vitest';
import type { PressureProfile, ProfilePath, ProfileSpan, ProfileStation } from '../profile.ts';
import { layOut } from './lay-out.ts';
import type { ProfileSvgOptions } from './options.ts';
import { overlaps } from './place-labels.ts';
import { profileSvg } from './profile-svg.ts';
import { textWidth } from './text-width.ts';

const at = (
  piece: string,
  kind: ProfileStation['kind'],
  alongFt: number,
  psi: number,
  port?: string,
): ProfileStation => ({ piece, kind, alongFt, psi, elevationFt: 0, port });
const hose = (line: string, limitPsi = 185): ProfileSpan => ({ kind: 'hose', line, limitPsi });

const boosted: ProfilePath = {
  id: 'supply:H1',
  label: 'Hydrant 1 to Engine 3',
  flowGpm: 1000,
  regions: ['hookup', 'hookup', 'hookup', 'hookup', 'lay', 'lay'],
  stations: [
    at('H1', 'main', 0, 65),
    at('H1', 'outlet', 0, 60, 'steamer'),
    at('B1', 'intake', 25, 55, 'intake1'),
    at('B1', 'discharge', 25, 150),
    at('V1', 'appliance', 50, 145, 'supply'),
    at('A1', 'intake', 850, 70),
    at('A1', 'discharge', 850, 160),
  ],
  spans: [
    { kind: 'piece', piece: 'H1' },
    hose('suction'),
    { kind: 'pump', rig: 'B1' },
    hose('discharge'),
    hose('lay'),
    { kind: 'pump', rig: 'A1' },
  ],
};
const second: ProfilePath = {
  id: 'supply:H2',
  label: 'Hydrant 2 to Engine 3',
  flowGpm: 400,
  regions: ['hookup', 'lay', 'lay'],
  stations: [
    at('H2', 'main', 0, 80),
    at('H2', 'outlet', 0, 78, 'steamer'),
    at('A1', 'intake', 400, 70),
    at('A1', 'discharge', 400, 160),
  ],
  spans: [{ kind: 'piece', piece: 'H2' }, hose('lay2'), { kind: 'pump', rig: 'A1' }],
};
const attack = (number: number, lengthFt: number, psi: number): ProfilePath => ({
  id: `attack:N${number}`,
  label: `Nozzle ${number}`,
  flowGpm: 150,
  regions: ['attack'],
  stations: [at('A1', 'discharge', 0, 160), at(`N${number}`, 'nozzle', lengthFt, psi)],
  spans: [hose(`attack${number}`, 250)],
});
const profile: PressureProfile = {
  supply: [boosted, second],
  attack: [attack(1, 200, 100), attack(2, 200, 100), attack(3, 350, 82)],
};

const psi: ProfileSvgOptions = {
  formatPressure: (value) => `${Math.round(value)} psi`,
  formatDistance: (value) => `${Math.round(value)} ft`,
  formatFlow: (value) => `${Math.round(value)} gpm`,
};
const bar: ProfileSvgOptions = {
  formatPressure: (value) => `${(value / 14.5038).toFixed(1)} bar`,
  formatDistance: (value) => `${Math.round(value / 3.28084)} m`,
  formatFlow: (value) => `${Math.round(value * 3.785412)} L/min`,
  pressureUnitPsi: 14.5038,
  distanceUnitFt: 3.28084,
};

/** Every text of a drawing with the room it takes. */
function textsOf(svg: string) {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, attributes, words]) => {
    const value = (name: string) => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes!)?.[1];
    const size = Number(value('font-size') ?? 12);
    const width = textWidth(words!, size);
    const anchor = value('text-anchor');
    const x = Number(value('x'));
    const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
    const y = Number(value('y'));
    return {
      words: words!,
      box: { left, right: left + width, top: y - size * 0.75, bottom: y + size * 0.2 },
    };
  });
}

/** Names of the tags that open and never close, or close what is not open. */
function unbalanced(svg: string): string[] {
  const open: string[] = [];
  for (const [, close, name, rest] of svg.matchAll(/<(\/?)([a-z]+)([^>]*)>/g)) {
    if (rest!.endsWith('/')) continue;
    if (!close) open.push(name!);
    else if (open.pop() !== name) return [name!];
  }
  return open;
}

describe('profile drawing', () => {
  test.each([
    ['psi', psi],
    ['psi, narrow', { ...psi, width: 480, height: 280 }],
    ['bar', bar],
    ['bar, black and white', { ...bar, tone: 'black and white' }],
    ['with floors', { ...psi, floors: [{ psi: 20, label: 'intake limit 20 psi' }] }],
  ] as [string, ProfileSvgOptions][])(
    '%s: well formed, and no two texts cover each other',
    (_, options) => {
      const svg = profileSvg(profile, options);
      expect(unbalanced(svg)).toEqual([]);
      expect(svg).not.toMatch(/NaN|undefined|Infinity/);
      const texts = textsOf(svg);
      expect(texts.length).toBeGreaterThan(15);
      for (const [index, a] of texts.entries()) {
        for (const b of texts.slice(index + 1)) {
          expect(overlaps(a.box, b.box), `${a.words} / ${b.words}`).toBe(false);
        }
      }
    },
  );

  test('says each pressure in the unit of the options', () => {
    const us = profileSvg(profile, psi);
    for (const words of ['H1 main 65 psi', 'B1 intake 55 psi', 'A1 intake 70 psi', '1000 gpm']) {
      expect(us).toContain(words);
    }
    const metric = profileSvg(profile, bar);
    expect(metric).toContain('H1 main 4.5 bar');
    expect(metric).toContain('3785 L/min');
    expect(metric).not.toMatch(/psi|\bft\b|gpm/);
  });

  test('says it all in words too', () => {
    const words = /<desc>([^<]*)<\/desc>/.exec(profileSvg(profile, psi))![1]!;
    expect(words).toContain(
      'Hydrant 1 to Engine 3, 1000 gpm: H1 main 65 psi at 0 ft; H1 outlet 60 psi at 0 ft; B1 intake 55 psi at 25 ft',
    );
    expect(words).toContain('N3 82 psi at 350 ft');
  });

  test('uses greys alone in black and white', () => {
    const svg = profileSvg(profile, { ...psi, tone: 'black and white' });
    const colours = [...svg.matchAll(/#([0-9a-f]{6})/g)].map(([, hex]) => hex!);
    expect(colours.length).toBeGreaterThan(0);
    for (const hex of colours) expect(hex.slice(0, 2).repeat(3)).toBe(hex);
  });

  test('marks hose past its limit by width, not by colour alone', () => {
    const weak: PressureProfile = {
      supply: [
        {
          ...boosted,
          spans: boosted.spans.map((span) =>
            span.kind === 'hose' ? { ...span, limitPsi: 140 } : span,
          ),
        },
      ],
      attack: [],
    };
    const thick = (svg: string) => [...svg.matchAll(/<line[^>]*stroke-width="5"/g)].length;
    expect(thick(profileSvg(weak, psi))).toBe(2);
    expect(thick(profileSvg(profile, psi))).toBe(0);
  });

  test('keeps names from breaking the markup', () => {
    const svg = profileSvg(profile, { ...psi, title: '<b>&"', nameOf: (id) => `<${id}> & "co"` });
    expect(unbalanced(svg)).toEqual([]);
    expect(svg).toContain('&lt;H1&gt; &amp; &quot;co&quot; main 65 psi');
  });

  test('draws a plan without water, and one without hose', () => {
    expect(profileSvg({ supply: [], attack: [] }, psi)).toContain('No water reaches the scene.');
    const short: ProfilePath = {
      ...second,
      regions: ['hookup'],
      stations: second.stations.slice(0, 2),
      spans: second.spans.slice(0, 1),
    };
    expect(profileSvg({ supply: [short], attack: [] }, psi)).not.toMatch(/NaN|Infinity/);
  });

  test('refuses a page with no room', () => {
    expect(() => profileSvg(profile, { ...psi, width: 200 })).toThrow('page is 200 × 420 px');
  });
});

describe('across the page', () => {
  const page = layOut(profile, 100, 900);

  test('all supply ends and all attack starts at the scene’s pump', () => {
    for (const path of profile.supply) {
      expect(page.x.get(path.id)!.at(-1)).toBeCloseTo(page.sceneX, 9);
    }
    for (const path of profile.attack) expect(page.x.get(path.id)![0]).toBe(page.sceneX);
  });

  test('hose outside the hookup is to scale', () => {
    const x = page.x.get('supply:H1')!;
    expect(x[5]! - x[4]!).toBeCloseTo(800 * page.pxPerFt, 9);
    const x2 = page.x.get('supply:H2')!;
    expect(x2[2]! - x2[1]!).toBeCloseTo(400 * page.pxPerFt, 9);
    expect(page.x.get('attack:N3')!.at(-1)! - page.sceneX).toBeCloseTo(350 * page.pxPerFt, 9);
  });

  test('nothing leaves the page, and the widest path fills it', () => {
    const all = [...page.x.values()].flat();
    expect(Math.min(...all)).toBeCloseTo(100, 6);
    expect(Math.max(...all)).toBeCloseTo(900, 6);
  });
});
