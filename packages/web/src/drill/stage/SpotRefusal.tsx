import { useUnits } from '../../editing/use-units.ts';
import { inUnits } from '../words.ts';
import type { StageLayout } from './layout-shape.ts';
import { endMark, gearMark, portMark, valveMark } from './marks.ts';
import { useStage } from './stage-context.ts';

const WIDTH_PX = 250;

/** Why what was touched in the drawing could not be done, under the place that was touched. */
export function SpotRefusal({ layout }: { layout: StageLayout }) {
  const { refused } = useStage();
  const units = useUnits();
  if (!refused) return null;
  const spots = [
    ...layout.ports.map((one) => ({ mark: portMark(one.port), x: one.x, y: one.y })),
    ...layout.ends.map((one) => ({ mark: endMark(one.hose, one.end), x: one.x, y: one.y })),
    ...layout.valves.map((one) => ({ mark: valveMark(one.valve), x: one.x, y: one.y })),
    ...layout.pieces.flatMap(({ id, pump }) =>
      pump ? [{ mark: gearMark(id), x: pump.x, y: pump.y }] : [],
    ),
  ];
  // The port that was touched last comes after the end that was in hand.
  const at = [...refused.marks]
    .reverse()
    .flatMap((mark) => spots.filter((s) => s.mark === mark))[0];
  if (!at) return null;
  const left = Math.min(Math.max(at.x - WIDTH_PX / 2, 0), Math.max(0, layout.width - WIDTH_PX));
  return (
    <p className="spot-refusal" role="alert" style={{ left, top: at.y + 26, width: WIDTH_PX }}>
      <span className="caution-shape" aria-hidden="true" />
      {inUnits(refused.message, units)}
    </p>
  );
}
