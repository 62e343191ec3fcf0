export function Wordmark() {
  return (
    <p className="wordmark">
      <svg viewBox="0 0 32 24" width="30" height="22" aria-hidden="true">
        <path d="M2 20V5h7l6 11h4L30 4" />
      </svg>
      Plugside
    </p>
  );
}
