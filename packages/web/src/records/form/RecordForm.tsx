import type { Kind, RecordOrigin } from '@plugside/records/model';
import { Fragment, useRef, useState } from 'react';
import { Button, Checkbox } from 'react-aria-components';
import { ProblemError } from '../../api/problem.ts';
import { reasonOf } from '../../api/reason.ts';
import { useView } from '../../plan-store/view.ts';
import type { FieldSpec } from '../fields/field.ts';
import { fieldTables } from '../fields/field-tables.ts';
import type { Position } from '../outline/outline.ts';
import { type Refusals, refusalsOf } from '../save/refusals.ts';
import { type Draft, readForm, type Values } from './draft.ts';
import { FieldEntry } from './FieldEntry.tsx';
import { KeptNote } from './KeptNote.tsx';
import { type KeptForm, useKeptDrafts } from './kept-drafts.ts';
import { OriginEntry } from './OriginEntry.tsx';
import { readOrigins } from './origin-draft.ts';
import { PlacePick } from './PlacePick.tsx';

interface RecordFormProps {
  kind: Kind;
  /** The form's own address: what was typed is kept under it. */
  address: string;
  /** As read; null for a new record. */
  record: Values | null;
  /** What is given already of a new record. */
  known?: Values;
  /** Null clears a field. Throws what the server refuses. */
  onSave(changes: Values): Promise<void>;
  onCancel(): void;
}

const NO_REFUSALS: Refusals = { byPlace: {}, others: [] };

