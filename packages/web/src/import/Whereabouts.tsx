import type { ImportView } from '../api/imports.ts';
import { useUnits } from '../editing/use-units.ts';

/** Farther from the district than this is worth a question [km]: a county is about so wide. */
const WORTH_ASKING_KM = 50;
const KM_PER_MILE = 1.609344;
const WIDTH = 280;
const HEIGHT = 140;
const MARGIN = 10;

/** That a list lies far from the district, before it is brought in, with a picture of both. */
export function Whereabouts({ view }: { view: ImportView }) {
  const units = useUnits();
  const { whereabouts } = view;
  if (!whereabouts || whereabouts.awayKm < WORTH_ASKING_KM) return null;
  const { district, places, awayKm } = whereabouts;
  const [west, south, east, north] = district;
  const xs = [west, east, ...places.map(([x]) => x)];
  const ys = [south, north, ...places.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
  // A degree of longitude is shorter than one of latitude, so that a square district is drawn square.
  const narrower = Math.max(0.05, Math.cos((((top + bottom) / 2) * Math.PI) / 180));
  const scale = Math.min(
    (WIDTH - 2 * MARGIN) / Math.max((right - left) * narrower, 1e-6),
    (HEIGHT - 2 * MARGIN) / Math.max(top - bottom, 1e-6),
  );
  // In the middle of the picture, where the one is far shorter than the other.
  const asideX = (WIDTH - (right - left) * narrower * scale) / 2;
  const asideY = (HEIGHT - (top - bottom) * scale) / 2;
  const x = (longitude: number) => asideX + (longitude - left) * narrower * scale;
  const y = (latitude: number) => HEIGHT - asideY - (latitude - bottom) * scale;
  const away = `${units.text(awayKm / KM_PER_MILE, 'distance')}`;
  return (
    <div className="import-told whereabouts">
      <p className="caution" role="status">
        <span className="caution-shape" aria-hidden="true" />
        <span>
          These rows lie about {away} from what is on record. Bring them in only if they are this
          district’s; else check the coordinate system, or whether it is the right file.
        </span>
      </p>
      <svg
        className="whereabouts-map"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`The district as a square, the rows as dots, ${away} apart`}
      >
        <rect
          x={x(west) - 3}
          y={y(north) - 3}
          width={(east - west) * narrower * scale + 6}
          height={(north - south) * scale + 6}
          fill="none"
          stroke="currentColor"
          strokeWidth={2}
        />
        {places.map(([longitude, latitude], at) => (
          <circle
            // biome-ignore lint/suspicious/noArrayIndexKey: dots have no other name
            key={at}
            cx={x(longitude)}
            cy={y(latitude)}
            r={2}
            fill="currentColor"
          />
        ))}
      </svg>
      <p className="soft-text">Square: the district. Dots: the first rows of the file.</p>
    </div>
  );
}
