import type { RecordStore } from '@plugside/records';
import { type Kind, kinds, type Stored } from '@plugside/records/model';
import { type ExampleIds, exampleRecords } from './example-records.ts';

/** Writes the example of every kind; gives back what the store said it wrote. */
export async function fillExamples(store: RecordStore): Promise<Map<Kind, Stored<Kind>>> {
  const made = new Map<Kind, Stored<Kind>>();
  const id = (kind: Kind) => made.get(kind)?.id ?? '';
  for (const kind of kinds) {
    const ids: ExampleIds = {
      station: id('stations'),
      hydrant: id('hydrants'),
      rig: id('rigs'),
      building: id('buildings'),
    };
    made.set(kind, await store.create(kind, exampleRecords[kind](ids) as never));
  }
  const { id: hydrantId, version } = made.get('hydrants') as Stored<'hydrants'>;
  const planTestId = id('flow-tests');
  made.set('hydrants', await store.change('hydrants', hydrantId, version, { planTestId }));
  return made;
}
