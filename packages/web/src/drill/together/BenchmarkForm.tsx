import { type Benchmarks, defaultBenchmarks } from '@plugside/drill';
import { Button } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import { MeasureField } from '../../field-tests/MeasureField.tsx';
import { type BenchmarkField, benchmarkFields, withOwn } from './benchmark-fields.ts';

interface BenchmarkFormProps {
  own: Partial<Benchmarks>;
  onChange(own: Partial<Benchmarks>): void;
}

/** What a drill is judged against: ours until the department sets its own. */
export function BenchmarkForm({ own, onChange }: BenchmarkFormProps) {
  const count = Object.keys(own).length;
  return (
    <details className="benchmarks">
      <summary>
        Benchmarks{' '}
        <span className="soft-text">
          {count === 0
            ? 'ours, until you set your own'
            : `${count} set by your department, the rest ours`}
        </span>
      </summary>
      <p className="soft-text">
        No standard fixes these. 20 psi in the main and at a hose-fed intake is common practice; the
        rest is ours. Put in your department’s own: it is kept on this device.
      </p>
      <div className="test-fields">
        {benchmarkFields.map((field) => (
          <Field key={field.key} field={field} own={own} onChange={onChange} />
        ))}
      </div>
      {count > 0 && (
        <Button className="plain-button" onPress={() => onChange({})}>
          Back to ours
        </Button>
      )}
    </details>
  );
}

function Field({ field, own, onChange }: BenchmarkFormProps & { field: BenchmarkField }) {
  const units = useUnits();
  const { key, label, kind, min, max } = field;
  const ours = defaultBenchmarks[key];
  const isOwn = own[key] !== undefined;
  const oursText =
    ours === undefined
      ? 'not judged'
      : kind === 'pressure'
        ? units.text(ours, 'pressure')
        : `${ours}${kind === 'seconds' ? ' s' : ''}`;
  return (
    <MeasureField
      label={label}
      kind={kind === 'pressure' ? 'pressure' : kind === 'seconds' ? 'coefficient' : 'count'}
      value={own[key] ?? ours}
      min={min}
      max={max}
      {...(kind === 'seconds' && { unit: 's' })}
      hint={isOwn ? `your department’s; ours: ${oursText}` : `ours: ${oursText}`}
      onChange={(value) => onChange(withOwn(own, key, value))}
    />
  );
}
