import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
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
    <Disclosure summary={messages.wheelMovesMoreThan}>
      <p class="small">{messages.onlyIfVehiclesData}</p>
      <NumberEntry
        {...props}
        id="layout.wheelPerOuter"
        label={messages.wheelTravelPerJoint}
        unitWords={messages.lengthPerLength({ unit: props.preferences.length })}
      />
    </Disclosure>
  );
}
