/**
 * The one distance axis that the evolution and the pressure profile share.
 * Three regions from left to right: the hookup (not to scale), the lay (to scale, with a
 * break as wide as a rig wherever a pump stands in it), and the lines past the scene.
 */

export interface DistanceInput {
  /** Whole width to draw in [px]. */
  widthPx: number;
  /** Width of the hookup [px]. */
  hookupPx: number;
  /** Longest lay from a source to the scene [ft]. */
  layFt: number;
  /** Longest line past the scene [ft]; 0 where there is none. */
  attackFt: number;
  /** Least width for the lines past the scene [px]. */
  leastAttackPx: number;
  /** Room kept free at the right end for labels [px]. */
  endPx: number;
  /** Where pumps stand along the lay [ft]; each takes `rigPx`. */
  rigsAtFt: readonly number[];
  /** Width wanted for a rig [px]; less where there are many. */
  rigPx: number;
}

export interface DistanceScale {
  widthPx: number;
  hookupEndX: number;
  sceneX: number;
  attackStartX: number;
  attackEndX: number;
  rigPx: number;
  pxPerFt: number;
  /** False: the lines past the scene have their own, wider scale. */
  attackToScale: boolean;
  /** Left (`before`) or right (`after`) of a rig that stands exactly there. */
  layX(ft: number, side?: 'before' | 'after'): number;
  attackX(ft: number): number;
  /** Distance along the lay at a screen position [ft], held to the lay's ends. */
  layFtAt(x: number): number;
}

/** Builds the axis. Widths are held so that the lay never vanishes: at least a third of what is left. */
export function distanceScale(input: DistanceInput): DistanceScale {
  const rigs = [...new Set(input.rigsAtFt)].sort((a, b) => a - b);
  const layFt = Math.max(input.layFt, 1);
  const room = input.widthPx - input.hookupPx - input.endPx;
  const rigPx = rigs.length === 0 ? 0 : Math.min(input.rigPx, (room * 0.42) / rigs.length);
  const hoseRoom = room - rigPx * rigs.length;
  const shared = hoseRoom / (layFt + input.attackFt);
  const fair = input.attackFt * shared;
  const attackPx =
    input.attackFt === 0 ? 0 : Math.min(Math.max(fair, input.leastAttackPx), hoseRoom * 0.5);
  const pxPerFt = (hoseRoom - attackPx) / layFt;
  const attackPxPerFt = input.attackFt === 0 ? 0 : attackPx / input.attackFt;

  const layX = (ft: number, side: 'before' | 'after' = 'before') => {
    const passed = rigs.filter((at) => (side === 'after' ? at <= ft : at < ft)).length;
    return input.hookupPx + ft * pxPerFt + passed * rigPx;
  };
  const attackStartX = layX(layFt, 'after');
  return {
    widthPx: input.widthPx,
    hookupEndX: input.hookupPx,
    sceneX: layX(layFt, 'before'),
    attackStartX,
    attackEndX: attackStartX + attackPx,
    rigPx,
    pxPerFt,
    attackToScale: Math.abs(attackPxPerFt - pxPerFt) < 1e-9,
    layX,
    attackX: (ft) => attackStartX + ft * attackPxPerFt,
    layFtAt: (x) => {
      let ft = 0;
      let at = input.hookupPx;
      for (const rigFt of [...rigs, Number.POSITIVE_INFINITY]) {
        const end = at + (rigFt - ft) * pxPerFt;
        if (x <= end) return Math.min(Math.max(ft + (x - at) / pxPerFt, 0), layFt);
        ft = rigFt;
        at = end + rigPx;
        if (x <= at) return ft;
      }
      return layFt;
    },
  };
}
