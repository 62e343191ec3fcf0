import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { loadedTerrain, loadTerrain } from '../../api/elevation.ts';
import { reasonOf } from '../../api/reason.ts';
import { FILE_LIMIT_BYTES } from '../../api/upload.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { Progress } from '../../editing/Progress.tsx';
import { Switcher } from '../../editing/Switcher.tsx';
import { useUnits } from '../../editing/use-units.ts';
import { Once } from '../Once.tsx';
import { useLast } from '../use-last.ts';
import { RemoveTerrain } from './RemoveTerrain.tsx';

type FileUnit = 'as it says' | 'm' | 'ft';

const UNITS: readonly { value: FileUnit; text: string }[] = [
  { value: 'as it says', text: 'As the file says' },
  { value: 'm', text: 'Metres' },
  { value: 'ft', text: 'Feet' },
];

const MEGABYTE = 1_048_576;

/** The terrain that heights are read from where a record has none. */
export function GroundHeights() {
  const [times, setTimes] = useState(0);
  const [loaded, retry] = useLoaded(`terrain:${times}`, loadedTerrain);
  const again = () => setTimes((before) => before + 1);
  return (
    <section aria-labelledby="ground-title" className="ground-heights">
      <h3 id="ground-title">Ground heights</h3>
      <Once loaded={useLast(loaded)} retry={retry} what="The terrain">
        {(terrain) => <Told {...terrain} onChanged={again} />}
      </Once>
    </section>
  );
}

function Told({
  name,
  cellFt,
  onChanged,
}: {
  name: string | null;
  cellFt: number | null;
  onChanged(): void;
}) {
  const units = useUnits();
  const input = useRef<HTMLInputElement>(null);
  const [unit, setUnit] = useState<FileUnit>('as it says');
  const [sending, setSending] = useState<{
    file: File;
    sent: number;
    stop: AbortController;
  } | null>(null);
  const [failed, setFailed] = useState<string | null>(null);
  const load = async (file: File) => {
    setFailed(null);
    if (file.size > FILE_LIMIT_BYTES) {
      setFailed(
        `${file.name} has ${Math.ceil(file.size / MEGABYTE)} MB; at most ${FILE_LIMIT_BYTES / MEGABYTE} are taken. Cut it to the district, or to coarser cells.`,
      );
      return;
    }
    const stop = new AbortController();
    setSending({ file, sent: 0, stop });
    try {
      await loadTerrain(file, unit === 'as it says' ? undefined : unit, {
        signal: stop.signal,
        onProgress: (sent) => setSending({ file, sent, stop }),
      });
      onChanged();
    } catch (error) {
      if (!stop.signal.aborted) setFailed(reasonOf(error));
    }
    setSending(null);
  };
  return (
    <>
      <p>
        {name === null ? (
          'None are loaded: lays rise and fall by what the records say, else they are taken as level.'
        ) : (
          <>
            From <b>{name}</b>
            {cellFt !== null && `, a height every ${units.text(cellFt, 'length')}`}. They count
            where a record has no height of its own, and between the ends of a lay.
          </>
        )}
      </p>
      {sending ? (
        <>
          <Progress
            label={`Sending ${sending.file.name}`}
            done={sending.sent}
            total={sending.file.size}
            text={
              sending.sent < sending.file.size
                ? `${Math.round(sending.sent / MEGABYTE)} of ${Math.ceil(sending.file.size / MEGABYTE)} MB`
                : 'reading it…'
            }
          />
          <Button className="plain-button" onPress={() => sending.stop.abort()}>
            Cancel
          </Button>
        </>
      ) : (
        <div className="cards-do">
          <Switcher<FileUnit>
            label="Heights in the file"
            value={unit}
            options={UNITS}
            onChange={setUnit}
          />
          <Button className="plain-button" onPress={() => input.current?.click()}>
            {name === null ? 'Load a GeoTIFF' : 'Load another GeoTIFF'}
          </Button>
          {name !== null && <RemoveTerrain name={name} onRemoved={onChanged} />}
          <input
            ref={input}
            type="file"
            accept=".tif,.tiff,image/tiff"
            hidden
            aria-label="GeoTIFF with heights of the ground"
            onChange={(event) => {
              const [file] = event.target.files ?? [];
              event.target.value = '';
              if (file) void load(file);
            }}
          />
        </div>
      )}
      <p role="alert" className="tone-warning">
        {failed && `Not loaded. ${failed}`}
      </p>
    </>
  );
}
