import {
  type DrillAction,
  type DrillScene,
  mostRadioCharacters,
  type RadioPreset,
  type Role,
  radioPresets,
} from '@plugside/drill';
import { type FormEvent, useCallback, useEffect, useId, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { QuantityField } from '../../editing/QuantityField.tsx';
import { useUnits } from '../../editing/use-units.ts';
import { clockText, inUnits, roleWords } from '../words.ts';
import { MoreMessages } from './MoreMessages.tsx';
import { radioMark } from './marks.ts';
import { StageRefusal } from './StageRefusal.tsx';
import { useStage } from './stage-context.ts';

const presets: readonly RadioPreset[] = radioPresets;
type PresetKey = (typeof radioPresets)[number]['key'];

/** What this role has need of most often, beside what its script expects. */
const usual: readonly PresetKey[] = ['copied', 'say again', 'stop'];
const PSI = { min: 0, max: 500, step: { us: 5, si: 0.5 } };
const GPM = { min: 0, max: 10_000 };

interface RadioPanelProps {
  /** What the guide would say, its number with it. */
  suggested: readonly DrillAction[];
}

/** The radio: messages at a touch, a free one, and what was said. */
export function RadioPanel({ suggested }: RadioPanelProps) {
  const { scene, view, act } = useStage();
  const units = useUnits();
  const [numbered, setNumbered] = useState<PresetKey | null>(null);
  const { quick, rest } = useMemo(() => messagesOf(scene, view.role), [scene, view.role]);
  const latest = useRef(act);
  latest.current = act;
  const pick = useCallback((key: string) => {
    if (presets.find((one) => one.key === key)?.needs) setNumbered(key as PresetKey);
    else latest.current({ do: 'radio', message: { preset: key as PresetKey } });
  }, []);
  const said = view.radio.slice(-6).reverse();
  return (
    <section className="radio" aria-label="Radio">
      <h2 className="section-name">Radio</h2>
      <div className="radio-quick">
        {quick.map((preset) => (
          <PresetButton
            key={preset.key}
            preset={preset}
            open={numbered === preset.key}
            onNumber={() => setNumbered(preset.key as PresetKey)}
          />
        ))}
        {rest.length > 0 && <MoreMessages messages={rest} onPick={pick} />}
      </div>
      {numbered && (
        <NumberedMessage
          key={numbered}
          preset={numbered}
          suggested={suggested}
          onDone={() => setNumbered(null)}
        />
      )}
      <FreeMessage />
      {said.length === 0 ? (
        <p className="soft-text">Nothing has been said yet.</p>
      ) : (
        <ol className="said" aria-live="polite">
          {said.map((entry) => (
            <li key={`${entry.tick}:${entry.from}:${entry.text}`}>
              <span className="figures soft-text">{clockText(entry.tick / 20)}</span>{' '}
              <b>{roleWords[entry.from]}</b> {inUnits(entry.text, units)}
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}

/**
 * A role's messages: those of its script and the usual ones at hand, all along, so that none comes or goes
 * between the others; the rest behind "More".
 */
function messagesOf(scene: DrillScene, role: Role) {
  const scripted = scene.steps.flatMap((step) =>
    step.role === role
      ? step.how.flatMap((how) =>
          how.do === 'radio' && 'preset' in how.message ? [how.message.preset as string] : [],
        )
      : [],
  );
  const expected = scene.expectedMessages.filter((one) => one.role === role);
  const keys = new Set([...scripted, ...expected.map(({ preset }) => preset), ...usual]);
  const isSaidBy = ({ by }: RadioPreset) => by === undefined || by.some((one) => one === role);
  return {
    quick: presets.filter(({ key }) => keys.has(key)),
    rest: presets
      .filter((preset) => !keys.has(preset.key) && isSaidBy(preset))
      .map((preset) => ({ key: preset.key, words: presetWords(preset) })),
  };
}

/** The words of a preset, its number left open. */
const presetWords = ({ text }: RadioPreset) => text.replace(/\{(psi|gpm)\}( psi| gpm)?\.?/, '…');

function PresetButton(props: { preset: RadioPreset; open: boolean; onNumber(): void }) {
  const { preset, open, onNumber } = props;
  const { act, marks } = useStage();
  const mark = radioMark(preset.key);
  return (
    <>
      <Button
        className="plain-button"
        data-marked={marks.has(mark) || undefined}
        aria-expanded={preset.needs ? open : undefined}
        onPress={() =>
          preset.needs
            ? onNumber()
            : act({ do: 'radio', message: { preset: preset.key as PresetKey } })
        }
      >
        {presetWords(preset)}
      </Button>
      <StageRefusal mark={mark} />
    </>
  );
}

interface NumberedMessageProps {
  preset: PresetKey;
  suggested: readonly DrillAction[];
  onDone(): void;
}

/** A message that carries a number: the number beside it, then said. */
function NumberedMessage({ preset, suggested, onDone }: NumberedMessageProps) {
  const { view, act } = useStage();
  const found = presets.find(({ key }) => key === preset)!;
  const isFlow = found.needs === 'gpm';
  const gauge = (end: string) => view.gauges.find(({ id }) => id.endsWith(end))?.value;
  const guided = suggested.flatMap((action) =>
    action.do === 'radio' && 'preset' in action.message && action.message.preset === preset
      ? [action.message.psi ?? action.message.gpm]
      : [],
  )[0];
  const [first] = view.pumps;
  const held = first?.setting.mode === 'governed' ? first.setting.pdpPsi : undefined;
  const usualValue =
    preset === 'flow'
      ? gauge('.flow')
      : preset === 'intake'
        ? gauge('.intake')
        : preset === 'pressure set'
          ? held
          : preset === 'more needed' || preset === 'more available'
            ? 20
            : 100;
  const [value, setValue] = useState(Math.round(Math.max(0, guided ?? usualValue ?? 0)));
  useEffect(() => {
    if (guided !== undefined) setValue(guided);
  }, [guided]);
  const [before, after] = found.text.split(/\{(?:psi|gpm)\} (?:psi|gpm)\.?/);
  return (
    <div className="numbered-message">
      <span>{before}</span>
      <QuantityField
        label={`Number in: ${presetWords(found)}`}
        value={value}
        kind={isFlow ? 'flow' : 'pressure'}
        onChange={setValue}
        {...(isFlow ? GPM : PSI)}
      />
      <span>{after}</span>
      <Button
        className="plain-button main-button"
        onPress={() => {
          act({ do: 'radio', message: { preset, [isFlow ? 'gpm' : 'psi']: value } });
          onDone();
        }}
      >
        Say it
      </Button>
      <Button className="quiet-button" onPress={onDone}>
        Leave it
      </Button>
    </div>
  );
}

function FreeMessage() {
  const { act } = useStage();
  const [text, setText] = useState('');
  const id = useId();
  const say = (event: FormEvent) => {
    event.preventDefault();
    const trimmed = text.trim();
    if (trimmed === '') return;
    act({ do: 'radio', message: { text: trimmed } });
    setText('');
  };
  return (
    <form className="free-message" onSubmit={say}>
      <label htmlFor={id}>In your own words</label>
      <span className="free-row">
        <input
          id={id}
          type="text"
          autoComplete="off"
          maxLength={mostRadioCharacters}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
        <Button type="submit" className="plain-button">
          Say
        </Button>
      </span>
      <StageRefusal mark={radioMark('free')} />
    </form>
  );
}
