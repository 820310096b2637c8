import { cleanName } from "../../records/text/soundText.ts";
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
      top={<span class="screen-name brand">Stopfit</span>}
      actions={
        <>
          <Button onClick={onLeave}>Throw it away</Button>
          <Button look="main" onClick={onLook}>
            Look at it
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        Something was sent to Stopfit
      </h1>
      <Card heading="What arrived">
        <ul class="stack-close">
          {files.slice(0, shownNames).map((file, index) => (
            <li key={index}>
              {file.name ? <bdi>{cleanName(file.name, 80)}</bdi> : "A text"},{" "}
              <span class="soft">{sizeText(file.size)}</span>
            </li>
          ))}
          {files.length > shownNames && <li>and {files.length - shownNames} more</li>}
        </ul>
        <p>It came from another program, or from a web page. Stopfit can't tell which.</p>
      </Card>
      <Notice tone="care">
        <p>
          Look at it only if you shared it yourself just now. Nothing of it was opened or saved.
        </p>
      </Notice>
    </Screen>
  );
}
