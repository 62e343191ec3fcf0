/**
 * Writes records as fast as it can until it is killed, and says on standard output what the store
 * has acknowledged: one line for each, after the store's promise has come true and not before.
 *
 * argv: the target as JSON, a number that tells this round from others.
 */
import { writeSync } from 'node:fs';
import { openStore, type StoreTarget } from '@plugside/records';
import type { Acknowledged } from './acknowledged.ts';

const [target, round] = process.argv.slice(2) as [string, string];
const store = await openStore(JSON.parse(target) as StoreTarget);
const place = { longitude: -84.1, latitude: 33.4 };

for (let step = 0; ; step += 1) {
  const name = `${round}-${step}`;
  const made = await store.create('hydrants', { name, ...place });
  tell({ did: 'create', id: made.id, name });
  const note = `changed in ${name}`;
  await store.change('hydrants', made.id, 1, { note });
  tell({ did: 'change', id: made.id, note });
  if (step % 3 === 0) {
    const gone = await store.create('hydrants', { name: `${name}-gone`, ...place });
    await store.remove('hydrants', gone.id, 1);
    tell({ did: 'remove', id: gone.id });
  }
  const pair = await store.transaction(async (inner) => {
    const rig = await inner.create('rigs', { name: `${name} rig` });
    const hose = await inner.create('hose', {
      name: `${name} hose`,
      size: '5',
      lengthFt: 100,
      rigId: rig.id,
    });
    return [rig.id, hose.id] as const;
  });
  tell({ did: 'pair', rig: pair[0], hose: pair[1] });
  if (step % 4 === 0) {
    const source = `list ${name}`;
    const rows = Array.from({ length: 600 }, (_, n) => ({
      name: `B-${n}`,
      ...place,
      externalSource: source,
      externalId: String(n),
    }));
    await store.merge('buildings', rows);
    tell({ did: 'merge', source, rows: rows.length });
  }
}

function tell(acknowledged: Acknowledged): void {
  writeSync(1, `${JSON.stringify(acknowledged)}\n`);
}
