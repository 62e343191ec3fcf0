import { type ImportKind, importKinds } from '@plugside/records/import-fields';
import { kindLabels } from '@plugside/records/model';
import { type DragEvent, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { uploadImport } from '../api/imports.ts';
import { UnreachableError } from '../api/problem.ts';
import { FILE_LIMIT_BYTES } from '../api/upload.ts';
import { Choice } from '../editing/Choice.tsx';
import { Progress } from '../editing/Progress.tsx';
import { goTo } from '../places/place.ts';
import { Unreachable } from '../places/Unreachable.tsx';
import { acceptedEndings, fileProblem, kindFromName, sizeText } from './file-check.ts';
import { kindFromMemory, markFresh, rememberedLists } from './remembered.ts';

/** The server looks at the columns and says which kind it takes them for. */
const BY_COLUMNS = 'by columns';
const kindOptions = [
  { value: BY_COLUMNS as ImportKind | typeof BY_COLUMNS, text: 'kind that its columns tell' },
  ...importKinds.map((kind) => ({ value: kind, text: kindLabels[kind][1] })),
];

/** The first step: a file, and what its rows are. */
export function ChooseFile() {
  const [file, setFile] = useState<File | null>(null);
  const [kind, setKind] = useState<ImportKind | typeof BY_COLUMNS>(BY_COLUMNS);
  const [guessed, setGuessed] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [over, setOver] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const upload = useUpload();

  const take = (files: FileList | null | undefined) => {
    const [first] = files ?? [];
    if (!first) return;
    const wrong =
      files && files.length > 1
        ? `${files.length} files were dropped; lists are brought in one at a time. Put the files of a shapefile into one zip file.`
        : fileProblem(first);
    setProblem(wrong);
    if (wrong !== null) return;
    const found = kindFromMemory(rememberedLists(), first.name) ?? kindFromName(first.name);
    setFile(first);
    setGuessed(found !== null);
    setKind(found ?? BY_COLUMNS);
    upload.forget();
  };
  const onDrop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    take(event.dataTransfer.files);
  };

  if (upload.unreachable) return <Unreachable what="Importing" onRetry={upload.forget} />;
  if (file && upload.sentBytes !== null) {
    return (
      <section className="import-part" aria-label="Sending the file">
        <h2>Sending {file.name}</h2>
        <Progress
          label={`Sending ${file.name}`}
          done={upload.sentBytes}
          total={file.size}
          text={`${sizeText(upload.sentBytes)} of ${sizeText(file.size)}`}
        />
        <p className="import-actions">
          <Button className="plain-button" onPress={upload.cancel}>
            Cancel
          </Button>
          <span className="soft-text">Nothing has been written yet.</span>
        </p>
      </section>
    );
  }
  return (
    <section className="import-part" aria-labelledby="choose-file">
      <h2 id="choose-file">Bring in a list</h2>
      <p className="import-lead">
        From the water utility, the county’s map office or your own spreadsheet. You see what is
        made of every column before anything is written, and the same list brought in again changes
        its records instead of doubling them.
      </p>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way; the button is for everyone */}
      <div
        className={over ? 'drop-place drop-over' : 'drop-place'}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={onDrop}
      >
        <input
          ref={input}
          type="file"
          hidden
          aria-label="File to import"
          accept={acceptedEndings.join(',')}
          onChange={(event) => {
            take(event.target.files);
            event.target.value = '';
          }}
        />
        <div className="drop-words">
          {file ? (
            <p>
              <b className="file-name">{file.name}</b>{' '}
              <span className="soft-text">{sizeText(file.size)}</span>
            </p>
          ) : (
            <p>Drop a file here, or choose one.</p>
          )}
          <p className="soft-text">
            CSV, GeoJSON or a zipped shapefile, up to {sizeText(FILE_LIMIT_BYTES)}.
          </p>
        </div>
        <Button
          className={file ? 'plain-button' : 'plain-button main-button'}
          onPress={() => input.current?.click()}
        >
          {file ? 'Choose another' : 'Choose a file'}
        </Button>
      </div>
      {problem && (
        <p className="import-problem" role="alert">
          {problem}
        </p>
      )}
      {upload.problem && (
        <p className="import-problem" role="alert">
          {upload.problem}
        </p>
      )}
      {file && (
        <>
          <p className="kind-line">
            Each row is one of the{' '}
            <Choice
              label="Kind of record"
              value={kind}
              options={kindOptions}
              onChange={(next) => {
                setKind(next);
                setGuessed(false);
              }}
            />
            {guessed && <span className="soft-text"> by the file’s name</span>}
          </p>
          <p className="import-actions">
            <Button
              className="plain-button main-button"
              onPress={() => upload.send(file, kind === BY_COLUMNS ? null : kind)}
            >
              Look at the columns
            </Button>
          </p>
        </>
      )}
    </section>
  );
}

/** One upload at a time, with how far it has come. */
function useUpload() {
  const [sentBytes, setSentBytes] = useState<number | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [unreachable, setUnreachable] = useState(false);
  const stop = useRef<AbortController | null>(null);
  useEffect(() => () => stop.current?.abort(), []);

  const send = async (file: File, kind: ImportKind | null) => {
    const mine = new AbortController();
    stop.current = mine;
    setSentBytes(0);
    setProblem(null);
    try {
      const { id } = await uploadImport(file, kind, {
        onProgress: setSentBytes,
        signal: mine.signal,
      });
      markFresh(id);
      goTo(`/import/${id}`);
    } catch (error) {
      setSentBytes(null);
      if (mine.signal.aborted) return;
      if (error instanceof UnreachableError) setUnreachable(true);
      else setProblem(error instanceof Error ? error.message : String(error));
    }
  };
  return {
    sentBytes,
    problem,
    unreachable,
    send,
    cancel: () => stop.current?.abort(),
    forget: () => {
      setProblem(null);
      setUnreachable(false);
    },
  };
}