/** A record of any kind as it is written, by its table of fields. */
export function RecordForm(props: RecordFormProps) {
  const { kind, address, record, known = {}, onSave, onCancel } = props;
  const system = useView((view) => view.units);
  const kept = useKeptDrafts(({ forms }) => forms[address]);
  const { keep, drop } = useKeptDrafts.getState();
  const [foundAtMs, setFoundAtMs] = useState(kept?.typedAtMs);
  const form: KeptForm = kept ?? { before: record, drafts: {}, origins: {} };
  const { before, drafts, origins } = form;
  const [withOrigins, setWithOrigins] = useState(Object.keys(origins).length > 0);
  const [asked, setAsked] = useState(false);
  const [saving, setSaving] = useState(false);
  const [failed, setFailed] = useState<string | null>(null);
  const [refusals, setRefusals] = useState(NO_REFUSALS);
  const place = useRef<HTMLFormElement>(null);
  const table = fieldTables[kind].filter(({ elsewhere }) => !elsewhere);
  const was = (before ?? known) as Values;
  const near = placeOf(was);
  const beforeOrigins = (before?.origins ?? {}) as Readonly<Record<string, RecordOrigin>>;

  const read = readForm(kind, table, drafts, before, system, known);
  const readFrom = readOrigins(origins, beforeOrigins);
  const own = { ...read.problems, ...readFrom.problems };
  const shown = { ...(asked ? own : {}), ...refusals.byPlace };
  const wrong = Object.keys(own).length;
  const changes: Record<string, unknown> = { ...read.changes };
  if (Object.keys(readFrom.changes).length > 0) {
    // A new record has no origins to take away.
    const given = Object.entries(readFrom.changes).filter(([, one]) => before || one !== null);
    changes.origins = Object.fromEntries(given);
  }
  const touched = Object.keys(drafts).length + Object.keys(origins).length > 0;

  const put = (field: string, draft: Draft) => {
    keep(address, { ...form, drafts: { ...drafts, [field]: draft } });
    setRefusals(({ byPlace, others }) => ({ byPlace: withoutField(byPlace, field), others }));
    setFailed(null);
  };
  /** Both at once: the second must not undo the first. */
  const take = ({ longitude, latitude }: { longitude: number; latitude: number }) => {
    const typed = (value: number): Draft => ({ is: 'text', text: String(value), system });
    const both = { longitude: typed(longitude), latitude: typed(latitude) };
    keep(address, { ...form, drafts: { ...drafts, ...both } });
    setRefusals(({ byPlace, others }) => ({
      byPlace: withoutField(withoutField(byPlace, 'longitude'), 'latitude'),
      others,
    }));
    setFailed(null);
  };
  const save = async () => {
    setAsked(true);
    setFailed(null);
    if (wrong > 0) return focusFirst(place.current);
    if (before && Object.keys(changes).length === 0) {
      drop(address);
      return onCancel();
    }
    setSaving(true);
    try {
      await onSave(changes);
    } catch (error) {
      const issues = error instanceof ProblemError ? error.problem.issues : undefined;
      const told = issues ? refusalsOf(kind, table, issues, system) : NO_REFUSALS;
      setRefusals(told);
      setFailed(issues ? told.others.join(' ') || 'See the marked fields.' : reasonOf(error));
      focusFirst(place.current);
    } finally {
      setSaving(false);
    }
  };
  return (
    <form
      ref={place}
      className="record-form"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      {foundAtMs !== undefined && touched && (
        <KeptNote
          typedAtMs={foundAtMs}
          onDiscard={() => {
            drop(address);
            setFoundAtMs(undefined);
            setRefusals(NO_REFUSALS);
            setFailed(null);
            setAsked(false);
          }}
        />
      )}
      <Checkbox className="test-check" isSelected={withOrigins} onChange={setWithOrigins}>
        <span className="check-box" aria-hidden="true" />
        Show and change where each value comes from
      </Checkbox>
      <div className="record-fields">
        {table.map((spec) => (
          <Fragment key={spec.field}>
            <div className={`record-field${isWide(spec) ? ' record-field-wide' : ''}`}>
              <FieldEntry
                kind={kind}
                spec={spec}
                at={spec.field}
                draft={drafts[spec.field]}
                before={was[spec.field]}
                onChange={(draft) => put(spec.field, draft)}
                problems={shown}
                near={near}
              />
              {withOrigins && !WITHOUT_ORIGIN.has(spec.field) && (
                <OriginEntry
                  of={spec.label}
                  draft={origins[spec.field]}
                  before={originNow(beforeOrigins[spec.field], read.changes, spec.field)}
                  onChange={(draft) =>
                    keep(address, { ...form, origins: { ...origins, [spec.field]: draft } })
                  }
                  problem={shown[`origins.${spec.field}`]}
                />
              )}
            </div>
            {spec.field === LAST_OF_PLACE && (
              <div className="record-field record-field-wide">
                <PlacePick near={placeAt(near)} onTake={take} />
              </div>
            )}
          </Fragment>
        ))}
      </div>
      <div className="form-actions">
        <Button type="submit" className="save-button" isPending={saving}>
          {saving ? 'Saving' : 'Save'}
        </Button>
        <Button
          className="quiet-button"
          onPress={() => {
            drop(address);
            onCancel();
          }}
        >
          Cancel
        </Button>
        <p role="alert" className="form-missing">
          {failed
            ? `Not saved. ${failed}`
            : asked && wrong > 0
              ? `Not saved. ${wrong === 1 ? 'One field is' : `${wrong} fields are`} to mend; the mark says what.`
              : ''}
        </p>
      </div>
    </form>
  );
}

/** The map stands under both coordinates. */
const LAST_OF_PLACE = 'longitude';

const WITHOUT_ORIGIN: ReadonlySet<string> = new Set(['externalSource', 'externalId', 'note']);

/** A value that changes is the department's own, unless another origin is given for it. */
function originNow(before: RecordOrigin | undefined, changes: Values, field: string) {
  return field in changes ? undefined : before;
}

/** Where the record is, for a map that is to be drawn on. */
function placeOf({ longitude, latitude }: Values): Position | undefined {
  return typeof longitude === 'number' && typeof latitude === 'number'
    ? [longitude, latitude]
    : undefined;
}

const placeAt = (near: Position | undefined) => near && { longitude: near[0]!, latitude: near[1]! };

function isWide({ type }: FieldSpec): boolean {
  if (type.is === 'text') return (type.lines ?? 1) > 1;
  return ['rows', 'records', 'path', 'rings', 'json'].includes(type.is);
}

function withoutField(places: Readonly<Record<string, string>>, field: string) {
  const others = Object.entries(places).filter(([at]) => at.split(/[.[]/)[0] !== field);
  return Object.fromEntries(others);
}

/** Once the marks stand on the page. */
function focusFirst(form: HTMLFormElement | null): void {
  requestAnimationFrame(() => {
    form
      ?.querySelector<HTMLElement>(
        '[aria-invalid="true"], .test-field:has(> .field-problem) button',
      )
      ?.focus();
  });
}
