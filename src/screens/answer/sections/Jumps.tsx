import * as messages from "../../../words/compiled/screens/answer/sections.ts";
/** Straight to a part of the answer; the address stays what it is. */
export function Jumps({ places }: { places: readonly (readonly [id: string, words: string])[] }) {
  const jump = (id: string) => {
    const heading = document.getElementById(id);
    heading?.scrollIntoView({ block: "start" });
    heading?.focus({ preventScroll: true });
  };
  return (
    <nav class="jumps" aria-label={messages.partsOfAnswer}>
      {places.map(([id, words]) => (
        <button key={id} type="button" class="jump" onClick={() => jump(id)}>
          {words}
        </button>
      ))}
    </nav>
  );
}
