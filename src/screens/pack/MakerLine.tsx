import type { Maker } from "../../records/pack/pack.ts";
import { makerLogo } from "../shippedBuild.ts";

/** Who makes the stops: logo, name and address. */
export function MakerLine({ maker }: { maker: Maker }) {
  const { name, address, contact } = maker;
  return (
    <p class="maker-line">
      {makerLogo && <img src={`./${makerLogo}`} alt="" height="40" />}
      <span>
        <strong>{name}</strong>
        {[address, contact].filter(Boolean).map((line) => (
          <span key={line} class="small soft">
            {line}
          </span>
        ))}
      </span>
    </p>
  );
}
