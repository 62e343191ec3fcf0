/** Behind the name of a field that must be filled in; its entry says so to a screen reader. */
export function Needed() {
  return (
    <span className="soft-text" aria-hidden="true">
      {' '}
      (needed)
    </span>
  );
}
