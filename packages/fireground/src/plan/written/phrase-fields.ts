import { type Quantity, quantities } from '../../units/quantities.ts';
import { showValue } from '../issue.ts';
import type { Line, Loss, PumpSetting } from '../plan.ts';
import { bad, field, good, type Reading } from './field.ts';
import { quantityPattern, readInRange } from './number-fields.ts';
import { type FieldRange, plainRanges, ranges } from './ranges.ts';

/** Fields written as a few words: a loss, a pump's setting, a valve. */

const lossAllowed = 'a loss at a flow, for instance 10 psi at 1000 gpm';

function readPair(
  written: unknown,
  pressure: FieldRange,
  flow: FieldRange,
  allowed: string,
): Reading<{ psi: number; gpm: number }> {
  const remedy = 'Write the pressure, the word at, and the flow.';
  if (written === undefined) return bad('it is missing', allowed, remedy);
  const parts = typeof written === 'string' ? /^(.+?)\s+at\s+(.+)$/.exec(written.trim()) : null;
  if (!parts) return bad(`${showValue(written)} is not a pressure at a flow`, allowed, remedy);
  const psi = readInRange(parts[1], pressure);
  if (!psi.ok) return psi;
  const gpm = readInRange(parts[2], flow);
  if (!gpm.ok) return gpm;
  return good({ psi: psi.value, gpm: gpm.value });
}

function readLoss(written: unknown): Reading<Loss> {
  const pair = readPair(written, ranges.lossPressure, ranges.lossFlow, lossAllowed);
  return pair.ok ? good({ lossPsi: pair.value.psi, atGpm: pair.value.gpm }) : pair;
}

const inner = (range: FieldRange) => quantityPattern(range).slice(1, -1);

/** `10 psi at 1000 gpm`: grows as the square of flow. */
export function lossField(description: string) {
  return field(readLoss, {
    description: `${description}. Written as a pressure at a flow; it grows as the square of flow`,
    type: 'string',
    pattern: `^${inner(ranges.lossPressure)} at ${inner(ranges.lossFlow)}$`,
    examples: ['10 psi at 1000 gpm', '0.7 bar at 3800 L/min'],
  });
}

type Say = (value: number, quantity: Quantity) => string;

const sayInside: Say = (value, quantity) => `${value} ${quantities[quantity].inside}`;

/** The text of a loss, as `lossField` reads it. */
export const writeLoss = (loss: Loss, say: Say = sayInside): string =>
  `${say(loss.lossPsi, 'pressure')} at ${say(loss.atGpm, 'flow')}`;

/** One point of a pump test: `150 psi at 1500 gpm`. */
export function pumpPointField(description: string) {
  const allowed = 'a net pressure at a flow, for instance 150 psi at 1500 gpm';
  return field(
    (written): Reading<[flowGpm: number, netPsi: number]> => {
      const pair = readPair(written, ranges.lossPressure, ranges.curveFlow, allowed);
      return pair.ok ? good([pair.value.gpm, pair.value.psi]) : pair;
    },
    {
      description,
      type: 'string',
      pattern: `^${inner(ranges.lossPressure)} at ${inner(ranges.curveFlow)}$`,
    },
  );
}

/** The text of a point, as `pumpPointField` reads it. */
export const writePumpPoint = (
  [flowGpm, netPsi]: readonly [number, number],
  say: Say = sayInside,
): string => `${say(netPsi, 'pressure')} at ${say(flowGpm, 'flow')}`;

/** A discharge pressure that the governor holds, `throttled 0.8`, or `idle`. */
export function settingField(description: string) {
  const allowed = 'a discharge pressure (120 psi), throttled and a speed (throttled 0.8), or idle';
  return field(
    (written): Reading<PumpSetting> => {
      if (written === 'idle') return good({ mode: 'idle' });
      const throttled = typeof written === 'string' && /^throttled\s+(\S+)$/.exec(written.trim());
      if (throttled) {
        const speedFraction = Number(throttled[1]);
        const { least, greatest } = plainRanges.speed;
        if (speedFraction >= least && speedFraction <= greatest) {
          return good({ mode: 'throttled', speedFraction });
        }
        return bad(
          `"${throttled[1]}" is not a share of full speed`,
          `${least} to ${greatest}`,
          'Write the speed as a share of full speed.',
        );
      }
      const pdp = readInRange(written, ranges.dischargePressure);
      if (pdp.ok) return good({ mode: 'governed', pdpPsi: pdp.value });
      return { ...pdp, allowed: `${allowed}; pressures ${pdp.allowed}` };
    },
    {
      description,
      anyOf: [
        { const: 'idle' },
        { type: 'string', pattern: '^throttled\\s+[0-9.]+$' },
        { type: 'number', minimum: 0, maximum: ranges.dischargePressure.greatest },
        { type: 'string', pattern: quantityPattern(ranges.dischargePressure) },
      ],
    },
  );
}

/** `open`, `shut`, or `gated 20 psi at 500 gpm`. */
export function valveField(description: string) {
  const allowed = 'open, shut, or gated and a loss at a flow (gated 20 psi at 500 gpm)';
  return field(
    (written): Reading<Line['valve']> => {
      if (written === 'open' || written === 'shut') return good(written);
      const gated = typeof written === 'string' && /^gated\s+(.+)$/.exec(written.trim());
      if (!gated)
        return bad(`${showValue(written)} is not a valve's state`, allowed, 'Choose one.');
      const loss = readLoss(gated[1]);
      return loss.ok ? good({ gated: loss.value }) : loss;
    },
    {
      description,
      anyOf: [
        { enum: ['open', 'shut'] },
        {
          type: 'string',
          pattern: `^gated ${inner(ranges.lossPressure)} at ${inner(ranges.lossFlow)}$`,
        },
      ],
    },
  );
}
