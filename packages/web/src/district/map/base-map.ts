/** Pictures of map tiles under the district's own streets, where the department names some. */
import type { LayerSpecification, SourceSpecification } from 'maplibre-gl';
import * as maplibre from 'maplibre-gl';
import type { BaseMap } from '../../api/district.ts';
import type { MapColours } from './map-colours.ts';

const BASE = 'base-map';
const SCHEME = 'pmtiles';

/** Fetched when a file of tiles is drawn, and not before. */
let reader: Promise<InstanceType<typeof import('pmtiles').Protocol>> | undefined;

maplibre.addProtocol(SCHEME, async (request, stop) => {
  reader ??= import('pmtiles').then(({ Protocol }) => new Protocol({ metadata: true }));
  return (await reader).tile(request, stop);
});

export function baseMapSources(base: BaseMap | null): Record<string, SourceSpecification> {
  if (!base) return {};
  const { tileSize } = base;
  const source: SourceSpecification =
    base.kind === 'tiles'
      ? {
          type: 'raster',
          tiles: [base.url],
          tileSize,
          minzoom: base.minZoom,
          maxzoom: base.maxZoom,
        }
      : {
          type: 'raster',
          url: `${SCHEME}://${new URL(base.url, window.location.href).href}`,
          tileSize,
        };
  return { [BASE]: source };
}

/** By night it is dimmed and loses its colours: it must not blind. */
export function baseMapLayers(
  base: BaseMap | null,
  { baseBright }: MapColours,
): LayerSpecification[] {
  if (!base) return [];
  const bright = Number(baseBright);
  return [
    {
      id: BASE,
      type: 'raster',
      source: BASE,
      paint: {
        'raster-brightness-max': bright,
        'raster-saturation': bright < 1 ? -0.8 : 0,
        'raster-fade-duration': 0,
      },
    },
  ];
}

/** What is to be said of the base map beside the map. */
export interface BaseMapTold {
  /** Whose map it is; empty until it is known. */
  credit: string;
  /** No tile of it comes. */
  failed: boolean;
}

/** Follows whether the base map's tiles come, and whose they are. */
export function watchBaseMap(
  map: maplibre.Map,
  base: BaseMap,
  tell: (told: BaseMapTold) => void,
): void {
  let told: BaseMapTold = { credit: base.attribution ?? '', failed: false };
  let came = false;
  const say = (news: Partial<BaseMapTold>) => {
    const next = { ...told, ...news };
    if (next.credit === told.credit && next.failed === told.failed) return;
    told = next;
    tell(told);
  };
  tell(told);
  map.on('sourcedata', (event) => {
    if (event.sourceId !== BASE) return;
    const attribution = event.source.type === 'raster' ? map.getSource(BASE)?.attribution : null;
    if (attribution && !base.attribution) say({ credit: plainWords(attribution) });
    if (event.tile?.state === 'loaded') {
      came = true;
      say({ failed: false });
    }
  });
  map.on('error', (event) => {
    if ('sourceId' in event && event.sourceId === BASE) say({ failed: true });
    else console.error(event.error);
  });
  // Tiles that a server has not are no error to the map; when none comes, nothing is drawn.
  map.on('idle', () => {
    const least = map.getSource<maplibre.RasterTileSource>(BASE)?.minzoom ?? 0;
    if (!came && map.getZoom() >= least) say({ failed: true });
  });
}

/** Attributions may be written in HTML. */
function plainWords(text: string): string {
  return new DOMParser().parseFromString(text, 'text/html').body.textContent?.trim() ?? '';
}
