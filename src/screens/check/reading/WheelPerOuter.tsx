import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import type { Change } from "../../guide/stepProps.ts";
import { Disclosure } from "../../parts/Disclosure.tsx";
import type { Preferences } from "../../preferences.ts";
import { NumberEntry } from "../NumberEntry.tsx";

/** For arms whose wheel moves more or less than their outer joint. */
export function WheelPerOuter(props: {
  stored: StoredCheck;
  change: Change;
  preferences: Preferences;
}) {
  return (
    <Disclosure summary="Does the wheel move more than the joint?">
      <p class="small">
        With most arms the wheel goes up as far as the outer joint does: leave this empty. Where a
        linkage or a long hub makes it move more, type how many mm the wheel moves for each mm of
        the joint.
      </p>
      <NumberEntry
        {...props}
        id="layout.wheelPerOuter"
        label="Wheel travel per joint travel"
        unitWords="mm per mm"
      />
    </Disclosure>
  );
}
