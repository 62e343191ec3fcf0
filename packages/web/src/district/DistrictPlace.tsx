import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { getDistrict } from '../api/district.ts';
import { useLoaded } from '../api/use-loaded.ts';
import { UndoButtons } from '../app/UndoButtons.tsx';
import { PlaceHeader } from '../places/PlaceHeader.tsx';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { Unreachable } from '../places/Unreachable.tsx';
import { DistrictBoard } from './DistrictBoard.tsx';
import { fetchDistrict } from './district.ts';
import { useLayDraft } from './plan/lay-store.ts';
import './district.css';

/** The department's district: its map, its places, and the lays between them. */
export function DistrictPlace() {
  const [loaded, retry] = useLoaded('district', fetchDistrict);
  const [summary] = useLoaded('district-summary', getDistrict);
  const hydrants = summary.state === 'ready' ? (summary.value.counts.hydrants ?? 0) : 0;
  const ready = loaded.state === 'ready' ? loaded.value : null;
  const empty = ready !== null && ready.summary.bounds === null;
  return (
    <div className="page district-page">
      <PlaceHeader
        title={ready?.summary.name ?? 'District'}
        invented={ready?.summary.invented ?? false}
      >
        <LayHistory />
      </PlaceHeader>
      <main className={ready && !empty ? 'district' : undefined}>
        {loaded.state === 'loading' && (
          <p className="nothing" role="status">
            {hydrants > 0
              ? `Reading ${hydrants.toLocaleString('en-US')} ${hydrants === 1 ? 'hydrant' : 'hydrants'}…`
              : 'Opening the district…'}
          </p>
        )}
        {loaded.state === 'unreachable' && <Unreachable what="The district" onRetry={retry} />}
        {loaded.state === 'failed' && (
          <div className="unreachable" role="alert">
            <p>
              <b>The district could not be read.</b> {loaded.reason}
            </p>
            <p>
              <Button className="plain-button" onPress={retry}>
                Try again
              </Button>
            </p>
          </div>
        )}
        {empty && (
          <div className="unreachable">
            <p>
              <b>Nothing has a place yet.</b> These records hold no hydrants, streets or buildings.
            </p>
            <p>
              <PlaceLink href="/import">Bring in a list</PlaceLink> of them, from the water utility
              or the county&rsquo;s map office.
            </p>
          </div>
        )}
        {ready && !empty && <DistrictBoard district={ready} />}
      </main>
    </div>
  );
}

/** Back and forth over the lay's changes. */
function LayHistory() {
  const history = useLayDraft((state) => state.history);
  const undo = useLayDraft((state) => state.undo);
  const redo = useLayDraft((state) => state.redo);
  const before = history.past.at(-1)?.label;
  const after = history.future[0]?.label;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      // In a field the keys undo its own letters.
      if (event.target instanceof HTMLInputElement) return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) redo();
      else undo();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [undo, redo]);
  return <UndoButtons before={before} after={after} undo={undo} redo={redo} />;
}
