import { cleanName } from "../../records/text/soundText.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { Button } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";

const shownNames = 6;

function sizeText(bytes: number): string {
  return bytes < 1e6
    ? `${Math.max(1, Math.round(bytes / 1000))} kB`
    : `${Math.round(bytes / 1e6)} MB`;
}

/** Something was handed to the app without a tap in it: nothing of it is read before someone says so. */
export function ArrivedScreen({
  files,
  onLook,
  onLeave,
}: {
  files: readonly File[];
  onLook: () => void;
  onLeave: () => void;
}) {
  const heading = useHeadingFocus("arrived");
  return (
    <Screen
      top={<span class="screen-name brand">{messages.stopfit}</span>}
      actions={
        <>
          <Button onClick={onLeave}>{messages.throwItAway}</Button>
          <Button look="main" onClick={onLook}>
            {messages.lookAtIt}
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.somethingWasSentTo}
      </h1>
      <Card heading={messages.whatArrived}>
        <ul class="stack-close">
          {files.slice(0, shownNames).map((file, index) => (
            <li key={index}>
              {file.name ? <bdi>{cleanName(file.name, 80)}</bdi> : messages.text},{" "}
              <span class="soft">{sizeText(file.size)}</span>
            </li>
          ))}
          {files.length > shownNames && (
            <li>{messages.andMore({ files: files.length - shownNames })}</li>
          )}
        </ul>
        <p>{messages.itCameFromAnother}</p>
      </Card>
      <Notice tone="care">
        <p>{messages.lookAtItOnly}</p>
      </Notice>
    </Screen>
  );
}
