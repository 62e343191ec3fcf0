import { Button } from 'react-aria-components';
import { PlaceLink } from './PlaceLink.tsx';

/** Instead of a place that lives on the records, where none answer. */
export function Unreachable({ what, onRetry }: { what: string; onRetry(): void }) {
  return (
    <div className="unreachable" role="status">
      <p>
        <b>No records answer here.</b> {what} needs Plugside&rsquo;s server, which keeps the
        department&rsquo;s hydrants, streets and buildings. Start it with <code>npm start</code>, or
        look at the network.
      </p>
      <p>
        The <PlaceLink href="/">Lay</PlaceLink> works without it.
      </p>
      <p>
        <Button className="plain-button" onPress={onRetry}>
          Try again
        </Button>
      </p>
    </div>
  );
}
