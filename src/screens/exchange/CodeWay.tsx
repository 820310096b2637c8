import { useEffect, useMemo, useState } from "preact/hooks";
import type { Outcome } from "../../physics/outcome.ts";
import { codesOfPacked } from "../../sharing/codeSeries.ts";
import { appAddress, type Packed } from "../../sharing/shareLink.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { useScreenAwake } from "../parts/useScreenAwake.ts";
import { CodePicture } from "./CodePicture.tsx";
import { PhotosLeftOut } from "./PhotosLeftOut.tsx";

/** Long enough for a camera to see each code several times. */
const secondsPerCode = 2;

/** What was packed as a QR code to hold before another camera, or as several numbered ones. */
export function CodeWay({ packed }: { packed: Outcome<Packed> }) {
  const series = useMemo(() => codesOfPacked(packed, appAddress(location)), [packed]);
  const [at, setAt] = useState(0);
  const [running, setRunning] = useState(false);
  const count = series.ok ? series.value.codes.length : 0;
  useScreenAwake(series.ok);

  useEffect(() => {
    if (!running || count < 2) return;
    const timer = setInterval(() => setAt((now) => (now + 1) % count), secondsPerCode * 1000);
    return () => clearInterval(timer);
  }, [running, count]);

  if (!series.ok) return <FaultNotice fault={series.fault} />;
  const code = series.value.codes[at % count];
  if (code === undefined) return null;
  const step = (by: number) => {
    setRunning(false);
    setAt((now) => (now + by + count) % count);
  };

  return (
    <>
      <PhotosLeftOut count={series.value.photosLeftOut} way="code" />
      <CodePicture code={code} of={count} />
      {count > 1 && (
        <>
          <p class="code-number" aria-live={running ? "off" : "polite"}>
            Code {code.number} of {count}
          </p>
          <div class="code-steps">
            <Button icon="back" onClick={() => step(-1)}>
              Back
            </Button>
            <Button pressed={running} onClick={() => setRunning(!running)}>
              {running ? "Stop" : "Run through"}
            </Button>
            <Button onClick={() => step(1)}>Next</Button>
          </div>
        </>
      )}
      <p>
        {count > 1
          ? `One code would be too dense to scan, so there are ${count}. On the other device open Stopfit, choose “Open a link or a code”, then “Scan a code”. Scan them all, in any order.`
          : "On the other device open Stopfit, choose “Open a link or a code”, then “Scan a code”. Any camera that reads QR codes opens it too."}
      </p>
      <p class="small soft">Screen at full brightness, the code filling most of the picture.</p>
    </>
  );
}
