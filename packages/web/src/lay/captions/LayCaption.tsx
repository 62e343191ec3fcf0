import { describeLine, type Line, nameOf, type Plan, pieceOf } from '@plugside/fireground';
import { HoseChoice } from '../../editing/HoseChoice.tsx';
import { QuantityField } from '../../editing/QuantityField.tsx';
import { LAY_LENGTH, LINE_COUNT, RISE } from '../../editing/ranges.ts';
import { layLinesOf, riseOf, setLayLength, setRise } from '../../plan-store/edits/lay.ts';
import { patchLine } from '../../plan-store/edits/pieces.ts';
import { usePlan } from '../../plan-store/plan-store.ts';

/** Every lay to a rig, in the order that water takes. */
export function LayCaption({ plan }: { plan: Plan }) {
  const legs = plan.rigs
    .filter((rig) => rig.role !== 'booster')
    .flatMap((rig) => {
      const lines = layLinesOf(plan, rig.id);
      return lines.length > 0 ? [{ rig, lines }] : [];
    });
  return legs.map(({ rig, lines }) => (
    <section key={rig.id} className="given" aria-label={`Lay to ${nameOf(rig)}`}>
      <h3>Lay to {nameOf(rig)}</h3>
      {lines.map((line) => (
        <LayLine key={line.id} plan={plan} line={line} rigId={rig.id} first={line === lines[0]} />
      ))}
    </section>
  ));
}

interface LayLineProps {
  plan: Plan;
  line: Line;
  rigId: string;
  first: boolean;
}

function LayLine({ plan, line, rigId, first }: LayLineProps) {
  const change = usePlan((state) => state.change);
  const name = describeLine(plan, line);
  const rig = pieceOf(plan, rigId);
  return (
    <p className="given-line">
      <QuantityField
        label={`Lines side by side, ${name}`}
        value={line.count}
        kind="count"
        {...LINE_COUNT}
        onChange={(count, key) =>
          change('Number of lines', (now) => patchLine(now, line.id, { count }), key)
        }
      />
      {' × '}
      <HoseChoice
        label={`Hose of ${name}`}
        value={line.hose}
        onChange={(hose) => change('Hose size', (now) => patchLine(now, line.id, { hose }))}
      />{' '}
      {first && (
        <>
          <QuantityField
            label={`Lay length to ${rig ? nameOf(rig) : rigId}`}
            value={line.lengthFt}
            kind="length"
            {...LAY_LENGTH}
            onChange={(lengthFt, key) =>
              change('Lay length', (now) => setLayLength(now, rigId, lengthFt), key)
            }
          />
          , rising{' '}
          <QuantityField
            label={`Rise to ${rig ? nameOf(rig) : rigId}`}
            value={riseOf(plan, rigId)}
            kind="length"
            {...RISE}
            onChange={(riseFt, key) => change('Rise', (now) => setRise(now, rigId, riseFt), key)}
          />
        </>
      )}
    </p>
  );
}
