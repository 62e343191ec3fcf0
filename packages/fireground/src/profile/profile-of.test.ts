import { describe, expect, test } from 'vitest';
import { boostedAtHydrant } from '../patterns/boosted-at-hydrant.ts';
import { addWyedLines } from '../patterns/branched-lines.ts';
import { draftSupply } from '../patterns/draft-supply.ts';
import { addMasterStream } from '../patterns/master-stream.ts';
import { newHydrant, newLine, newPlan, newRig } from '../patterns/pieces.ts';
import { twoHydrants } from '../patterns/two-hydrants.ts';
import type { Plan } from '../plan/plan.ts';
import type { SupplyState } from '../questions/answers.ts';
import { handLine, handRig, handState } from './hand-state.ts';
import type { PressureProfile, ProfilePath } from './profile.ts';
import { profileOf } from './profile-of.ts';

/** A path in one line a station: port, kind, distance, pressure. */
const told = (path: ProfilePath | undefined) =>
  path?.stations.map(({ piece, port, kind, alongFt, psi }) => [
    port ? `${piece}.${port}` : piece,
    kind,
    Math.round(alongFt * 100) / 100,
    Math.round(psi * 100) / 100,
  ]);

const spansTold = (path: ProfilePath | undefined) =>
  path?.spans.map((span, index) => {
    const name = span.kind === 'hose' ? span.line : span.kind === 'pump' ? span.rig : span.piece;
    return `${path.regions[index]}: ${span.kind} ${name}`;
  });

function expectWellFormed({ supply, attack }: PressureProfile) {
  for (const { stations, spans, regions } of [...supply, ...attack]) {
    expect(spans).toHaveLength(stations.length - 1);
    expect(regions).toHaveLength(spans.length);
    expect(stations[0]!.alongFt).toBe(0);
    for (const [index, { alongFt }] of stations.slice(1).entries()) {
      expect(alongFt).toBeGreaterThanOrEqual(stations[index]!.alongFt);
    }
  }
}

// 1,000 gpm by hand: 65 psi in the main, valve and hose losses in whole psi, the lay 1,000 ft with
// 80 psi of friction and a climb of 10 ft, 4.34 psi.
const boostedPlan = boostedAtHydrant({ lay: { lengthFt: 1000, riseFt: 10, hose: '5' } });
const boostedState = handState({
  hydrants: [
    {
      id: 'H1',
      flowGpm: 1000,
      mainPsi: 65,
      outlets: [{ port: 'steamer', flowGpm: 1000, psi: 60 }],
      availableGpm: 2000,
    },
  ],
  assistValves: [
    {
      id: 'V1',
      handle: 'boost',
      clapper: 'shut',
      hydrantPsi: 60,
      supplyPsi: 145,
      suctionPsi: 52,
      dischargePsi: 148,
      clapperGpm: 0,
      suctionGpm: 1000,
      dischargeGpm: 1000,
    },
  ],
  rigs: [handRig('B1', 1000, 50, 150), handRig('A1', 1000, 60.66, 160)],
  lines: [
    handLine('suction', 1000, 52, 50),
    handLine('discharge', 1000, 150, 148),
    handLine('lay', 1000, 145, 60.66, { elevationPsi: 4.34 }),
  ],
});

