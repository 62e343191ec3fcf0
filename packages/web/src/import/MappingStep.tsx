import {
  hasPlace,
  type ImportKind,
  importKinds,
  type Mapping,
} from '@plugside/records/import-fields';
import { kindLabels } from '@plugside/records/model';
import { Button } from 'react-aria-components';
import type { ImportView } from '../api/imports.ts';
import { Choice } from '../editing/Choice.tsx';
import { ColumnList } from './ColumnList.tsx';
import { rowsText } from './count-words.ts';
import { FirstRows } from './FirstRows.tsx';
import { ListChoices } from './ListChoices.tsx';
import { PlaceChoices } from './PlaceChoices.tsx';
import type { ImportHandle } from './use-import.ts';
import { Whereabouts } from './Whereabouts.tsx';

const kindOptions = importKinds.map((kind) => ({ value: kind, text: kindLabels[kind][1] }));

interface StepProps {
  handle: ImportHandle;
  view: ImportView;
}

/** What every column is taken for, beside what becomes of the first rows. */
export function MappingStep({ handle, view }: StepProps) {
  const { mapping } = view;
  if (!mapping) return null;
  const change = (next: Mapping) => {
    handle.forgetRecalled();
    handle.setMapping(next);
  };
  return (
    <div className="mapping-step">
      <section className="import-part" aria-labelledby="import-file">
        <h2 id="import-file" className="file-name">
          {view.name}
        </h2>
        <p className="kind-line">
          {rowsText(view.progress.total)} of{' '}
          <Choice
            label="Kind of record"
            value={view.kind}
            options={kindOptions}
            onChange={(kind: ImportKind) => void handle.guess(kind)}
          />{' '}
          <span className="soft-text">{formatText(view)}</span>
        </p>
        {view.mendedCount > 0 && view.state === 'ready' && (
          <p>{rowsText(view.mendedCount)} mended here, and taken as mended.</p>
        )}
        <OtherKind handle={handle} view={view} />
        <Whereabouts view={view} />
        <Remembered handle={handle} view={view} />
        {mapping.notices.length > 0 && (
          <ul className="import-notices" aria-label="To look at">
            {mapping.notices.map((notice) => (
              <li key={notice}>{notice}</li>
            ))}
          </ul>
        )}
      </section>
      <ListChoices mapping={mapping} columns={view.columns} onChange={change} />
      {hasPlace(view.kind) && (
        <PlaceChoices
          view={view}
          mapping={mapping}
          crsProblem={handle.issues.find(({ path }) => path === 'place.crs')}
          onChange={change}
        />
      )}
      <ColumnList key={view.kind} view={view} mapping={mapping} onChange={change} />
      <FirstRows view={view} />
    </div>
  );
}

/** The columns tell of another kind than is chosen. */
function OtherKind({ handle, view }: StepProps) {
  const { likelyKind } = view;
  if (!likelyKind) return null;
  const [, many] = kindLabels[likelyKind];
  return (
    <p className="import-told" role="status">
      Its columns look like {many}, not {kindLabels[view.kind][1]}.{' '}
      <Button className="plain-button" onPress={() => void handle.guess(likelyKind)}>
        Take them as {many}
      </Button>
    </p>
  );
}

function Remembered({ handle, view }: StepProps) {
  const { recalled } = handle;
  if (!recalled) return null;
  const guessAnew = async () => {
    handle.forgetRecalled();
    await handle.guess(view.kind);
  };
  if (recalled.is === 'same list') {
    return (
      <p className="import-told" role="status">
        The columns are taken as last time for “{recalled.mapping.sourceName}”.{' '}
        <Button className="plain-button" onPress={() => void guessAnew()}>
          Guess anew
        </Button>
      </p>
    );
  }
  return (
    <div className="import-told" role="status">
      <p>
        This file has the same columns as the list “{recalled.name}”. Is it a newer file of that
        list?
      </p>
      <p className="import-actions">
        <Button
          className="plain-button main-button"
          onPress={() => {
            handle.setMapping(recalled.mapping);
            handle.forgetRecalled();
          }}
        >
          Yes, the same list
        </Button>
        <Button className="plain-button" onPress={handle.forgetRecalled}>
          No, another list
        </Button>
      </p>
    </div>
  );
}

function formatText({ format, encoding, delimiter }: ImportView): string {
  if (format === 'csv') return `CSV, ${encoding}, columns apart by ${delimiter}`;
  return format === 'geojson' ? 'GeoJSON' : `shapefile, ${encoding}`;
}
