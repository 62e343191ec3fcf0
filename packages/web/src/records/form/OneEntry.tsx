import { hoseSizes } from '@plugside/fireground';
import { Choice } from '../../editing/Choice.tsx';
import { Switcher } from '../../editing/Switcher.tsx';
import { type Units, useUnits } from '../../editing/use-units.ts';
import type { FieldSpec } from '../fields/field.ts';
import { limitsAt } from '../fields/limits.ts';
import { hoseWords } from '../words.ts';
import type { FieldEntryProps } from './entry-props.ts';
import { Needed } from './Needed.tsx';
import { TextEntry } from './TextEntry.tsx';

/** A field that holds one value: typed, or one of a few. */
export function OneEntry(props: FieldEntryProps) {
  const { is } = props.spec.type;
  return is === 'choice' || is === 'yes-no' || is === 'hose-size' ? (
    <PickEntry {...props} />
  ) : (
    <TextEntry {...props} />
  );
}

const NONE = '';

/** One of a few. */
function PickEntry(props: FieldEntryProps) {
  const { kind, spec, within = [], at, draft, before, onChange, problems, hideLabel } = props;
  const units = useUnits();
  const limits = limitsAt(kind, [...within, spec.field]);
  const value = draft?.is === 'value' ? draft.value : (before ?? limits.fallback);
  const label = props.spoken ?? spec.label;
  const take = (picked: string) => {
    const known = spec.type.is === 'yes-no' ? picked === 'yes' : picked;
    onChange({ is: 'value', value: picked === NONE ? undefined : known });
  };
  return (
    <div className="test-field">
      {!hideLabel && (
        <span className="test-label">
          {spec.label}
          {limits.required && within.length === 0 && <Needed />}
        </span>
      )}
      {spec.type.is === 'yes-no' ? (
        <Switcher
          label={label}
          value={value === undefined ? NONE : value ? 'yes' : 'no'}
          options={[
            { value: 'yes', text: 'yes' },
            { value: 'no', text: 'no' },
            ...(limits.required || limits.fallback !== undefined || within.length > 0
              ? []
              : [{ value: NONE, text: 'not known' }]),
          ]}
          onChange={take}
        />
      ) : (
        <Choice
          label={label}
          value={value === undefined ? NONE : String(value)}
          options={[
            ...(value === undefined ? [{ value: NONE, text: 'choose' }] : []),
            ...optionsOf(spec, limits.options, value, units),
          ]}
          onChange={take}
        />
      )}
      {spec.help && !hideLabel && <span className="field-help">{spec.help}</span>}
      {problems[at] && <span className="field-problem">{problems[at]}</span>}
    </div>
  );
}

function optionsOf(
  { type }: FieldSpec,
  options: readonly string[] | undefined,
  value: unknown,
  units: Units,
): { value: string; text: string }[] {
  if (type.is === 'hose-size') {
    // A size that the catalogue does not have stays what it is until another is picked.
    const own = typeof value === 'string' && !(hoseSizes as readonly string[]).includes(value);
    return [...(own ? [value] : []), ...hoseSizes].map((size) => ({
      value: size,
      text: hoseWords(size, units),
    }));
  }
  const words = type.is === 'choice' ? type.words : undefined;
  return (options ?? []).map((one) => ({ value: one, text: words?.[one] ?? one }));
}
