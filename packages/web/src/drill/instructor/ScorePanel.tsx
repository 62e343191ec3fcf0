import {
  type CriterionKey,
  criteria,
  criterionWords,
  type DrillScene,
  type PlayedRole,
  type RadioPresetKey,
  radioPresets,
  rolesIn,
} from '@plugside/drill';
import { type FormEvent, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../../editing/Choice.tsx';
import type { RoomLink } from '../together/room-link.ts';
import { roleOptions } from './role-options.ts';
import { WordsField } from './WordsField.tsx';

interface ScorePanelProps {
  link: RoomLink;
  scene: DrillScene;
}

/** What the instructor adds to what is counted: all of it goes into the log, the replay and the report. */
export function ScorePanel({ link, scene }: ScorePanelProps) {
  const id = useId();
  return (
    <section className="panel" aria-labelledby={`${id}-name`}>
      <h2 id={`${id}-name`} className="section-name">
        Score
      </h2>
      <Mark link={link} scene={scene} />
      <Heard link={link} scene={scene} />
      <Overrule link={link} />
    </section>
  );
}

type About = 'all' | PlayedRole;

/** Something seen, at this moment of the drill. */
function Mark({ link, scene }: ScorePanelProps) {
  const [text, setText] = useState('');
  const [about, setAbout] = useState<About>('all');
  const mark = (verdict: 'good' | 'fault') => {
    const words = text.trim();
    if (words === '') return;
    link.act({ do: 'mark', verdict, text: words, ...(about !== 'all' && { about }) });
    setText('');
  };
  return (
    <div className="score-part">
      <span className="say-to">
        Seen of{' '}
        <Choice<About>
          label="Of whom"
          value={about}
          options={[{ value: 'all', text: 'everyone' }, ...roleOptions(scene)]}
          onChange={setAbout}
        />
      </span>
      <WordsField
        label="What was seen"
        placeholder="What was seen"
        value={text}
        onChange={setText}
      />
      <div className="panel-row">
        <Button className="plain-button" onPress={() => mark('good')}>
          Well done
        </Button>
        <Button className="plain-button" onPress={() => mark('fault')}>
          A fault
        </Button>
      </div>
    </div>
  );
}

/** Crews with radios of their own: what was said there counts as given. */
function Heard({ link, scene }: ScorePanelProps) {
  const roles = rolesIn(scene);
  const [from, setFrom] = useState<PlayedRole>(roles[0] ?? 'hydrant operator');
  const said = radioPresets.filter(
    (preset) => !('by' in preset) || (preset.by as readonly PlayedRole[]).includes(from),
  );
  const [picked, setPicked] = useState<RadioPresetKey>('ready');
  const preset = said.some(({ key }) => key === picked) ? picked : said[0]!.key;
  return (
    <div className="score-part">
      <span className="say-to">
        Heard on air from{' '}
        <Choice<PlayedRole>
          label="By whom"
          value={from}
          options={roleOptions(scene)}
          onChange={setFrom}
        />
      </span>
      <Choice<RadioPresetKey>
        label="Message"
        value={preset}
        options={said.map(({ key, text }) => ({
          value: key,
          text: text.replaceAll(/\{\w+\}/g, '…'),
        }))}
        onChange={setPicked}
      />
      <div className="panel-row">
        <Button className="plain-button" onPress={() => link.act({ do: 'heard', from, preset })}>
          Heard
        </Button>
      </div>
    </div>
  );
}

/** What is counted is not always fair: a criterion as the instructor sees it, with the reason. */
function Overrule({ link }: { link: RoomLink }) {
  const [criterion, setCriterion] = useState<CriterionKey>('water interrupted');
  const [reason, setReason] = useState('');
  const [told, setTold] = useState<string | null>(null);
  const overrule = (met: boolean) => {
    const words = reason.trim();
    if (words === '') {
      setTold('Give the reason: it stands beside the score.');
      return;
    }
    setTold(null);
    link.act({ do: 'overrule', criterion, met, reason: words });
    setReason('');
  };
  const keepForm = (event: FormEvent) => event.preventDefault();
  return (
    <form className="score-part" onSubmit={keepForm}>
      <span className="say-to">
        Decide{' '}
        <Choice<CriterionKey>
          label="Criterion"
          value={criterion}
          options={criteria
            .filter((key) => key !== 'marks')
            .map((value) => ({ value, text: criterionWords[value] }))}
          onChange={setCriterion}
        />
      </span>
      <WordsField
        label="Reason"
        placeholder="Reason"
        value={reason}
        isInvalid={told !== null}
        onChange={setReason}
      />
      <div className="panel-row">
        <Button className="plain-button" onPress={() => overrule(true)}>
          Met
        </Button>
        <Button className="plain-button" onPress={() => overrule(false)}>
          Not met
        </Button>
      </div>
      <p role="alert" className="tone-warning">
        {told}
      </p>
    </form>
  );
}
