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
    <Disclosure summary="Wheel moves more than the outer joint?">
      <p class="small">
        Only if the vehicle's data give it: how many mm the wheel moves per mm of the joint. Empty:
        what is usual for such arms, with its margin of error. Better: measure the other arm.
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
