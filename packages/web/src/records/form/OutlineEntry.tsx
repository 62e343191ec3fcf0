import { lazy, Suspense, useState } from 'react';
import { Button } from 'react-aria-components';
import { useView } from '../../plan-store/view.ts';
import { limitsAt } from '../fields/limits.ts';
import { type Outline, outlineOf, outlineValue } from '../outline/outline.ts';
import { shownText } from './draft.ts';
import type { FieldEntryProps } from './entry-props.ts';
import { fieldText, readPlaces } from './field-text.ts';
import { TextEntry } from './TextEntry.tsx';

/** The map comes with the first outline that is drawn. */
const OutlineDrawing = lazy(async () => ({
  default: (await import('../outline/OutlineDrawing.tsx')).OutlineDrawing,
}));

/** A course or an outline: as a list of places, and drawn on the map where that is asked for. */
export function OutlineEntry(props: FieldEntryProps) {
  const { kind, spec, within = [], draft, before, onChange, near } = props;
  const system = useView((view) => view.units);
  const [drawing, setDrawing] = useState(false);
  /** Texts to go back to, and whether the last one was drawn. */
  const [past, setPast] = useState<{ texts: readonly string[]; drawn: boolean }>(FRESH);
  const limits = limitsAt(kind, [...within, spec.field]);
  const text = shownText(spec, draft, before, system, limits);
  const closed = spec.type.is === 'rings';
  // What is not finished is drawn as far as it goes.
  const places = readPlaces(text);
  const outline: Outline | null = places.ok
    ? outlineOf(closed ? places.rings : places.rings[0], closed)
    : null;
  const put = (next: string) => onChange({ is: 'text', text: next, system });
  const draw = (next: Outline) => {
    setPast(({ texts }) => ({ texts: [...texts, text], drawn: true }));
    put(fieldText(spec, outlineValue(next), system));
  };
  const undo = () => {
    const last = past.texts.at(-1);
    if (last === undefined) return;
    setPast({ texts: past.texts.slice(0, -1), drawn: true });
    put(last);
  };
  return (
    <div className="outline-entry">
      <TextEntry
        {...props}
        onChange={(typed) => {
          // Typing after drawing is a step of its own: going back must not take it along.
          if (past.drawn) setPast(({ texts }) => ({ texts: [...texts, text], drawn: false }));
          onChange(typed);
        }}
      />
      <Button
        className="plain-button outline-switch"
        aria-expanded={drawing}
        onPress={() => setDrawing(!drawing)}
      >
        {drawing ? 'Close the map' : 'Draw it on the map'}
      </Button>
      {drawing && !outline && (
        <p className="soft-text" role="status">
          The list of places cannot be read; mend it, and the map shows it.
        </p>
      )}
      {drawing && outline && (
        <Suspense
          fallback={
            <p className="soft-text" role="status">
              Reading…
            </p>
          }
        >
          <OutlineDrawing
            outline={outline}
            near={near}
            onChange={draw}
            onUndo={past.texts.length > 0 ? undo : null}
          />
        </Suspense>
      )}
    </div>
  );
}

const FRESH = { texts: [], drawn: false } as const;
