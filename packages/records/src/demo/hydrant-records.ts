import type { FieldsIn } from '../model/index.ts';
import type { Chance } from './chance.ts';
import { lonLatOf } from './ground.ts';
import type { DemoHydrant } from './hydrant-places.ts';
import { fedFrom } from './main-names.ts';

const reasons = [
  'Stem broken, part on order',
  'Hit by a vehicle, barrel cracked',
  'Main being relaid',
  'Does not drain: frozen last winter',
];

/** Also of what the schema would fill in by itself: here somebody looked. */
const listed = { kind: 'department' as const, text: 'Hydrant list, invented' };

/** About one in fifty is out of service, as is common; the oldest mains have some without a large outlet. */
export function hydrantRecords(
  hydrants: readonly DemoHydrant[],
  luck: Chance,
  mainNames: ReadonlyMap<DemoHydrant, string> = new Map(),
): FieldsIn<'hydrants'>[] {
  return hydrants.map((hydrant) => {
    const { name, at, elevationFt, main, zone } = hydrant;
    const mainName = mainNames.get(hydrant);
    const feeder = fedFrom(hydrant, mainName);
    const [longitude, latitude] = lonLatOf(at);
    const outOfService = luck.happens(0.02);
    const oldPattern = main.roughness < 50 && luck.happens(0.2);
    return {
      name,
      longitude,
      latitude,
      elevationFt,
      type: zone === 'industrial' && luck.happens(0.2) ? 'wet barrel' : 'dry barrel',
      ...(!oldPattern && { steamerIn: 4.5 }),
      sideOutlets: 2,
      sideOutletIn: 2.5,
      mainIn: main.diameterIn,
      ...(mainName !== undefined && { main: mainName }),
      ...(feeder !== undefined && { mainFedFrom: feeder }),
      status: outOfService ? 'out of service' : 'in service',
      ...(outOfService && { statusReason: luck.pick(reasons) }),
      owner: zone === 'industrial' && luck.happens(0.15) ? 'Works, private' : 'Town water',
      externalId: name,
      origins: {
        ...Object.fromEntries(
          ['sideOutlets', 'sideOutletIn', 'status'].map((field) => [field, listed]),
        ),
        elevationFt: { kind: 'measured', text: 'Levelled, invented survey', date: '2019-06-12' },
        mainIn: { kind: 'department', text: 'Map of the mains, invented' },
        ...(mainName !== undefined && {
          main: { kind: 'department' as const, text: 'Map of the mains, invented' },
        }),
        ...(feeder !== undefined && {
          mainFedFrom: { kind: 'department' as const, text: 'Map of the mains, invented' },
        }),
      },
    };
  });
}
