import { type KeyboardEvent, type PointerEvent, useId, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { usePlan } from '../plan-store/plan-store.ts';
import { useView } from '../plan-store/view.ts';
import {
  BIG_STEP,
  type EntryKind,
  type EntryRange,
  readEntry,
  shownEntry,
  stepped,
} from './quantity-entry.ts';

interface QuantityFieldProps extends EntryRange {
  /** Spoken name: "Static pressure, Hydrant 114". */
  label: string;
  value: number;
  kind: EntryKind;
  /** `key` folds a run of changes into one step back; left out for a typed value. */
  onChange(value: number, key?: string): void;
  size?: 'text' | 'figure';
  /** Found, not given: shown, not editable. */
  readOnly?: boolean;
  hideUnit?: boolean;
}

const PX_PER_STEP = 6;

/** Which way the buttons under a field open, so that they stay on the page. */
type Opening = 'start' | 'middle' | 'end';

const OPENING_ROOM_PX = 130;

function openingAt(input: HTMLElement): Opening {
  const { left, right } = input.getBoundingClientRect();
  if (left < OPENING_ROOM_PX) return 'start';
  return document.documentElement.clientWidth - right < OPENING_ROOM_PX ? 'end' : 'middle';
}

/** Room for the figures: a comma or a point takes about half a digit. */
function widthCh(text: string): number {
  const narrow = text.match(/[.,]/g)?.length ?? 0;
  return Math.max(text.length - narrow * 0.5, 1) + 0.35;
}

/**
 * A number edited where it stands: typed with any unit, stepped with the arrow keys or the
 * buttons that open under it, or dragged sideways.
 */
export function QuantityField(props: QuantityFieldProps) {
  const { label, value, kind, onChange, min, max, step, size = 'text', hideUnit } = props;
  const system = useView((view) => view.units);
  const endStep = usePlan((state) => state.endStep);
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [open, setOpen] = useState<Opening | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const drag = useRef<{ x: number; value: number; moved: boolean } | null>(null);
  const messageId = useId();
  const range = { min, max, step };
  const shown = shownEntry(value, kind, system);

  const move = (steps: number, key?: string) => {
    setDraft(null);
    setProblem(null);
    onChange(stepped(value, steps, kind, system, range), key);
  };

  const commit = () => {
    if (draft === null) return true;
    if (draft.trim() === shown.number) {
      setDraft(null);
      setProblem(null);
      return true;
    }
    const entry = readEntry(draft, kind, system, range);
    if (!entry.ok) {
      setProblem(entry.message);
      return false;
    }
    setDraft(null);
    setProblem(null);
    onChange(entry.value);
    endStep();
    return true;
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const by = event.shiftKey ? BIG_STEP : 1;
    const key = event.repeat ? `step:${label}` : undefined;
    const steps: Record<string, number> = {
      ArrowUp: by,
      ArrowDown: -by,
      PageUp: BIG_STEP,
      PageDown: -BIG_STEP,
    };
    const change = steps[event.key];
    if (change !== undefined) {
      event.preventDefault();
      move(change, key);
    } else if (event.key === 'Enter') {
      if (commit()) input.current?.select();
    } else if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      setDraft(null);
      setProblem(null);
    }
  };

  const onPointerDown = (event: PointerEvent<HTMLInputElement>) => {
    if (document.activeElement === input.current || event.button !== 0) return;
    // Not yet a click: the finger may be about to drag the number.
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { x: event.clientX, value, moved: false };
  };
  const onPointerMove = (event: PointerEvent<HTMLInputElement>) => {
    const from = drag.current;
    if (!from) return;
    const steps = Math.trunc((event.clientX - from.x) / PX_PER_STEP);
    if (steps === 0 && !from.moved) return;
    from.moved = true;
    onChange(stepped(from.value, steps, kind, system, range), `drag:${label}`);
  };
  const onPointerEnd = () => {
    const from = drag.current;
    drag.current = null;
    if (!from) return;
    if (from.moved) endStep();
    else {
      input.current?.focus();
      input.current?.select();
    }
  };

  const text = draft ?? shown.number;
  return (
    <span className={`quantity quantity-${size}`} data-open={open !== null || undefined}>
      <span className="quantity-value">
        <input
          ref={input}
          type="text"
          role="spinbutton"
          inputMode={min < 0 ? 'text' : 'decimal'}
          autoComplete="off"
          aria-label={label}
          aria-valuenow={Number(value.toFixed(3))}
          aria-valuemin={min}
          aria-valuemax={max}
          aria-valuetext={`${shown.number} ${shown.unit}`.trim()}
          aria-invalid={problem !== null || undefined}
          aria-describedby={problem ? messageId : undefined}
          readOnly={props.readOnly}
          style={{ width: `${widthCh(text)}ch` }}
          value={text}
          onChange={(event) => setDraft(event.target.value)}
          onKeyDown={onKeyDown}
          onFocus={(event) => setOpen(openingAt(event.currentTarget))}
          onBlur={() => {
            setOpen(null);
            if (!commit()) {
              setDraft(null);
              setProblem(null);
            }
            endStep();
          }}
          onPointerDown={onPointerDown}
          onPointerMove={onPointerMove}
          onPointerUp={onPointerEnd}
          onPointerCancel={onPointerEnd}
        />
        {shown.unit !== '' && !hideUnit && <span className="unit">{shown.unit}</span>}
      </span>
      {open !== null && !props.readOnly && (
        <span className={`quantity-steps quantity-steps-${open}`}>
          <StepButton text="−" label={`Less: ${label}`} onStep={() => move(-1)} />
          <StepButton text="+" label={`More: ${label}`} onStep={() => move(1)} />
          {problem && (
            <span className="quantity-problem" id={messageId} role="alert">
              {problem}
            </span>
          )}
        </span>
      )}
    </span>
  );
}

/** Keeps the field's focus, so that its buttons stay while they are pressed. */
function StepButton(props: { text: string; label: string; onStep(): void }) {
  return (
    <Button
      className="step-button"
      aria-label={props.label}
      excludeFromTabOrder
      preventFocusOnPress
      onPress={props.onStep}
    >
      {props.text}
    </Button>
  );
}
