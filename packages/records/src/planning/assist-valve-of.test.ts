import { describe, expect, it } from 'vitest';
import { recordSchemas } from '../model/index.ts';
import { assistValveOf } from './assist-valve-of.ts';

const valve = (name: string) =>
  recordSchemas.appliances.parse({
    name,
    kind: 'assist-valve',
    loss: { lossPsi: 11, atGpm: 1000 },
    suctionLoss: { lossPsi: 7, atGpm: 1000 },
  });
const rig = (name: string, assistValve = true) => ({ name, assistValve });

describe('the assist valve of a rig', () => {
  it('is the one that names it, whole words, with the figures on record', () => {
    const appliances = [valve('Assist valve, Engine 12'), valve('Assist valve, Engine 1')];
    expect(assistValveOf(rig('Engine 1'), appliances)).toEqual({
      name: 'Assist valve, Engine 1',
      losses: {
        clapperLoss: { lossPsi: 11, atGpm: 1000 },
        suctionLoss: { lossPsi: 7, atGpm: 1000 },
      },
    });
    expect(assistValveOf(rig('Engine 3'), appliances)).toBeUndefined();
  });

  it('is the only one on record where none names it, and none of a rig that carries none', () => {
    const only = [valve('Assist valve, Engine 1')];
    expect(assistValveOf(rig('Engine 3'), only)).toMatchObject({
      name: 'Assist valve, Engine 1',
      standsIn: true,
    });
    expect(assistValveOf(rig('Engine 3', false), only)).toBeUndefined();
    expect(assistValveOf(rig('Engine 3'), [])).toBeUndefined();
  });
});
