import { Button } from 'react-aria-components';
import { cancelImport, stopImport } from '../api/imports.ts';
import type { RefusedField } from '../api/problem.ts';
import { Progress } from '../editing/Progress.tsx';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { Unreachable } from '../places/Unreachable.tsx';
import { rowsText, spentText } from './count-words.ts';
import { MappingStep } from './MappingStep.tsx';
import { Report } from './Report.tsx';
import { type ImportHandle, useImport } from './use-import.ts';

/** One file on its way: its columns, its run, its report. */
export function ImportScreen({ id }: { id: string }) {
  const handle = useImport(id);
  const { view, away, problem } = handle;
  if (away === 'unreachable') return <Unreachable what="Importing" onRetry={handle.retry} />;
  if (away === 'gone') return <Gone />;
  if (!view || (view.state === 'ready' && handle.looking)) {
    return (
      <p className="nothing" role="status">
        Opening the import…
      </p>
    );
  }
  const { name, state, report } = view;
  return (
    <>
      {problem && handle.issues.length === 0 && (
        <p className="import-problem" role="alert">
          {problem}
        </p>
      )}
      {state === 'reading' && <Reading handle={handle} name={name} id={id} />}
      {state === 'ready' && (
        <>
          {report && <Report view={view} handle={handle} onRun={() => void handle.run(false)} />}
          <MappingStep handle={handle} view={view} />
          <RunBar handle={handle} id={id} />
        </>
      )}
      {state === 'running' && <Running handle={handle} id={id} />}
      {state === 'done' && (
        <>
          <Report view={view} handle={handle} onRun={() => void handle.run(false)} />
          <details className="import-again">
            <summary>Change how the columns are taken, and bring in again</summary>
            <MappingStep handle={handle} view={view} />
            <RunBar handle={handle} id={id} />
          </details>
        </>
      )}
      {(state === 'cancelled' || state === 'failed') && (
        <section className="import-part">
          <h2>{state === 'cancelled' ? `${name}: cancelled` : `${name} was not brought in`}</h2>
          <p>
            {view.failure
              ? view.failure.detail
              : 'Nothing was written; the records are as they were.'}
          </p>
          {view.failure && !view.failure.detail.includes(view.failure.remedy) && (
            <p>{view.failure.remedy}</p>
          )}
          <AnotherLink />
        </section>
      )}
    </>
  );
}

function Reading({ handle, name, id }: { handle: ImportHandle; name: string; id: string }) {
  const share = handle.view?.readShare ?? 0;
  return (
    <section className="import-part" aria-label="Reading the file">
      <h2>Reading {name}</h2>
      <Progress
        label={`Reading ${name}`}
        done={share}
        total={1}
        text={`${Math.round(share * 100)} % looked through, for its rows and columns`}
      />
      <p className="import-actions">
        <Button className="plain-button" onPress={() => void handle.act(() => cancelImport(id))}>
          Cancel
        </Button>
        <span className="soft-text">Nothing has been written yet.</span>
      </p>
    </section>
  );
}

function Running({ handle, id }: { handle: ImportHandle; id: string }) {
  const { view } = handle;
  if (!view) return null;
  const { done, total } = view.progress;
  return (
    <section className="import-part" aria-label="Under way">
      <h2>{view.name}</h2>
      <Progress
        label={`Going through ${view.name}`}
        done={done}
        total={total}
        text={`${done.toLocaleString('en-US')} of ${rowsText(total)}, ${spentText(view.elapsedMs ?? 0)}`}
      />
      <p className="import-actions">
        <Button className="plain-button" onPress={() => void handle.act(() => stopImport(id))}>
          Cancel
        </Button>
        <span className="soft-text">
          Cancelling writes nothing: the rows go in all at once, at the end. The columns stay as
          chosen.
        </span>
      </p>
    </section>
  );
}

function RunBar({ handle, id }: { handle: ImportHandle; id: string }) {
  const { view } = handle;
  if (!view) return null;
  const { total } = view.progress;
  if (handle.issues.length > 0) {
    return (
      <div className="run-bar">
        <div className="import-problem" role="alert">
          <p>The columns as chosen were not accepted, so nothing can be brought in yet.</p>
          {handle.issues.map((issue) => (
            <p key={issue.path}>{issueText(issue)}</p>
          ))}
        </div>
      </div>
    );
  }
  return (
    <div className="run-bar">
      <Button className="plain-button main-button" onPress={() => void handle.run(false)}>
        Bring in {rowsText(total)}
      </Button>
      <Button className="plain-button" onPress={() => void handle.run(true)}>
        Try it
      </Button>
      {view.state === 'ready' && (
        <Button className="quiet-button" onPress={() => void handle.act(() => cancelImport(id))}>
          Cancel
        </Button>
      )}
      <span className="soft-text run-bar-words">Trying counts every row and writes nothing.</span>
    </div>
  );
}

/** A coordinate system is refused in words of its own. */
const issueText = ({ path, allowed, message, remedy }: RefusedField) =>
  `${path === 'place.crs' ? allowed : message} ${remedy ?? ''}`;

export function AnotherLink() {
  return (
    <p>
      <PlaceLink href="/import" className="text-link">
        Import another list
      </PlaceLink>
    </p>
  );
}

function Gone() {
  return (
    <div className="unreachable" role="status">
      <p>
        <b>This import is no longer here.</b> The server forgets files on their way when it stops,
        and keeps the last 20. What was brought in before is in the records; a run that was cut
        short has written nothing.
      </p>
      <p>
        Choose the file again: its columns are remembered on this device, and nothing is doubled.
      </p>
      <AnotherLink />
    </div>
  );
}
