import type { RecordStore } from '@plugside/records';
import { readBaseMapSetting, sourceOfTemplate } from './base-map-setting.ts';

/** Where the file of tiles is served. */
export const TILES_FILE_PATH = '/api/map/base-map.pmtiles';

/** Pictures of map tiles to draw under the department's own streets. */
export type BaseMap =
  | {
      kind: 'tiles';
      /** With {z}, {x} and {y}. */
      url: string;
      attribution: string;
      tileSize: number;
      minZoom: number;
      maxZoom: number;
    }
  | {
      kind: 'file';
      url: string;
      /** Null: as the file itself says. */
      attribution: string | null;
      tileSize: number;
    };

export interface BaseMapAnswer {
  /** Null where the map has the department's own streets alone. */
  baseMap: BaseMap | null;
  /** Why there is none although one is named. */
  problem: string | null;
}

export interface BaseMaps {
  /** As the settings are now. */
  current(): Promise<BaseMapAnswer>;
  /** Elsewhere that pages are let ask, in the terms of a Content-Security-Policy; none where there is no need. */
  sources(): Promise<readonly string[]>;
}

/**
 * The base map of the district: the setting's address where it names one, else the server's file,
 * else none.
 * @param file of tiles on this server's disk, checked
 */
export function baseMaps(store: RecordStore, file: string | undefined): BaseMaps {
  let kept: { revision: string; answer: Promise<BaseMapAnswer> } | undefined;
  const current = async () => {
    const revision = await store.revision('settings');
    if (kept?.revision !== revision) kept = { revision, answer: readBaseMap(store, file) };
    const { answer } = kept;
    answer.catch(() => {
      kept = undefined;
    });
    return answer;
  };
  return {
    current,
    sources: async () => {
      const { baseMap } = await current();
      return baseMap?.kind === 'tiles' ? [sourceOfTemplate(baseMap.url)] : [];
    },
  };
}

async function readBaseMap(store: RecordStore, file: string | undefined): Promise<BaseMapAnswer> {
  const read = await readBaseMapSetting(store);
  if ('problem' in read) return { baseMap: null, problem: read.problem };
  const { setting } = read;
  if (setting?.url !== undefined) {
    const { url, attribution, tileSize, minZoom, maxZoom } = setting;
    return {
      baseMap: { kind: 'tiles', url, attribution, tileSize, minZoom, maxZoom },
      problem: null,
    };
  }
  if (file !== undefined) {
    return {
      baseMap: {
        kind: 'file',
        url: TILES_FILE_PATH,
        attribution: setting?.attribution ?? null,
        tileSize: setting?.tileSize ?? 256,
      },
      problem: null,
    };
  }
  const problem = setting
    ? 'The setting "base map" names no url, and the server has no file of tiles (PLUGSIDE_BASE_MAP).'
    : null;
  return { baseMap: null, problem };
}
