import { useMemo, useState } from "preact/hooks";
import { packFile } from "../../sharing/checkFile.ts";
import { packLibrary } from "../../sharing/shareLink.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
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
  { value: "file", name: messages.file },
  { value: "link", name: messages.link },
  { value: "code", name: messages.code },
] as const;

/** The parts library on its way to another device: as a file, a link or codes. */
export default function SendPackScreen() {
  const inUse = usePackInUse();
  return inUse ? <SendPack pack={inUse.pack} /> : <OneMoment />;
}

function SendPack({ pack }: Pick<PackInUse, "pack">) {
  const heading = useHeadingFocus("pack");
  const [way, setWay] = useState<(typeof ways)[number]["value"]>("file");
  const file = useMemo(() => packFile(pack, new Date().toISOString().slice(0, 10)), [pack]);
  const packed = useMemo(() => packLibrary(pack), [pack]);
  const title = messages.partsLibrary({ name: pack.name });
  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={packHref} icon="back" label={messages.toPartsLibrary} />
          <span class="screen-name">{pack.name || messages.partsLibrary2}</span>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.handOverLibrary}
      </h1>
      <p>
        {messages.stopsVehiclesHasEditionSelect({
          stops: pack.stops.length,
          platforms: pack.platforms.length,
          hasEdition: Boolean(pack.edition),
          edition: pack.edition,
        })}
      </p>
      <Segmented
        legend={messages.handOverAs}
        legendUnseen
        options={ways}
        value={way}
        onChange={setWay}
      />
      {way === "file" && <FileWay text={file} title={title} words={messages.wholeLibraryWithIts} />}
      {way === "link" && (
        <LinkWay
          packed={packed}
          label={messages.linkToThisPack}
          title={title}
          words={messages.libraryIsInLink}
        />
      )}
      {way === "code" && <CodeWay packed={packed} />}
    </Screen>
  );
}
