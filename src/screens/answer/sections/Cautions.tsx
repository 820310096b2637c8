import { cautionsOf } from "../../guide/cautions.ts";
import { Disclosure } from "../../parts/Disclosure.tsx";

/** Open whenever something has to be done under the vehicle, or it is raised. Never left out. */
export function Cautions({ raised, work }: { raised: boolean; work: boolean }) {
  const list = (
    <ul class="cautions">
      {cautionsOf(raised ? "raised" : "level").map(({ id, words }) => (
        <li key={id}>{words}</li>
      ))}
    </ul>
  );
  return work || raised ? (
    <section class="card card-cautions" aria-labelledby="cautions-heading">
      <h2 id="cautions-heading">Before you go under the vehicle</h2>
      {list}
    </section>
  ) : (
    <Disclosure summary="Before you go under the vehicle">{list}</Disclosure>
  );
}
