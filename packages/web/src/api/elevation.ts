/** Height of the ground, from the terrain that the district has loaded. */
import { apiRequest } from './request.ts';
import { type UploadOptions, uploadFile } from './upload.ts';

export interface LoadedTerrain {
  /** Null where none is loaded. */
  name: string | null;
  /** West, south, east, north [degrees]. */
  bounds: readonly [number, number, number, number] | null;
  /** Of a cell on the ground [ft]. */
  cellFt: number | null;
}

export const loadedTerrain = (signal?: AbortSignal): Promise<LoadedTerrain> =>
  apiRequest('/elevation', { signal });

/** Loads a GeoTIFF in place of what is there, as `uploadFile` does. */
export const loadTerrain = (
  file: File,
  unit: 'm' | 'ft' | undefined,
  options: UploadOptions = {},
): Promise<LoadedTerrain> => uploadFile('/elevation', { name: file.name, unit }, file, options);

export const removeTerrain = (): Promise<void> => apiRequest('/elevation', { method: 'DELETE' });

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
