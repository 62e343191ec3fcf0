import { describe, expect, test } from 'vitest';
import { boostedAtHydrant } from '../patterns/boosted-at-hydrant.ts';
import {
  newDraft,
  newHydrant,
  newManifold,
  newMonitor,
  newNozzle,
  newRig,
  newSiamese,
  newSprinklerConnection,
  newStandpipe,
  newWye,
} from '../patterns/pieces.ts';
import {
  describeLine,
  freePortsOf,
  kindOf,
  occupantsOf,
  type Piece,
  pieceOf,
  portOf,
  portsOf,
  splitPortRef,
} from './ports.ts';

const plan = boostedAtHydrant({ attackLines: [{}] });
const valve = pieceOf(plan, 'V1') as Piece;
const test1 = { staticPsi: 60, residualPsi: 40, testGpm: 1000 };

describe('ports', () => {
  test.each<[string, Piece, string[], string[]]>([
    ['hydrant', newHydrant('H', test1), [], ['steamer', 'side1', 'side2']],
    ['draft', newDraft('D'), [], ['water']],
    [
      'rig',
      newRig('E', 'attack', { intakes: 2, discharges: 3 }),
      ['intake1', 'intake2'],
      ['discharge1', 'discharge2', 'discharge3'],
    ],
    ['assist-valve', valve, ['pump-discharge'], ['pump-suction', 'supply']],
    ['wye', newWye('W'), ['inlet'], ['outlet1', 'outlet2']],
    ['siamese', newSiamese('S'), ['inlet1', 'inlet2'], ['outlet']],
    [
      'manifold',
      newManifold('M', { inlets: 2, outlets: 3 }),
      ['inlet1', 'inlet2'],
      ['outlet1', 'outlet2', 'outlet3'],
    ],
    ['monitor', newMonitor('MS'), ['inlet1'], ['tip']],
    ['standpipe', newStandpipe('SP', { outlets: 1 }), ['inlet1', 'inlet2'], ['outlet1']],
    [
      'sprinkler',
      newSprinklerConnection('F', { demandGpm: 500, basePsi: 100, inlets: 1 }),
      ['inlet1'],
      [],
    ],
    ['nozzle', newNozzle('N', { kind: 'fog', ratedGpm: 150, ratedPsi: 100 }), ['inlet'], []],
  ])('of a %s', (kind, piece, inlets, outlets) => {
    const named = (direction: string) =>
      portsOf(piece)
        .filter((port) => port.direction === direction)
        .map((port) => port.name);
    expect(kindOf(piece)).toBe(kind);
    expect(named('in')).toEqual(inlets);
    expect(named('out')).toEqual(outlets);
    expect(portsOf(piece).every((port) => port.label !== '')).toBe(true);
  });

  test('a valve takes up the steamer of its hydrant, and nothing else', () => {
    expect(occupantsOf(plan, 'H1.steamer')).toEqual(['V1']);
    const hydrant = pieceOf(plan, 'H1') as Piece;
    expect(freePortsOf(plan, hydrant, 'out').map((port) => port.name)).toEqual(['side1', 'side2']);
    expect(freePortsOf(plan, valve)).toEqual([]);
  });

  test('a reference is split at its last point', () => {
    expect(splitPortRef('H-114.side2')).toEqual({ pieceId: 'H-114', port: 'side2' });
    expect(portOf(plan, 'B1.intake2')?.port.label).toBe('Intake 2');
    expect(portOf(plan, 'B1.intake9')).toBeUndefined();
    expect(portOf(plan, 'B9.intake1')).toBeUndefined();
  });
});

test('a line is described by what it joins, or by its name', () => {
  const attack = plan.lines.find((line) => line.id === 'attack1');
  const lay = plan.lines.find((line) => line.id === 'lay');
  expect(attack && describeLine(plan, attack)).toBe('Attack engine to Nozzle N1');
  expect(lay && describeLine(plan, lay)).toBe('Hydrant assist valve V1 to Attack engine');
  expect(lay && describeLine(plan, { ...lay, name: 'Main lay' })).toBe('Main lay');
});
