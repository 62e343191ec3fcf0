/** Height of the ground, from the terrain that the district has loaded. */
import { apiRequest } from './request.ts';

/** Name of the terrain loaded; null where none is. */
export async function terrainName(signal?: AbortSignal): Promise<string | null> {
  const { name } = await apiRequest<{ name: string | null }>('/elevation', { signal });
  return name;
}

/** Heights [ft] at places [longitude, latitude], in their order; null where one is not known. At most 5000. */
export async function groundAt(
  places: readonly (readonly [number, number])[],
  signal?: AbortSignal,
): Promise<(number | null)[]> {
  const { elevationFt } = await apiRequest<{ elevationFt: (number | null)[] }>(
    '/elevation/places',
    { method: 'POST', json: { places }, signal },
  );
  return elevationFt;
}
