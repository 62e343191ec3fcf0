import type { RefusedWay } from '@plugside/fireground';

/** What was looked at and cannot be done, each with its reason: nothing is hidden. */
export function Refused({ refused }: { refused: readonly RefusedWay[] }) {
  if (refused.length === 0) return null;
  return (
    <details className="more-facts refused-ways">
      <summary>
        {refused.length === 1
          ? 'One way was looked at and cannot be done'
          : `${refused.length} ways were looked at and cannot be done`}
      </summary>
      <ul>
        {refused.map(({ title, reason }) => (
          <li key={`${title}:${reason}`}>
            <b>{title}.</b> {reason}
          </li>
        ))}
      </ul>
    </details>
  );
}