describe('boosted through the assist valve', () => {
  const profile = profileOf(boostedPlan, boostedState);
  const [path] = profile.supply;

  test('goes from main to the scene’s discharge by way of the booster', () => {
    expectWellFormed(profile);
    expect(profile.supply).toHaveLength(1);
    expect(told(path)).toEqual([
      ['H1', 'main', 0, 65],
      ['H1.steamer', 'outlet', 0, 60],
      ['V1.pump-suction', 'appliance', 0, 52],
      ['B1.intake1', 'intake', 25, 50],
      ['B1.discharge1', 'discharge', 25, 150],
      ['V1.pump-discharge', 'appliance', 50, 148],
      ['V1.supply', 'appliance', 50, 145],
      ['A1.intake1', 'intake', 1050, 60.66],
      ['A1', 'discharge', 1050, 160],
    ]);
  });

  test('tells hookup from lay', () => {
    expect(spansTold(path)).toEqual([
      'hookup: piece H1',
      'hookup: piece V1',
      'hookup: hose suction',
      'hookup: pump B1',
      'hookup: hose discharge',
      'hookup: piece V1',
      'lay: hose lay',
      'lay: pump A1',
    ]);
    expect(path).toMatchObject({ id: 'supply:H1', label: 'Hydrant H1 to Attack engine' });
    expect(path?.flowGpm).toBe(1000);
  });

  test('a side line that carries more than the valve is the way taken', () => {
    const plan: Plan = {
      ...boostedPlan,
      lines: [...boostedPlan.lines, newLine('side1', 'H1.side1', 'B1.intake2', '3', 50)],
    };
    const [hydrant] = boostedState.hydrants;
    const state: SupplyState = {
      ...boostedState,
      hydrants: [
        {
          ...hydrant!,
          outlets: [
            { port: 'steamer', flowGpm: 400, psi: 62 },
            { port: 'side1', flowGpm: 600, psi: 57 },
          ],
        },
      ],
      lines: [
        handLine('suction', 400, 52, 50),
        ...boostedState.lines.slice(1),
        handLine('side1', 600, 57, 50),
      ],
    };
    expect(told(profileOf(plan, state).supply[0])?.slice(0, 4)).toEqual([
      ['H1', 'main', 0, 65],
      ['H1.side1', 'outlet', 0, 57],
      ['B1.intake2', 'intake', 50, 50],
      ['B1.discharge1', 'discharge', 50, 150],
    ]);
  });
});

describe('a line', () => {
  // By hand, 0.434 psi/ft: 40 psi of friction to halfway and 30 ft up leave 145 − 40 − 13.02.
  test('shows its terrain, friction by distance and height where it is', () => {
    const plan: Plan = {
      ...boostedPlan,
      lines: boostedPlan.lines.map((line) =>
        line.id === 'lay' ? { ...line, terrain: [{ alongFt: 500, elevationFt: 30 }] } : line,
      ),
    };
    const [path] = profileOf(plan, boostedState).supply;
    const hill = path!.stations.find(({ kind }) => kind === 'terrain');
    expect(hill).toMatchObject({ piece: 'lay', alongFt: 550, elevationFt: 30 });
    expect(hill!.psi).toBeCloseTo(91.98, 9);
    expect(path!.spans.filter((span) => span.kind === 'hose' && span.line === 'lay')).toHaveLength(
      2,
    );
  });

  test('drawn from scene to hydrant is walked with the water, terrain and gated valve too', () => {
    // 500 gpm against the line's own direction: 60 psi at the hydrant, 20 psi of friction over
    // 400 ft, level but for 10 ft at 100 ft from the scene; 5 psi at the gate by the scene.
    const plan = newPlan({
      title: 'Turned line',
      scene: 'A1',
      hydrants: [newHydrant('H1', { staticPsi: 70, residualPsi: 50, testGpm: 1000 })],
      rigs: [newRig('A1', 'attack')],
      lines: [
        newLine('lay', 'A1.intake1', 'H1.steamer', '4', 400, {
          valve: { gated: { lossPsi: 5, atGpm: 500 } },
          terrain: [{ alongFt: 100, elevationFt: 10 }],
        }),
      ],
    });
    const state = handState({
      hydrants: [
        {
          id: 'H1',
          flowGpm: 500,
          mainPsi: 63,
          outlets: [{ port: 'steamer', flowGpm: 500, psi: 60 }],
          availableGpm: 1000,
        },
      ],
      rigs: [handRig('A1', 500, 35, 120)],
      lines: [
        handLine('lay', -500, 35, 60, { frictionPsi: -20, valveLossPsi: -5, elevationPsi: 0 }),
      ],
    });
    const profile = profileOf(plan, state);
    expectWellFormed(profile);
    expect(told(profile.supply[0])).toEqual([
      ['H1', 'main', 0, 63],
      ['H1.steamer', 'outlet', 0, 60],
      ['lay', 'terrain', 300, 40.66],
      ['lay', 'appliance', 400, 40],
      ['A1.intake1', 'intake', 400, 35],
      ['A1', 'discharge', 400, 120],
    ]);
  });
});

