import { useMemo, useState } from "preact/hooks";
import { packFile } from "../../sharing/checkFile.ts";
import { packLibrary } from "../../sharing/shareLink.ts";
import { packHref } from "../addresses.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { type PackInUse, usePackInUse } from "../referencePack.ts";
import { CodeWay } from "./CodeWay.tsx";
import { FileWay } from "./FileWay.tsx";
import { LinkWay } from "./LinkWay.tsx";
import "./exchange.css";

const ways = [
  { value: "file", name: "File" },
  { value: "link", name: "Link" },
  { value: "code", name: "Code" },
] as const;

/** The parts library on its way to another device: as a file, a link or codes. */
export default function SendPackScreen() {
  const inUse = usePackInUse();
  return inUse ? <SendPack pack={inUse.pack} /> : <OneMoment />;
}

function SendPack({ pack }: Pick<PackInUse, "pack">) {
  const heading = useHeadingFocus("send pack");
  const [way, setWay] = useState<(typeof ways)[number]["value"]>("file");
  const file = useMemo(() => packFile(pack, new Date().toISOString().slice(0, 10)), [pack]);
  const packed = useMemo(() => packLibrary(pack), [pack]);
  const title = `Parts library: ${pack.name}`;
  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={packHref} icon="back" label="To the parts library" />
          <span class="screen-name">{pack.name || "Parts library"}</span>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        Hand over the library
      </h1>
      <p>
        {pack.stops.length} stops, {pack.platforms.length} vehicles
        {pack.edition && `, edition ${pack.edition}`}. The other device asks before it uses it.
      </p>
      <Segmented legend="Hand over as" legendUnseen options={ways} value={way} onChange={setWay} />
      {way === "file" && (
        <FileWay
          text={file}
          title={title}
          words="The whole library with its tests. On another device: “Parts library”, then “Open a library”. The build takes it too."
        />
      )}
      {way === "link" && (
        <LinkWay
          packed={packed}
          label="Link to this pack"
          title={title}
          words="The library is in the link itself; no server holds it. Whoever has the link has the library."
        />
      )}
      {way === "code" && <CodeWay packed={packed} />}
    </Screen>
  );
}
