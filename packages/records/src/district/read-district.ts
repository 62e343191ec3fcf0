import type { RecordStore } from '../store/index.ts';

export interface District {
  name: string;
  /** Made up, to try things on: shown wherever its data is. */
  invented: boolean;
}

/** Setting that holds `{ name, invented }`. */
const SETTING = 'district';

/** The district's name and whether it is a made-up one, from the settings. */
export async function readDistrict(store: RecordStore): Promise<District> {
  const { records } = await store.list('settings', { where: { name: SETTING }, limit: 1 });
  const value = records[0]?.value;
  const given = typeof value === 'object' && value !== null && !Array.isArray(value) ? value : {};
  return {
    name: typeof given.name === 'string' ? given.name : 'Unnamed district',
    invented: given.invented === true,
  };
}
