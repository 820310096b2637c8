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
      <p>
        Measure with a tape, the vehicle on its wheels. Stopfit tells you what fits, and what to
        change.
      </p>
      <div class="first-ways">
        <Button look="main" wide onClick={onNew} disabled={!ready}>
          <span>
            Full check <small>one axle, about 30 minutes</small>
          </span>
        </Button>
        <ButtonLink wide href={quickCheckHref}>
          <span>
            Do I need a taller stop? <small>quick, five readings</small>
          </span>
        </ButtonLink>
        <Button look="quiet" wide onClick={onExample} disabled={!ready}>
          See an example
        </Button>
      </div>
    </div>
  );
}
