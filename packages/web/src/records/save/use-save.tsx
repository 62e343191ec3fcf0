import type { FieldsIn, Kind } from '@plugside/records/model';
import { type ReactNode, useState } from 'react';
import { StaleError } from '../../api/problem.ts';
import { changeRecord } from '../../api/records.ts';
import { tellChanged } from '../changed.ts';
import type { Values } from '../form/draft.ts';
import { ConflictDialog } from './ConflictDialog.tsx';

interface Conflict {
  before: Values;
  changes: Values;
  current: Values;
}

export interface Saving {
  /**
   * Writes changes on the record that they were made on; null clears a field. Where somebody else
   * changed it first, the dialog asks, and this comes back without having written.
   * @throws what else the server refuses
   */
  save(changes: Values): Promise<void>;
  /** To be shown on the page. */
  dialog: ReactNode;
}

/** Saving a change of a record, with a question where two people changed it. */
export function useSave(kind: Kind, record: Values, onSaved: (record: Values) => void): Saving {
  const [conflict, setConflict] = useState<Conflict | null>(null);
  const write = async (before: Values, changes: Values) => {
    try {
      const saved = await change(kind, before, changes);
      setConflict(null);
      tellChanged();
      onSaved(saved);
    } catch (error) {
      if (!(error instanceof StaleError)) throw error;
      setConflict({ before, changes, current: error.current as Values });
    }
  };
  return {
    save: (changes) => write(record, changes),
    dialog: conflict && (
      <ConflictDialog
        // Another version in between is another question.
        key={String(conflict.current.version)}
        kind={kind}
        {...conflict}
        onChosen={async (changes) => {
          if (Object.keys(changes).length > 0) return write(conflict.current, changes);
          setConflict(null);
          tellChanged();
          onSaved(conflict.current);
        }}
        onCancel={() => setConflict(null)}
      />
    ),
  };
}

async function change(kind: Kind, before: Values, changes: Values): Promise<Values> {
  const given = changes as { [F in keyof FieldsIn<Kind>]?: FieldsIn<Kind>[F] | null };
  return changeRecord(kind, before.id as string, before.version as number, given);
}
