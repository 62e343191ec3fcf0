/** What the evolution is drawn from. */
import type { HoseCurve } from './curves.ts';

export interface RigFigure {
  id: string;
  /** Left top of the body [px]. */
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface FittingFigure {
  id: string;
  kind:
    | 'hydrant'
    | 'draft'
    | 'valve'
    | 'wye'
    | 'manifold'
    | 'siamese'
    | 'monitor'
    | 'nozzle'
    | 'system';
  x: number;
  y: number;
}

export interface HoseFigure {
  line: string;
  curve: HoseCurve;
  widthPx: number;
  region: 'hookup' | 'lay' | 'attack';
  /** Drawn beside a like line that carries the label. */
  beside?: boolean;
}
