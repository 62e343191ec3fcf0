import { OUTLET_COEFFICIENTS, type OutletFlow } from '@plugside/fireground';
import { Button } from 'react-aria-components';
import { Choice } from '../editing/Choice.tsx';
import { Switcher } from '../editing/Switcher.tsx';
import { useUnits } from '../editing/use-units.ts';
import { OUTLET, OUTLET_FLOW, PITOT } from './field-ranges.ts';
import { MeasureField } from './MeasureField.tsx';
import { newOutlet, type OutletDraft } from './outlet-draft.ts';
import { type Row, withRow } from './reading-rows.ts';
import { WordField } from './WordField.tsx';

const EDGES = [
  { value: OUTLET_COEFFICIENTS.rounded, text: 'rounded, 0.90' },
  { value: OUTLET_COEFFICIENTS.square, text: 'square, 0.80' },
  { value: OUTLET_COEFFICIENTS.projecting, text: 'projecting, 0.70' },
  { value: OUTLET_COEFFICIENTS.flowTube, text: 'flow tube, 0.95' },
];

interface OutletRowsProps {
  rows: readonly Row<OutletDraft>[];
  flows: readonly (OutletFlow | null)[];
  onChange(rows: Row<OutletDraft>[]): void;
}

/** The flowing outlets: any number, on one hydrant or several. */
export function OutletRows({ rows, flows, onChange }: OutletRowsProps) {
  return (
    <fieldset className="test-group">
      <legend>What flowed</legend>
      {rows.map((row, index) => (
        <OutletRow
          key={row.key}
          row={row}
          number={index + 1}
          flow={flows[index] ?? null}
          onChange={(change) => onChange(withRow(rows, row.key, change))}
          onRemove={() => onChange(rows.filter(({ key }) => key !== row.key))}
        />
      ))}
      <Button
        className="quiet-button"
        onPress={() => onChange([...rows, newOutlet(rows.at(-1)?.value.hydrant)])}
      >
        + Another outlet
      </Button>
    </fieldset>
  );
}

interface OutletRowProps {
  row: Row<OutletDraft>;
  number: number;
  flow: OutletFlow | null;
  onChange(change: Partial<OutletDraft>): void;
  onRemove(): void;
}

function OutletRow({ row: { key, value }, number, flow, onChange, onRemove }: OutletRowProps) {
  const units = useUnits();
  const edges = EDGES.some((edge) => edge.value === value.coefficient)
    ? EDGES
    : [...EDGES, { value: value.coefficient, text: value.coefficient.toFixed(2) }];
  return (
    <fieldset className="outlet-row" aria-label={`Outlet ${number}`}>
      <div className="outlet-head">
        <span className="outlet-name">Outlet {number}</span>
        <Switcher
          label={`How outlet ${number} was read`}
          value={value.by}
          options={[
            { value: 'pitot', text: 'Pitot' },
            { value: 'meter', text: 'Meter' },
          ]}
          onChange={(by) => onChange({ by })}
        />
        <span className="outlet-flow">{flow ? units.text(flow.flowGpm, 'flow') : '—'}</span>
        <Button
          className="quiet-button remove-button"
          aria-label={`Remove outlet ${number}`}
          onPress={onRemove}
        >
          ×
        </Button>
      </div>
      <div className="test-fields">
        {value.by === 'pitot' ? (
          <>
            <MeasureField
              {...PITOT}
              label="Pitot"
              kind="pressure"
              at={`${key}.pitotPsi`}
              value={value.pitotPsi}
              onChange={(pitotPsi) => onChange({ pitotPsi })}
            />
            <MeasureField
              {...OUTLET}
              label="Outlet, inside"
              kind="diameter"
              at={`${key}.outletIn`}
              value={value.outletIn}
              onChange={(outletIn) => onChange({ outletIn })}
            />
            <div className="test-field">
              <span className="test-label">Inside edge</span>
              <Choice
                label={`Inside edge of outlet ${number}`}
                value={String(value.coefficient)}
                options={edges.map((edge) => ({ value: String(edge.value), text: edge.text }))}
                onChange={(text) => onChange({ coefficient: Number(text) })}
              />
            </div>
          </>
        ) : (
          <MeasureField
            {...OUTLET_FLOW}
            label="Metered flow"
            kind="flow"
            at={`${key}.flowGpm`}
            value={value.flowGpm}
            onChange={(flowGpm) => onChange({ flowGpm })}
          />
        )}
        <WordField
          label="On hydrant"
          value={value.hydrant}
          maxLength={120}
          onChange={(hydrant) => onChange({ hydrant })}
        />
      </div>
      {flow?.multiplier !== undefined && flow.multiplier < 1 && (
        <p className="fact">
          × {flow.multiplier.toFixed(2)}: a pumper outlet’s stream is not whole at this pitot (NFPA
          291). A side outlet, or a flow tube, reads truer.
        </p>
      )}
    </fieldset>
  );
}
