import {
  describeLine,
  type Line,
  type Nozzle,
  nameOf,
  nozzleCatalogue,
  type Plan,
  pieceOf,
  splitPortRef,
} from '@plugside/fireground';
import { memo } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../editing/Choice.tsx';
import { HoseChoice } from '../editing/HoseChoice.tsx';
import { nozzleWords } from '../editing/nozzle-words.ts';
import { QuantityField } from '../editing/QuantityField.tsx';
import { HOSE_LENGTH, NOZZLE_FLOW, NOZZLE_PRESSURE, NOZZLE_RISE } from '../editing/ranges.ts';
import { useUnits } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';
import { elevationOf, pastPiece } from '../plan-store/edits/lay.ts';
import { removeLine } from '../plan-store/edits/lines.ts';
import { changeHose, changeNozzle, patchLine, raiseNozzle } from '../plan-store/edits/pieces.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import { ValveSwitch } from './ValveSwitch.tsx';

/** Every hose past the scene's pump: hose, nozzle, valve, and what it gives. */
export const AttackLines = memo(function AttackLines({ answered }: { answered: Answered }) {
  const plan = usePlan((state) => state.history.present);
  const past = pastPiece(plan, plan.scene);
  const lines = plan.lines.filter((line) => past.has(splitPortRef(line.from).pieceId));
  return (
    <section className="attack-lines" aria-labelledby="attack-lines">
      <h2 className="section-name" id="attack-lines">
        Attack lines
      </h2>
      {lines.length === 0 && (
        <p className="soft-text">None yet. The answer is then what reaches the attack intake.</p>
      )}
      <ul>
        {lines.map((line, i) => (
          <AttackLine
            key={line.id}
            plan={plan}
            line={line}
            answered={answered}
            first={lines.findIndex((one) => nozzleAt(plan, one) === nozzleAt(plan, line)) === i}
          />
        ))}
      </ul>
    </section>
  );
});

function nozzleAt(plan: Plan, line: Line): Nozzle | undefined {
  const end = splitPortRef(line.to).pieceId;
  return plan.nozzles.find(
    (one) => one.id === end || (one.on && splitPortRef(one.on).pieceId === end),
  );
}

interface AttackLineProps {
  plan: Plan;
  line: Line;
  answered: Answered;
  /** The first line to what it feeds: the nozzle is told once. */
  first: boolean;
}

function AttackLine({ plan, line, answered, first }: AttackLineProps) {
  const units = useUnits();
  const change = usePlan((state) => state.change);
  const name = describeLine(plan, line);
  const nozzle = nozzleAt(plan, line);
  const end = pieceOf(plan, splitPortRef(line.to).pieceId);
  const state = answered.state.lines.find((one) => one.id === line.id);
  const tip = answered.state.nozzles.find((one) => one.id === nozzle?.id);
  return (
    <li className="attack-line">
      <h3 className="attack-name">{end ? nameOf(end) : name}</h3>
      <span className="attack-hose">
        <HoseChoice
          label={`Hose of ${name}`}
          value={line.hose}
          onChange={(hose) => change('Hose size', (now) => changeHose(now, line.id, hose))}
        />{' '}
        <QuantityField
          label={`Length of ${name}`}
          value={line.lengthFt}
          kind="length"
          {...HOSE_LENGTH}
          onChange={(lengthFt, key) =>
            change('Line length', (now) => patchLine(now, line.id, { lengthFt }), key)
          }
        />
        {nozzle && first && <NozzleFields plan={plan} nozzle={nozzle} />}
      </span>
      <span className="attack-found figures">
        {state && (
          <>
            <b>{units.text(Math.abs(state.flowGpm), 'flow')}</b>
            {tip && first && (
              <>
                {', '}
                {units.text(tip.pressurePsi, 'pressure')} at the tip,{' '}
                {units.text(tip.reactionLb, 'force')} reaction
              </>
            )}
          </>
        )}
      </span>
      <span className="attack-acts">
        <ValveSwitch line={line} name={name} />
        <Button
          className="quiet-button remove"
          aria-label={`Take away ${name}`}
          onPress={() => change('Take away a line', (now) => removeLine(now, line.id))}
        >
          ×
        </Button>
      </span>
    </li>
  );
}

function NozzleFields({ plan, nozzle }: { plan: Plan; nozzle: Nozzle }) {
  const change = usePlan((state) => state.change);
  const units = useUnits();
  const now = nozzleCatalogue.find(
    (one) =>
      JSON.stringify({ ...nozzle, ...one.make }) === JSON.stringify({ ...nozzle }) &&
      one.use === nozzle.use,
  );
  const own = now ? [] : [{ value: 'own', text: ownText(nozzle, units.text) }];
  const options = [
    ...own,
    ...nozzleCatalogue
      .filter((one) => one.use === nozzle.use)
      .map((one) => ({ value: one.id, text: nozzleWords(one.make, units) })),
  ];
  const replace = (id: string) => {
    const entry = nozzleCatalogue.find((one) => one.id === id);
    if (!entry) return;
    change('Nozzle', (was) =>
      changeNozzle(was, nozzle.id, ({ id: ownId, name, elevationFt, on, open, use }) => ({
        id: ownId,
        name,
        elevationFt,
        on,
        open,
        use,
        ...entry.make,
      })),
    );
  };
  const label = nameOf(nozzle);
  return (
    <span className="attack-nozzle">
      <Choice label={label} value={now?.id ?? 'own'} options={options} onChange={replace} />
      {nozzle.kind === 'fog' && (
        <QuantityField
          label={`Rated flow, ${label}`}
          value={nozzle.ratedGpm}
          kind="flow"
          {...NOZZLE_FLOW}
          onChange={(ratedGpm, key) =>
            change(
              'Nozzle flow',
              (was) =>
                changeNozzle(was, nozzle.id, (one) =>
                  one.kind === 'fog' ? { ...one, ratedGpm } : one,
                ),
              key,
            )
          }
        />
      )}{' '}
      <QuantityField
        label={`Rated pressure, ${label}`}
        value={nozzle.ratedPsi}
        kind="pressure"
        {...NOZZLE_PRESSURE}
        onChange={(ratedPsi, key) =>
          change(
            'Nozzle pressure',
            (was) => changeNozzle(was, nozzle.id, (one) => ({ ...one, ratedPsi })),
            key,
          )
        }
      />
      <span className="attack-height">
        up{' '}
        <QuantityField
          label={`Height above the engine, ${label}`}
          value={nozzle.elevationFt - elevationOf(plan, plan.scene)}
          kind="length"
          {...NOZZLE_RISE}
          onChange={(upFt, key) =>
            change(
              'Nozzle height',
              (was) => raiseNozzle(was, nozzle.id, elevationOf(was, was.scene) + upFt),
              key,
            )
          }
        />
      </span>
    </span>
  );
}

function ownText(
  nozzle: Nozzle,
  text: (value: number, quantity: 'flow' | 'diameter') => string,
): string {
  if (nozzle.kind === 'smooth-bore') return `${text(nozzle.tipIn, 'diameter')} smooth bore`;
  if (nozzle.kind === 'fog') return `${text(nozzle.ratedGpm, 'flow')} fog`;
  if (nozzle.kind === 'selectable') return `selectable at ${text(nozzle.selectedGpm, 'flow')}`;
  return `automatic to ${text(nozzle.greatestGpm, 'flow')}`;
}
