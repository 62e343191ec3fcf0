/** A drill played again from its log: all gauges over time, and any moment of it. */
import {
  createDrill,
  type Drill,
  type DrillView,
  type GaugeView,
  type Judgement,
  judge,
  type Keyframe,
  keyframeOf,
  replayThrough,
  replayTo,
  TICKS_PER_S,
  viewFor,
} from '@plugside/drill';
import type { DrillRecord } from '../../api/index.ts';
import { gaugeTop } from '../stage/gauge-scale.ts';

/** A gauge over the whole drill, one reading a second of it. */
export interface GaugeSeries extends Pick<GaugeView, 'id' | 'label' | 'unit' | 'least'> {
  /** Of a tank: what it holds [gal]; its lamps tell eighths of that. */
  fullGal?: number;
  /** At 0 s, 1 s, 2 s, …; the last at the drill's end. */
  values: number[];
}

export interface Played {
  series: GaugeSeries[];
  /** When each reading was [ticks]. */
  ticks: number[];
  judgements: Judgement[];
}

export type ReplayRecord = Pick<DrillRecord, 'scene' | 'seed' | 'tick' | 'log' | 'result'>;

/** States kept this far apart, so that any moment is a short run away [s]. */
const KEYFRAME_EVERY_S = 10;

export class ReplayRun {
  readonly #record: ReplayRecord;
  readonly #keyframes: Keyframe[] = [];

  constructor(record: ReplayRecord) {
    this.#record = record;
  }

  /** Plays all of it; yields how far it has got [0 … 1] after each ten seconds of the drill. */
  *play(): Generator<number, Played> {
    const { scene, seed, tick: end, log, result } = this.#record;
    const series = new Map<string, GaugeSeries>();
    const ticks: number[] = [];
    const read = (drill: Drill) => {
      ticks.push(drill.state.tick);
      const { gauges } = viewFor('observer', scene, drill.state);
      for (const gauge of gauges) {
        const { id, label, unit, least, value } = gauge;
        const known = series.get(id);
        if (known) known.values.push(value);
        else
          series.set(id, {
            id,
            label,
            unit,
            ...(least !== undefined && { least }),
            ...(unit === 'gal' && { fullGal: gaugeTop(scene, gauge) }),
            values: [value],
          });
      }
    };
    let last = createDrill(scene, seed);
    for (const drill of replayThrough(scene, seed, log, end, TICKS_PER_S)) {
      if (ticks.length % KEYFRAME_EVERY_S === 0) {
        this.#keyframes.push(keyframeOf(drill));
        yield end === 0 ? 1 : drill.state.tick / end;
      }
      read(drill);
      last = drill;
    }
    return { series: [...series.values()], ticks, judgements: result ?? judge(scene, last.state) };
  }

  /** What one who sees all saw at a tick. */
  viewAt(tick: number): DrillView {
    const { scene, seed, log, tick: end } = this.#record;
    const drill = replayTo(scene, seed, log, Math.min(tick, end), this.#keyframes);
    return viewFor('observer', scene, drill.state, { faultsShown: true });
  }
}