describe('sources', () => {
  const plan = twoHydrants({ first: { lengthFt: 300 }, second: { lengthFt: 800 } });
  const hydrant = (id: string, flowGpm: number) => ({
    id,
    flowGpm,
    mainPsi: 55,
    outlets: [{ port: 'steamer', flowGpm, psi: 50 }],
    availableGpm: 1000,
  });

  test('come in the order of what they give, all at the scene’s discharge', () => {
    const profile = profileOf(
      plan,
      handState({
        hydrants: [hydrant('H1', 300), hydrant('H2', 700)],
        rigs: [handRig('A1', 1000, 30, 150)],
        lines: [handLine('lay1', 300, 50, 30), handLine('lay2', 700, 50, 30)],
      }),
    );
    expectWellFormed(profile);
    expect(profile.supply.map(({ id, flowGpm }) => [id, flowGpm])).toEqual([
      ['supply:H2', 700],
      ['supply:H1', 300],
    ]);
    expect(profile.supply.map(({ stations }) => stations.at(-1))).toEqual([
      expect.objectContaining({ piece: 'A1', kind: 'discharge', alongFt: 800, psi: 150 }),
      expect.objectContaining({ piece: 'A1', kind: 'discharge', alongFt: 300, psi: 150 }),
    ]);
  });

  test('one that gives nothing beside one that flows has no path', () => {
    const profile = profileOf(
      plan,
      handState({
        hydrants: [hydrant('H1', 300), hydrant('H2', 0)],
        rigs: [handRig('A1', 300, 30, 150)],
        lines: [handLine('lay1', 300, 50, 30), handLine('lay2', 0, 50, 30)],
      }),
    );
    expect(profile.supply.map(({ id }) => id)).toEqual(['supply:H1']);
  });

  test('at rest show the pressure that stands', () => {
    const profile = profileOf(
      plan,
      handState({
        hydrants: [hydrant('H1', 0), hydrant('H2', 0)],
        rigs: [handRig('A1', 0, 50, 150)],
        lines: [handLine('lay1', 0, 55, 55), handLine('lay2', 0, 55, 55)],
      }),
    );
    expectWellFormed(profile);
    expect(profile.supply.map(({ flowGpm }) => flowGpm)).toEqual([0, 0]);
    expect(profile.attack).toEqual([]);
  });

  test('open water starts at 0 psi and draws a vacuum', () => {
    // 10 ft of lift is 4.34 psi; 1 psi at the strainer, 2 in the suction hose.
    const draft = draftSupply({ lay: { lengthFt: 600 } });
    const profile = profileOf(
      draft,
      handState({
        rigs: [handRig('S1', 500, -7.34, 100), handRig('A1', 500, 30, 150)],
        lines: [
          handLine('suction', 500, -1, -7.34, { elevationPsi: 4.34 }),
          handLine('lay', 500, 100, 30),
        ],
      }),
    );
    expectWellFormed(profile);
    expect(told(profile.supply[0])).toEqual([
      ['D1', 'water', 0, 0],
      ['D1.water', 'outlet', 0, -1],
      ['S1.intake1', 'intake', 20, -7.34],
      ['S1.discharge1', 'discharge', 20, 100],
      ['A1.intake1', 'intake', 620, 30],
      ['A1', 'discharge', 620, 150],
    ]);
    expect(profile.supply[0]?.regions).toEqual(['hookup', 'hookup', 'hookup', 'lay', 'lay']);
    expect(profile.supply[0]?.flowGpm).toBe(500);
  });

  test('a tank that feeds the lay is one, the scene’s own tank is not', () => {
    const plan = newPlan({
      title: 'Tank',
      scene: 'A1',
      rigs: [newRig('T1', 'relay', { tankGal: 2000, tankValve: 'open' }), newRig('A1', 'attack')],
      lines: [newLine('lay', 'T1.discharge1', 'A1.intake1', '3', 200)],
    });
    const profile = profileOf(
      plan,
      handState({
        rigs: [
          handRig('T1', 250, 0, 80, { tankGpm: 250 }),
          handRig('A1', 350, 70, 150, { tankGpm: 100 }),
        ],
        lines: [handLine('lay', 250, 80, 70)],
      }),
    );
    expect(profile.supply.map(({ id }) => id)).toEqual(['supply:T1']);
    expect(told(profile.supply[0])?.[0]).toEqual(['T1.tank', 'water', 0, 0]);
  });
});

