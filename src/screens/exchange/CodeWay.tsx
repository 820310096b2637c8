import { useEffect, useMemo, useState } from "preact/hooks";
import type { Outcome } from "../../physics/outcome.ts";
import { codesOfPacked } from "../../sharing/codeSeries.ts";
import { appAddress, type Packed } from "../../sharing/shareLink.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
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
            {messages.codeOf({ number: code.number, count })}
          </p>
          <div class="code-steps">
            <Button icon="back" onClick={() => step(-1)}>
              {messages.back}
            </Button>
            <Button pressed={running} onClick={() => setRunning(!running)}>
              {running ? messages.stopWord : messages.runThrough}
            </Button>
            <Button onClick={() => step(1)}>{messages.next}</Button>
          </div>
        </>
      )}
      <p>{count > 1 ? messages.oneCodeWouldBe({ count }) : messages.onOtherDeviceOpen}</p>
      <p class="small soft">{messages.screenAtFullBrightness}</p>
    </>
  );
}
