import { nameOf, type Plan, pieceOf } from '@plugside/fireground';
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { BIG_STEP, stepped } from '../../editing/quantity-entry.ts';
import { LAY_LENGTH, RISE } from '../../editing/ranges.ts';
import { useUnits } from '../../editing/use-units.ts';
import { type Lay, riseOf, setLayLength, setRise } from '../../plan-store/edits/lay.ts';
import { usePlan } from '../../plan-store/plan-store.ts';
import type { RigFigure } from '../scene/figures.ts';

interface LayHandleProps {
  plan: Plan;
  lay: Lay;
  figure: RigFigure;
  pxPerFt: number;
  risePxPerFt: number;
}

/** Takes hold of an engine: along the axis changes its lay's length, up and down its rise. */
export function LayHandle({ plan, lay, figure, pxPerFt, risePxPerFt }: LayHandleProps) {
  const units = useUnits();
  const change = usePlan((state) => state.change);
  const endStep = usePlan((state) => state.endStep);
  const drag = useRef<{
    x: number;
    y: number;
    lengthFt: number;
    riseFt: number;
    pxPerFt: number;
  } | null>(null);
  const { rigId } = lay;
  const lengthFt = lay.lines[0]?.lengthFt ?? 0;
  const riseFt = riseOf(plan, lay);
  const piece = pieceOf(plan, rigId);
  const name = piece ? nameOf(piece) : rigId;

  const set = (toLengthFt: number, toRiseFt: number, key?: string) => {
    change(
      `Move ${name}`,
      (now) => {
        const longer = lengthFt === toLengthFt ? now : setLayLength(now, lay, toLengthFt);
        return riseFt === toRiseFt ? longer : setRise(longer, lay, toRiseFt);
      },
      key,
    );
  };
  const onPointerDown = (event: PointerEvent<HTMLButtonElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    // The scale changes as the lay does; the drag keeps the one that it began with.
    drag.current = { x: event.clientX, y: event.clientY, lengthFt, riseFt, pxPerFt };
  };
  const onPointerMove = (event: PointerEvent<HTMLButtonElement>) => {
    const from = drag.current;
    if (!from) return;
    const feet = from.lengthFt + (event.clientX - from.x) / from.pxPerFt;
    const toLength = stepped(feet - 12.5, 1, 'length', units.system, LAY_LENGTH);
    const rise = from.riseFt + (from.y - event.clientY) / Math.max(risePxPerFt, 0.8);
    const moved = Math.abs(event.clientY - from.y) > 8;
    set(
      toLength,
      moved ? stepped(Math.round(rise) - 0.5, 1, 'length', units.system, RISE) : from.riseFt,
      `move:${rigId}`,
    );
  };
  const onPointerEnd = () => {
    drag.current = null;
    endStep();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.shiftKey ? BIG_STEP : 1;
    const along = event.key === 'ArrowRight' ? by : event.key === 'ArrowLeft' ? -by : 0;
    const up = event.key === 'ArrowUp' ? by : event.key === 'ArrowDown' ? -by : 0;
    if (along === 0 && up === 0) return;
    event.preventDefault();
    set(
      along === 0 ? lengthFt : stepped(lengthFt, along, 'length', units.system, LAY_LENGTH),
      up === 0 ? riseFt : stepped(riseFt, up, 'length', units.system, RISE),
      event.repeat ? `move:${rigId}` : undefined,
    );
  };
  return (
    <button
      type="button"
      className="lay-handle"
      role="slider"
      aria-label={`Place of ${name}: left and right for the lay's length, up and down for its rise`}
      aria-valuenow={Math.round(lengthFt)}
      aria-valuemin={LAY_LENGTH.min}
      aria-valuemax={LAY_LENGTH.max}
      aria-valuetext={`${units.text(lengthFt, 'length')} of lay, ${riseFt < 0 ? 'down' : 'up'} ${units.text(Math.abs(riseFt), 'length')}`}
      style={{
        left: figure.x - 6,
        top: figure.y - 8,
        width: Math.max(figure.width + 12, 44),
        height: Math.max(figure.height * 1.3 + 12, 44),
      }}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerEnd}
      onPointerCancel={onPointerEnd}
      onKeyDown={onKeyDown}
    />
  );
}
