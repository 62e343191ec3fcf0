/** The evolution as figures on the screen: where each piece stands and how each hose runs. */
import type { Plan } from '@plugside/fireground';
import { attackFigures } from './attack-figures.ts';
import type { DrawingSizes } from './drawing-sizes.ts';
import type { FittingFigure, HoseFigure, RigFigure } from './figures.ts';
import { type Ground, groundScale } from './ground.ts';
import { hookupFigures } from './hookup-figures.ts';
import { layFigures } from './lay-figures.ts';
import type { Track, Tracks } from './tracks.ts';

export interface TrackFigure {
  top: number;
  height: number;
  hookupX: readonly [number, number];
  /** Ground from the start of the lay to the end of the drawing [px]. */
  ground: (readonly [x: number, y: number])[];
  sourceId: string;
}

export interface EvolutionScene {
  height: number;
  tracks: TrackFigure[];
  rigs: RigFigure[];
  fittings: FittingFigure[];
  hoses: HoseFigure[];
  ground: Ground;
  /** The rig at the scene, for the handle that drags it. */
  scene: RigFigure | null;
}

/** Lays the whole evolution out for a plan and the tracks of its profile. */
export function evolutionScene(plan: Plan, tracks: Tracks, sizes: DrawingSizes): EvolutionScene {
  const ground = groundScale(tracks, sizes.compact ? 64 : 96);
  const figures: Pick<EvolutionScene, 'tracks' | 'rigs' | 'fittings' | 'hoses'> = {
    tracks: [],
    rigs: [],
    fittings: [],
    hoses: [],
  };
  const drawn = new Set<string>();
  let top = 0;
  for (const [index, track] of tracks.supply.entries()) {
    const height = index === 0 ? sizes.trackPx : sizes.furtherTrackPx;
    const frame = { top, height, lowY: top + height - (sizes.compact ? 30 : 38) };
    const hookup = hookupFigures(plan, track, frame, sizes);
    figures.rigs.push(...hookup.rigs);
    figures.fittings.push(...hookup.fittings);
    const lay = layFigures({
      plan,
      track,
      tracks,
      frame,
      ground,
      sizes,
      hookup,
      rigs: figures.rigs,
    });
    figures.rigs.push(...lay.rigs);
    figures.fittings.push(...lay.fittings);
    for (const hose of [...hookup.hoses, ...lay.hoses]) {
      if (drawn.has(hose.line)) continue;
      drawn.add(hose.line);
      figures.hoses.push(hose);
    }
    figures.tracks.push({
      top,
      height,
      hookupX: track.hookupX,
      ground: lay.ground,
      sourceId: sourceOf(track),
    });
    top += height;
  }
  const scene = figures.rigs.find((rig) => rig.id === plan.scene) ?? null;
  if (scene) {
    const attack = attackFigures(plan, tracks, scene, {
      top: 16,
      bottom: sizes.trackPx - 14,
      startX: scene.x + scene.width,
    });
    figures.fittings.push(...attack.fittings);
    figures.hoses.push(...attack.hoses.filter((hose) => !drawn.has(hose.line)));
  }
  return { height: top, ...figures, ground, scene };
}

function sourceOf(track: Track): string {
  return track.stations[0]?.piece ?? '';
}
