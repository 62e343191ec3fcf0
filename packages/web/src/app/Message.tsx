import { Button } from 'react-aria-components';
import { usePlan } from '../plan-store/plan-store.ts';

/** The outcome of a file, link or edit, told in place until dismissed. */
export function Message() {
  const message = usePlan((state) => state.message);
  const tell = usePlan((state) => state.tell);
  if (!message) return null;
  return (
    <div
      className={`message message-${message.kind}`}
      role={message.kind === 'problem' ? 'alert' : 'status'}
    >
      {message.kind === 'problem' && <span className="caution-shape" aria-hidden="true" />}
      <div className="message-text">
        <p>{message.text}</p>
        {message.details && (
          <ul>
            {message.details.map((one) => (
              <li key={`${one.where}:${one.text}`}>
                {one.where && <b>{one.where}: </b>}
                {one.text}
              </li>
            ))}
          </ul>
        )}
      </div>
      <Button className="quiet-button" onPress={() => tell(null)}>
        Dismiss
      </Button>
    </div>
  );
}
