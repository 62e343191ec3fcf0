import type { Kind } from '@plugside/records/model';
import { Button } from 'react-aria-components';
import { useLoaded } from '../../api/use-loaded.ts';
import { limitsAt } from '../fields/limits.ts';
import { recordsWhere } from '../lookups.ts';
import type { FieldEntryProps } from './entry-props.ts';
import { RecordPicker } from './RecordPicker.tsx';

type Props = FieldEntryProps & { to: Kind };

/** Another record that this one belongs to. */
export function RecordEntry({ kind, spec, at, draft, before, onChange, problems, to }: Props) {
  const picked = draft?.is === 'value' ? draft.value : before;
  const names = useNames(to, typeof picked === 'string' ? [picked] : []);
  const { required } = limitsAt(kind, [spec.field]);
  return (
    <div className="test-field" data-at={at}>
      {typeof picked === 'string' ? (
        <>
          <span className="test-label">{spec.label}</span>
          <span className="picked">
            <span className="picked-name">{names.get(picked) ?? '…'}</span>
            <Button
              className="quiet-button"
              aria-label={`${spec.label}: choose another`}
              onPress={() => onChange({ is: 'value' })}
            >
              {required ? 'Choose another' : 'Take away'}
            </Button>
          </span>
        </>
      ) : (
        <RecordPicker
          kind={to}
          label={spec.label}
          onPick={(id) => onChange({ is: 'value', value: id })}
        />
      )}
      {problems[at] && <span className="field-problem">{problems[at]}</span>}
    </div>
  );
}

/** Several of them. */
export function ManyRecordsEntry({ spec, at, draft, before, onChange, problems, to }: Props) {
  const picked = ((draft?.is === 'value' ? draft.value : before) ?? []) as readonly string[];
  const names = useNames(to, picked);
  return (
    <fieldset className="test-group" data-at={at}>
      <legend>{spec.label}</legend>
      <ul className="picked-list">
        {picked.map((id) => (
          <li key={id} className="picked">
            <span className="picked-name">{names.get(id) ?? '…'}</span>
            <Button
              className="quiet-button"
              aria-label={`Take ${names.get(id) ?? 'it'} away`}
              onPress={() => onChange({ is: 'value', value: picked.filter((one) => one !== id) })}
            >
              Take away
            </Button>
          </li>
        ))}
      </ul>
      <RecordPicker
        kind={to}
        label="Add"
        without={picked}
        onPick={(id) => onChange({ is: 'value', value: [...picked, id] })}
      />
      {problems[at] && <p className="field-problem">{problems[at]}</p>}
    </fieldset>
  );
}

function useNames(kind: Kind, ids: readonly string[]): ReadonlyMap<string, string> {
  const [loaded] = useLoaded(ids.length === 0 ? null : `${kind}:${ids.join()}`, (signal) =>
    recordsWhere(kind, 'id', ids, signal),
  );
  const found = loaded.state === 'ready' ? loaded.value : [];
  return new Map(
    found.map((one) => [one.id, 'name' in one ? one.name || 'without a name' : one.id]),
  );
}
