import { type Kind, kindLabels } from '@plugside/records/model';
import { useState } from 'react';
import { Button, Input, Label, SearchField } from 'react-aria-components';
import { listRecords } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import type { Values } from './draft.ts';

interface RecordPickerProps {
  kind: Kind;
  label: string;
  /** Not offered. */
  without?: readonly string[];
  onPick(id: string): void;
}

const SHOWN = 6;

/** Finds a record of a kind that has names by it, and hands back its id. */
export function RecordPicker({ kind, label, without = [], onPick }: RecordPickerProps) {
  const [search, setSearch] = useState('');
  const [begun, setBegun] = useState(false);
  const [loaded] = useLoaded(begun ? `${kind}:${search}` : null, (signal) =>
    listRecords(
      kind,
      { search: search.trim() || undefined, sort: 'name', limit: SHOWN + without.length },
      signal,
    ),
  );
  const found: readonly Values[] = loaded.state === 'ready' ? loaded.value.records : [];
  const offered = found.filter(({ id }) => !without.includes(id as string)).slice(0, SHOWN);
  const [one] = kindLabels[kind];
  const pick = (id: unknown) => {
    if (typeof id !== 'string') return;
    setSearch('');
    setBegun(false);
    onPick(id);
  };
  return (
    <div className="record-picker">
      <SearchField
        className="test-field"
        value={search}
        maxLength={200}
        onChange={setSearch}
        onFocus={() => setBegun(true)}
        onSubmit={() => pick(offered[0]?.id)}
      >
        <Label>{label}</Label>
        <span className="test-field-line">
          <Input placeholder={`Find a ${one}`} />
        </span>
      </SearchField>
      {begun && (
        <div role="status" className="picker-told">
          {loaded.state === 'ready' && offered.length === 0 && `No ${one} with these words.`}
          {(loaded.state === 'failed' || loaded.state === 'unreachable') &&
            'The server does not answer.'}
        </div>
      )}
      {offered.length > 0 && (
        <ul className="picker-list">
          {offered.map((record) => (
            <li key={record.id as string}>
              <Button className="picker-option" onPress={() => pick(record.id)}>
                <span className="picked-name">{String(record.name)}</span>
                {typeof record.address === 'string' && (
                  <span className="soft-text">{record.address}</span>
                )}
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
