import type { DrillScene, PlayedRole } from '@plugside/drill';
import { type FormEvent, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../../editing/Choice.tsx';
import type { RoomLink } from '../together/room-link.ts';
import { roleWords } from '../words.ts';
import { roleOptions } from './role-options.ts';
import { WordsField } from './WordsField.tsx';

type To = 'all' | PlayedRole;

/** Orders that make a drill harder, at a touch. */
const orders: readonly { text: string; to?: PlayedRole }[] = [
  { text: 'Command wants another line: charge it.', to: 'attack operator' },
  { text: 'Command wants all lines shut down now.' },
  { text: 'Stop where you are: safety.' },
];

/** The instructor's voice, to all or to one. */
export function SayPanel({ link, scene }: { link: RoomLink; scene: DrillScene }) {
  const [text, setText] = useState('');
  const [to, setTo] = useState<To>('all');
  const id = useId();
  const say = (words: string, whom: To) =>
    link.act({ do: 'say', text: words, ...(whom !== 'all' && { to: whom }) });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const words = text.trim();
    if (words === '') return;
    say(words, to);
    setText('');
  };
  return (
    <section className="panel" aria-labelledby={`${id}-name`}>
      <h2 id={`${id}-name`} className="section-name">
        Say something
      </h2>
      <form className="say-form" onSubmit={submit}>
        <span className="say-to">
          To{' '}
          <Choice<To>
            label="To whom"
            value={to}
            options={[{ value: 'all', text: 'everyone' }, ...roleOptions(scene)]}
            onChange={setTo}
          />
        </span>
        <WordsField label="What to say" value={text} onChange={setText} />
        <Button type="submit" className="plain-button main-button">
          Say
        </Button>
      </form>
      <div className="panel-row">
        {orders.map((order) => (
          <Button
            key={order.text}
            className="plain-button order-button"
            onPress={() => say(order.text, order.to ?? 'all')}
          >
            {order.to !== undefined && (
              <span className="soft-text">To {roleWords[order.to].toLowerCase()}: </span>
            )}
            {order.text}
          </Button>
        ))}
      </div>
    </section>
  );
}
