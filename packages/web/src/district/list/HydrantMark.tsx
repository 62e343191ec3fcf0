import type { MapHydrant } from '../district.ts';

/** A hydrant as the map draws it: disc, letter, cross. Words beside it say the same. */
export function HydrantMark({ of }: { of: Pick<MapHydrant, 'class' | 'status'> }) {
  const out = of.status === 'out of service';
  return (
    <span
      className="hydrant-mark"
      data-class={out ? 'out' : (of.class ?? 'none')}
      aria-hidden="true"
    >
      {out ? '✕' : (of.class ?? '?')}
    </span>
  );
}
