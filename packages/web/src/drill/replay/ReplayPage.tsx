import { Button } from 'react-aria-components';
import { type DrillRecord, drillRecord } from '../../api/index.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { PaperLink } from '../../paper/PaperLink.tsx';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { Unreachable } from '../../places/Unreachable.tsx';
import { pastAddress } from '../together/address.ts';
import { ReplayBoard } from './ReplayBoard.tsx';
import { useReplay } from './use-replay.ts';
import './replay.css';

/** `/drill/replay/<id>`: a drill that has ended, to look at again. */
export function ReplayPage({ roomId }: { roomId: string }) {
  const [record, retry] = useLoaded(`replay ${roomId}`, (signal) => drillRecord(roomId, signal));
  return (
    <div className="room-page">
      <p className="room-back">
        <PlaceLink href={pastAddress}>‹ Past drills</PlaceLink>
      </p>
      {record.state === 'loading' && <p role="status">Reading the drill…</p>}
      {record.state === 'unreachable' && <Unreachable what="A drill on record" onRetry={retry} />}
      {record.state === 'failed' && (
        <div className="room-empty" role="alert">
          <p>{record.reason}</p>
          <p>
            <Button className="plain-button" onPress={retry}>
              Try again
            </Button>
          </p>
        </div>
      )}
      {record.state === 'ready' && <Playing record={record.value} />}
    </div>
  );
}

function Playing({ record }: { record: DrillRecord }) {
  const [replayed, askFor] = useReplay(record);
  const { played, failed, share } = replayed;
  return (
    <>
      <div className="replay-head">
        <div>
          <h1 className="room-title">{record.title}</h1>
          <p className="soft-text">
            {record.crew ?? 'no crew given'} · {new Date(record.startedAt).toLocaleString()}
          </p>
        </div>
        <PaperLink document={`drill-report/${encodeURIComponent(record.roomId)}`}>
          Print the report
        </PaperLink>
      </div>
      {failed !== undefined && (
        <p className="tone-warning" role="alert">
          The drill could not be played again. {failed}
        </p>
      )}
      {!played && failed === undefined && (
        <p className="replay-progress" role="status">
          Playing it again… {Math.round(share * 100)} %
          <progress max={1} value={share} aria-label="Played" />
          <PlaceLink className="plain-button link-button" href={pastAddress}>
            Cancel
          </PlaceLink>
        </p>
      )}
      {played && (
        <ReplayBoard record={record} played={played} view={replayed.view} askFor={askFor} />
      )}
    </>
  );
}
