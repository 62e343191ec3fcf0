import {
  boostedAtHydrant,
  mostWater,
  type Plan,
  profileOf,
  relay,
  twoHydrants,
} from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { drawingSizes } from './drawing-sizes.ts';
import { evolutionScene } from './evolution-scene.ts';
import { placeTracks } from './tracks.ts';

const widths = [358, 788, 1003];

function drawn(plan: Plan, widthPx: number, bareSource = false) {
  const answer = mostWater(plan);
  const sizes = drawingSizes(widthPx, bareSource);
  const tracks = placeTracks(profileOf(answer.plan, answer.state), sizes);
  return { sizes, tracks, scene: evolutionScene(answer.plan, tracks, sizes) };
}

const plans: [string, Plan, boolean][] = [
  [
    'a booster with side lines',
    boostedAtHydrant({ booster: { sideLines: [{ hose: '3' }] }, attackLines: [{}, {}] }),
    false,
  ],
  ['a relay of six', relay({ pumps: 6, attackLines: [{}] }), false],
  ['two hydrants', twoHydrants({ second: { lengthFt: 1500 }, attackLines: [{}] }), true],
];

describe('the shared axis', () => {
  for (const [name, plan, bare] of plans) {
    for (const width of widths) {
      it(`runs from left to right inside ${width} px for ${name}`, () => {
        const { tracks } = drawn(plan, width, bare);
        for (const { stations } of [...tracks.supply, ...tracks.attack]) {
          const xs = stations.map((one) => one.x);
          expect([...xs].sort((a, b) => a - b)).toEqual(xs);
          for (const x of xs) expect(x >= 0 && x <= width).toBe(true);
        }
      });
    }
  }

  it('ends every supply at the scene, however long its own lay is', () => {
    const { tracks } = drawn(plans[2]![1], 1003, true);
    const ends = tracks.supply.map(
      (track) => track.stations.find((one) => one.kind === 'intake')?.x,
    );
    expect(ends).toHaveLength(2);
    expect(ends[0]).toBeCloseTo(ends[1]!, 6);
    expect(ends[0]).toBeCloseTo(tracks.scale.sceneX, 6);
  });

  it('draws equal legs of a relay equally long', () => {
    const { tracks } = drawn(plans[1]![1], 1003);
    const stations = tracks.supply[0]!.stations;
    const legs = stations.flatMap((one, i) =>
      one.kind === 'discharge' && stations[i + 1]?.kind === 'intake'
        ? [stations[i + 1]!.x - one.x]
        : [],
    );
    expect(legs).toHaveLength(5);
    for (const leg of legs) expect(leg).toBeCloseTo(legs[0]!, 6);
  });
});

describe('the evolution', () => {
  for (const [name, plan, bare] of plans) {
    it(`draws every hose, rig and nozzle of ${name} once, inside its frame`, () => {
      for (const width of widths) {
        const { scene } = drawn(plan, width, bare);
        const lines = scene.hoses.map((one) => one.line).filter((id) => !/[#:]/.test(id));
        expect([...lines].sort()).toEqual(plan.lines.map((one) => one.id).sort());
        expect(scene.rigs.map((one) => one.id).sort()).toEqual(
          plan.rigs.map((one) => one.id).sort(),
        );
        const nozzles = scene.fittings.filter((one) => one.kind === 'nozzle');
        expect(nozzles).toHaveLength(plan.nozzles.length);
        for (const rig of scene.rigs) {
          expect(rig.x >= 0 && rig.x + rig.width <= width).toBe(true);
          expect(rig.y >= 0 && rig.y + rig.height <= scene.height).toBe(true);
        }
      }
    });
  }

  it('stands higher ground higher', () => {
    const flat = drawn(boostedAtHydrant({ lay: { riseFt: 0 } }), 1003);
    const uphill = drawn(boostedAtHydrant({ lay: { riseFt: 40 } }), 1003);
    const start = (scene: typeof flat) => scene.scene.tracks[0]!.ground[0]![1];
    expect(flat.scene.scene!.y).toBeGreaterThan(uphill.scene.scene!.y);
    expect(start(flat)).toBeCloseTo(start(uphill), 6);
  });
});
