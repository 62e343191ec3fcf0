import { KEPT_S, type Reading } from './gauge-history.ts';
import type { GaugeLimit } from './gauge-scale.ts';

interface StripProps {
  readings: readonly Reading[];
  nowS: number;
  /** Where a value stands on the gauge's scale [0 … 1]. */
  at(value: number): number;
  limits: readonly GaugeLimit[];
}

const WIDTH = 300;
const HEIGHT = 44;
/** Readings further apart than this are not joined [s]. */
const GAP_S = 3;

/** A gauge over the last minutes, now at the right. */
export function Strip({ readings, nowS, at, limits }: StripProps) {
  const x = (timeS: number) => WIDTH - ((nowS - timeS) / KEPT_S) * WIDTH;
  const y = (value: number) => HEIGHT - 2 - at(value) * (HEIGHT - 4);
  const d = readings
    .map(({ timeS, value }, index) => {
      const last = readings[index - 1];
      const starts = !last || timeS - last.timeS > GAP_S;
      return `${starts ? 'M' : 'L'}${x(timeS).toFixed(1)} ${y(value).toFixed(1)}`;
    })
    .join('');
  return (
    <figure className="strip" aria-hidden="true">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
        <path className="strip-base" d={`M0 ${y(0)}H${WIDTH}`} />
        {[60, 120].map((ago) => (
          <path key={ago} className="strip-minute" d={`M${x(nowS - ago)} 0V${HEIGHT}`} />
        ))}
        {limits.map(({ value, sense }) => (
          <path key={sense} className="strip-limit" d={`M0 ${y(value)}H${WIDTH}`} />
        ))}
        <path className="strip-line" d={d} />
      </svg>
      <figcaption>
        <span>3 min ago</span>
        <span>now</span>
      </figcaption>
    </figure>
  );
}