describe('past the scene', () => {
  const rig = newPlan({ title: 'Attack', scene: 'A1', rigs: [newRig('A1', 'attack')] });

  test('each open nozzle of a wye has its path, a shut one none', () => {
    const plan = addWyedLines(rig, 'A1', {
      lengthFt: 200,
      lines: [{ lengthFt: 150 }, { lengthFt: 100, riseFt: 20 }],
    });
    const shut: Plan = {
      ...plan,
      nozzles: plan.nozzles.map((nozzle) => ({ ...nozzle, open: nozzle.id === 'N1' })),
    };
    const nozzle = (id: string, flowGpm: number) => ({
      id,
      flowGpm,
      pressurePsi: 100,
      ratedGpm: 150,
      ratedPsi: 100,
      reactionLb: 75,
    });
    const state = handState({
      rigs: [handRig('A1', 300, 20, 175)],
      nozzles: [nozzle('N1', 150), nozzle('N2', 150)],
      appliances: [{ id: 'W1', kind: 'wye', flowGpm: 300, inletPsi: 139, outletPsi: 134 }],
      lines: [
        handLine('leader1', 300, 175, 139),
        handLine('attack1', 150, 134, 100),
        handLine('attack2', 150, 134, 100),
      ],
    });
    const profile = profileOf(plan, state);
    expectWellFormed(profile);
    expect(profile.attack.map(({ id }) => id)).toEqual(['attack:N1', 'attack:N2']);
    expect(told(profile.attack[0])).toEqual([
      ['A1.discharge1', 'discharge', 0, 175],
      ['W1.inlet', 'appliance', 200, 139],
      ['W1.outlet1', 'appliance', 200, 134],
      ['N1.inlet', 'nozzle', 350, 100],
    ]);
    expect(profile.attack[1]?.stations.at(-1)).toMatchObject({ alongFt: 300, elevationFt: 20 });
    expect(new Set(profile.attack.flatMap(({ regions }) => regions))).toEqual(new Set(['attack']));
    expect(profileOf(shut, state).attack.map(({ id }) => id)).toEqual(['attack:N1']);
  });

  test('a monitor’s nozzle is reached by the line that feeds it most', () => {
    const plan = addMasterStream(rig, 'A1', { lines: 2, lengthFt: 300 });
    const profile = profileOf(
      plan,
      handState({
        rigs: [handRig('A1', 600, 20, 136)],
        nozzles: [
          { id: 'N1', flowGpm: 600, pressurePsi: 80, ratedGpm: 598, ratedPsi: 80, reactionLb: 283 },
        ],
        appliances: [{ id: 'MS1', kind: 'monitor', flowGpm: 600, inletPsi: 105, outletPsi: 80 }],
        lines: [handLine('stream1', 290, 136, 105), handLine('stream2', 310, 136, 105)],
      }),
    );
    expectWellFormed(profile);
    expect(told(profile.attack[0])).toEqual([
      ['A1.discharge2', 'discharge', 0, 136],
      ['MS1.inlet2', 'appliance', 300, 105],
      ['MS1.tip', 'appliance', 300, 80],
      ['N1.inlet', 'nozzle', 300, 80],
    ]);
  });
});
