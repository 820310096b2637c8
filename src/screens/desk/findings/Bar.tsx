/** A share as a bar beside its number; the table beside it says the same. */
export function Bar({ share, words }: { share: number; words: string }) {
  return (
    <span class="finding-bar">
      <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
        <rect class="finding-bar-all" width="100" height="10" />
        <rect class="finding-bar-part" width={100 * Math.min(1, Math.max(0, share))} height="10" />
      </svg>
      <span>{words}</span>
    </span>
  );
}
