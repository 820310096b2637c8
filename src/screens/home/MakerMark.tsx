import { makerLogo } from "../shippedBuild.ts";
import "./makerMark.css";

/** Whose app it is: logo and name, where a maker's pack ships with it. */
export function MakerMark({ name }: { name: string }) {
  return (
    <span class="maker-mark">
      {makerLogo && <img src={`./${makerLogo}`} alt="" />}
      <span>{name}</span>
    </span>
  );
}
