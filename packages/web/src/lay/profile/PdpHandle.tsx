import { nameOf, pieceOf } from '@plugside/fireground';
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { BIG_STEP, stepped } from '../../editing/quantity-entry.ts';
import { PDP } from '../../editing/ranges.ts';
import { useUnits } from '../../editing/use-units.ts';
import type { Answered } from '../../plan-store/ask.ts';
import { usePlan } from '../../plan-store/plan-store.ts';
import { useSetPdp } from '../../settings/use-set-pdp.ts';
import type { PlacedStation } from '../scene/tracks.ts';
import type { ProfileFrame } from './profile-frame.ts';

interface PdpHandleProps {
  answered: Answered;
  station: PlacedStation;
  frame: ProfileFrame;
}

/** Takes hold of a pump's discharge pressure on the profile. */
export function PdpHandle({ answered, station, frame }: PdpHandleProps) {
  const units = useUnits();
  const endStep = usePlan((state) => state.endStep);
  const setPdp = useSetPdp(answered);
  const drag = useRef<{ y: number; psi: number; psiPerPx: number } | null>(null);
  const piece = pieceOf(answered.plan, station.piece);
  const name = piece ? nameOf(piece) : station.piece;
  const rig = answered.plan.rigs.find((one) => one.id === station.piece);
  const setPsi = rig?.setting.mode === 'governed' ? rig.setting.pdpPsi : station.psi;

  const onPointerDown = (event: PointerEvent<HTMLButtonElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = {
      y: event.clientY,
      psi: station.psi,
      psiPerPx: frame.psiAt(0) - frame.psiAt(1),
    };
  };
  const onPointerMove = (event: PointerEvent<HTMLButtonElement>) => {
    const from = drag.current;
    if (!from || Math.abs(event.clientY - from.y) < 2) return;
    const psi = from.psi + (from.y - event.clientY) * from.psiPerPx;
    setPdp(
      station.piece,
      stepped(Math.round(psi) - 1, 1, 'pressure', units.system, PDP),
      `pdp:${station.piece}`,
    );
  };
  const onPointerEnd = () => {
    drag.current = null;
    endStep();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.shiftKey ? BIG_STEP : 1;
    const up = event.key === 'ArrowUp' || event.key === 'ArrowRight';
    const down = event.key === 'ArrowDown' || event.key === 'ArrowLeft';
    if (!up && !down) return;
    event.preventDefault();
    const key = event.repeat ? `pdp:${station.piece}` : undefined;
    setPdp(station.piece, stepped(setPsi, up ? by : -by, 'pressure', units.system, PDP), key);
  };
  return (
    <button
      type="button"
      className="pdp-handle"
      role="slider"
      aria-orientation="vertical"
      aria-label={`Discharge pressure of ${name}`}
      aria-valuenow={Math.round(setPsi)}
      aria-valuemin={PDP.min}
      aria-valuemax={PDP.max}
      aria-valuetext={units.text(setPsi, 'pressure')}
      style={{ left: station.x - 22, top: frame.y(station.psi) - 22 }}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerEnd}
      onPointerCancel={onPointerEnd}
      onKeyDown={onKeyDown}
    >
      <span aria-hidden="true" className="pdp-grip" />
    </button>
  );
}
