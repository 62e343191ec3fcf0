import { type Drawing, FONT_PX, strokeAt, textAt } from './drawing.ts';
import { textWidth } from './text-width.ts';
import { axisTicks } from './ticks.ts';
import { element } from './xml.ts';

/** From the leftmost to the rightmost of the hookup, which is not to scale; undefined where there is none. */
function hookupReach({ paths }: Drawing): [left: number, right: number] | undefined {
  const xs = paths.flatMap(({ path, points }) =>
    path.regions.flatMap((region, index) =>
      region === 'hookup' ? [points[index]!.x, points[index + 1]!.x] : [],
    ),
  );
  return xs.length > 0 ? [Math.min(...xs), Math.max(...xs)] : undefined;
}

/** The pressure axis with its grid, over the shade of the hookup. */
export function pressureAxis(drawing: Drawing): string[] {
  const { frame, tone, psiTicks, yOf, options } = drawing;
  const reach = hookupReach(drawing);
  const shade = reach && [
    element('rect', {
      x: reach[0],
      y: frame.top,
      width: reach[1] - reach[0],
      height: frame.bottom - frame.top,
      fill: tone.hookup,
    }),
  ];
  const grid = psiTicks.flatMap((psi) => {
    const y = yOf(psi);
    const across = [
      { x: frame.left, y },
      { x: frame.right, y },
    ] as const;
    return [
      strokeAt(across, psi === 0 ? tone.quiet : tone.grid, 1),
      textAt(frame.left - 8, y + 4, options.formatPressure(psi), tone.quiet, {
        'text-anchor': 'end',
      }),
    ];
  });
  return [...(shade ?? []), ...grid];
}

/** Distances from where the hose drawn to scale begins, and the names of the regions. */
export function distanceAxis(drawing: Drawing): string[] {
  const { page, paths, profile, frame, tone, options } = drawing;
  const { pxPerFt, sceneX } = page;
  const reach = hookupReach(drawing);
  const scaled = paths.flatMap(({ path, points }) =>
    points.slice(path.regions.lastIndexOf('hookup') + 1).map(({ x }) => x),
  );
  const startX = Math.min(sceneX, ...scaled);
  const endX = Math.max(sceneX, ...scaled);
  const named = (from: number, to: number, words: string) =>
    to - from >= textWidth(words, FONT_PX)
      ? [
          textAt((from + to) / 2, frame.bottom + 35, words, tone.quiet, {
            'text-anchor': 'middle',
          }),
        ]
      : [];
  return [
    ...(pxPerFt > 0 ? distanceTicks() : []),
    ...(reach ? named(...reach, 'hookup, not to scale') : []),
    ...(profile.supply.length > 0 ? named(startX, sceneX, 'lay') : []),
    ...(profile.attack.length > 0 ? named(sceneX, endX, 'attack') : []),
  ];

  function distanceTicks(): string[] {
    const ft = (endX - startX) / pxPerFt;
    if (ft <= 0) return [];
    return axisTicks(0, ft, options.distanceUnitFt ?? 1, 6)
      .filter((at) => at <= ft + 1e-6)
      .flatMap((at) => {
        const x = startX + at * pxPerFt;
        const tick = [
          { x, y: frame.bottom },
          { x, y: frame.bottom + 5 },
        ] as const;
        return [
          strokeAt(tick, tone.quiet, 1),
          textAt(x, frame.bottom + 18, options.formatDistance(at), tone.quiet, {
            'text-anchor': 'middle',
          }),
        ];
      });
  }
}
