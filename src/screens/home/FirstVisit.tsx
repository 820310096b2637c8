import * as messages from "../../words/compiled/screens/home.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { quickCheckHref } from "../quickCheck/quickCheckRoutes.ts";

/** What stands in the list while there is none: what Stopfit is for, and the ways in. */
export function FirstVisit({
  onNew,
  onExample,
  ready,
}: {
  onNew: () => void;
  onExample: () => void;
  ready: boolean;
}) {
  return (
    <div class="first-visit">
      <p>{messages.measureWithTapeVehicle}</p>
      <div class="first-ways">
        <Button look="main" wide onClick={onNew} disabled={!ready}>
          <span>
            {messages.fullCheck} <small>{messages.oneAxleAbout30}</small>
          </span>
        </Button>
        <ButtonLink wide href={quickCheckHref}>
          <span>
            {messages.doINeedTaller} <small>{messages.quickFiveReadings}</small>
          </span>
        </ButtonLink>
        <Button look="quiet" wide onClick={onExample} disabled={!ready}>
          {messages.seeExample}
        </Button>
      </div>
    </div>
  );
}
