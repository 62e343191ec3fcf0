/** The invented district, read from a store. */
import type { DepartmentValues } from '@plugside/fireground';
import { fillDemo, type Kind, openStore, type Stored } from '@plugside/records';
import { departmentCoefficients } from '@plugside/records/planning';

export interface DemoRecords {
  all<K extends Kind>(kind: K): Promise<Stored<K>[]>;
  department: DepartmentValues;
}

export async function demoRecords(): Promise<DemoRecords> {
  const store = await openStore({ memory: true });
  await fillDemo(store);
  const read = new Map<Kind, unknown[]>();
  const all = async <K extends Kind>(kind: K): Promise<Stored<K>[]> => {
    if (!read.has(kind)) {
      const records: Stored<K>[] = [];
      for await (const record of store.all(kind)) records.push(record);
      read.set(kind, records);
    }
    return read.get(kind) as Stored<K>[];
  };
  return {
    all,
    department: { coefficients: departmentCoefficients(await all('hose-tests')) },
  };
}
