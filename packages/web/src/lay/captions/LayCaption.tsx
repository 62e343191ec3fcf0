import {
  coefficientFor,
  describeLine,
  type Line,
  nameOf,
  type Plan,
  pieceOf,
} from '@plugside/fireground';
import { HoseChoice } from '../../editing/HoseChoice.tsx';
import { QuantityField } from '../../editing/QuantityField.tsx';
import { COEFFICIENT, LAY_LENGTH, LINE_COUNT, RISE } from '../../editing/ranges.ts';
import { type Lay, laysInto, riseOf, setLayLength, setRise } from '../../plan-store/edits/lay.ts';
import { changeHose, patchLine } from '../../plan-store/edits/pieces.ts';
import { usePlan } from '../../plan-store/plan-store.ts';

const FINE_STEP = { us: 0.005, si: 0.005 };
const COARSE_STEP = { us: 0.5, si: 0.5 };

/** Every lay to a rig past the source, in the order that water takes. */
export function LayCaption({ plan }: { plan: Plan }) {
  const lays = plan.rigs
    .filter((rig) => rig.role !== 'booster')
    .flatMap((rig) => laysInto(plan, rig.id));
  return lays.map((lay) => (
    <LayFields
      key={`${lay.fromId}:${lay.rigId}`}
      plan={plan}
      lay={lay}
      tellFrom={lays.length > 1}
    />
  ));
}

const named = (plan: Plan, id: string) => {
  const piece = pieceOf(plan, id);
  return piece ? nameOf(piece) : id;
};

function LayFields({ plan, lay, tellFrom }: { plan: Plan; lay: Lay; tellFrom: boolean }) {
  const change = usePlan((state) => state.change);
  const to = named(plan, lay.rigId);
  const from = named(plan, lay.fromId);
  return (
    <section className="given" aria-label={`Lay from ${from} to ${to}`}>
      <h3>{tellFrom ? `${from} to ${to}` : `Lay to ${to}`}</h3>
      {lay.lines.map((line, i) => (
        <p key={line.id} className="given-line">
          <LineFields plan={plan} line={line} />
          {i === 0 && (
            <>
              <QuantityField
                label={`Lay length from ${from} to ${to}`}
                value={line.lengthFt}
                kind="length"
                {...LAY_LENGTH}
                onChange={(lengthFt, key) =>
                  change('Lay length', (now) => setLayLength(now, lay, lengthFt), key)
                }
              />
              rising
              <QuantityField
                label={`Rise from ${from} to ${to}`}
                value={riseOf(plan, lay)}
                kind="length"
                {...RISE}
                onChange={(riseFt, key) => change('Rise', (now) => setRise(now, lay, riseFt), key)}
              />
            </>
          )}
          <CoefficientField plan={plan} line={line} />
        </p>
      ))}
    </section>
  );
}

/** What the hose loses: the book's value until the department has measured its own. */
function CoefficientField({ plan, line }: { plan: Plan; line: Line }) {
  const change = usePlan((state) => state.change);
  const { coefficient, origin } = coefficientFor(plan, line);
  return (
    <span className="given-coefficient" title={`${origin.kind}: ${origin.text}`}>
      C{' '}
      <QuantityField
        label={`Friction coefficient of ${describeLine(plan, line)}, ${origin.kind}`}
        value={coefficient}
        kind="coefficient"
        {...COEFFICIENT}
        step={coefficient < 1 ? FINE_STEP : COARSE_STEP}
        onChange={(own, key) =>
          change(
            'Friction coefficient',
            (now) =>
              patchLine(now, line.id, {
                coefficient: own,
                coefficientOrigin: { kind: 'department', text: 'Set by hand in this plan' },
              }),
            key,
          )
        }
      />
    </span>
  );
}

function LineFields({ plan, line }: { plan: Plan; line: Line }) {
  const change = usePlan((state) => state.change);
  const name = describeLine(plan, line);
  return (
    <>
      <QuantityField
        label={`Lines side by side, ${name}`}
        value={line.count}
        kind="count"
        {...LINE_COUNT}
        onChange={(count, key) =>
          change('Number of lines', (now) => patchLine(now, line.id, { count }), key)
        }
      />
      ×
      <HoseChoice
        label={`Hose of ${name}`}
        value={line.hose}
        onChange={(hose) => change('Hose size', (now) => changeHose(now, line.id, hose))}
      />
    </>
  );
}
