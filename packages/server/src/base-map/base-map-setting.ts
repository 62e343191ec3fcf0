import type { RecordStore } from '@plugside/records';
import { z } from 'zod';

/** Name of the settings record that holds it. */
export const BASE_MAP_SETTING = 'base map';

const URL_RULE =
  'an http or https address with {z}, {x} and {y} in its path, and no name or password';

/** Value of the setting: pictures of map tiles from a server, or words about the file of this one. */
export const baseMapSettingSchema = z.strictObject({
  url: z.string().max(1000).refine(isTemplate, `must be ${URL_RULE}`).optional(),
  /** Whose map it is, as its owner asks to be named. */
  attribution: z.string().trim().min(1).max(300),
  tileSize: z.literal([256, 512]).default(256),
  minZoom: z.int().min(0).max(24).default(0),
  maxZoom: z.int().min(0).max(24).default(19),
});
export type BaseMapSetting = z.infer<typeof baseMapSettingSchema>;

export type ReadSetting =
  | { setting: BaseMapSetting | null }
  /** What is wrong with it, with the remedy. */
  | { problem: string };

/** The department's base map, from the settings; null where none is named. */
export async function readBaseMapSetting(store: RecordStore): Promise<ReadSetting> {
  const { records } = await store.list('settings', {
    where: { name: BASE_MAP_SETTING },
    limit: 1,
  });
  const value = records[0]?.value ?? null;
  if (value === null) return { setting: null };
  const read = baseMapSettingSchema.safeParse(value);
  if (read.success && read.data.minZoom <= read.data.maxZoom) return { setting: read.data };
  const [issue] = read.success
    ? [{ path: ['minZoom'], message: `must be no more than maxZoom, ${read.data.maxZoom}` }]
    : read.error.issues;
  const field = issue?.path.join('.') || 'its value';
  return {
    problem:
      `The setting "${BASE_MAP_SETTING}" is not understood: ${field}: ${issue?.message}. ` +
      'Mend it, or remove it to draw the streets alone.',
  };
}

/**
 * What a page must be let ask for so that a template's tiles come: its origin and the part of its
 * path that is the same for all of them.
 */
export function sourceOfTemplate(template: string): string {
  const { origin, pathname } = new URL(template.replaceAll(/[{}]/g, '_'));
  const before = pathname.slice(0, pathname.search(/_[zxy]_/));
  return `${origin}${before.slice(0, before.lastIndexOf('/') + 1)}`;
}

function isTemplate(text: string): boolean {
  // A semicolon or a comma would end the policy that names it.
  if (!/^https?:\/\/[^{}\s;,'"]+\/[^\s;,'"]*$/i.test(text)) return false;
  try {
    const url = new URL(text.replaceAll(/[{}]/g, '_'));
    const path = text.split(/[?#]/)[0] ?? '';
    const everyPart = ['{z}', '{x}', '{y}'].every((part) => path.includes(part));
    return everyPart && url.username === '' && url.password === '';
  } catch {
    return false;
  }
}
