import { type ReadingId, withoutSide } from "../../../physics/readings/index.ts";
import { type Entry, entryText, parseText, readTolerance } from "../../../records/entry/entry.ts";
import { catalogueEntry } from "../../../records/entry/readingCatalogue.ts";
import { entryToolShares, toolGroupOf, usualReach } from "../../../records/entry/readingTools.ts";
import {
  isReach,
  isToolId,
  type Reach,
  reaches,
  type ToolId,
} from "../../../records/entry/tools.ts";
import { toolsOf } from "../../../records/entry/toolTolerance.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import { Button } from "../../parts/Button.tsx";
import { Choices, type Option } from "../../parts/Choices.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { changePreferences, preferences } from "../../preferences.ts";
import { referencePack } from "../../referencePack.ts";
import { NumberField } from "../keypad/NumberField.tsx";
import { limitSource, reachWords, shareText, toleranceText, toolWords } from "./toolWords.ts";

/** What a reading is taken with, and the ± that comes from it; or a ± typed. */
export function ToolField({
  id,
  entry,
  values,
  onChange,
}: {
  id: ReadingId;
  entry: Entry;
  /** The repeats that can be read, model's unit. */
  values: readonly number[];
  onChange: (part: Partial<Entry>) => void;
}) {
  const { kind } = catalogueEntry(id);
  const group = toolGroupOf(id);
  const tool = isToolId(entry.tool) ? entry.tool : null;
  const reach = isReach(entry.reach) ? entry.reach : usualReach(id);
  const typed = entry.tol.trim() !== "";
  const unreadable = typed && !parseText(entry.tol, kind, entry.unit, "zeroOrMore").ok;
  const width = readTolerance(id, entry, values);
  const shares = entryToolShares(id, entry, values);
  const shown = unreadable
    ? `± ${entry.tol} ?`
    : toleranceText(entry.tol, width.ok ? width.value : 0, kind, entry.unit);
  const measured = (referencePack().repeatability ?? []).find(
    (each) => each.reading === withoutSide(id) && each.tool === tool,
  );
  const isMeasured = measured !== undefined && typed && width.ok && width.value === measured.tol;
  const ofWhat = isMeasured
    ? messages.measuredByPairs
    : tool
      ? said(toolWords[tool].name)
      : messages.toolNotNamed;

  const chooseTool = (chosen: ToolId) => {
    if (group) changePreferences({ tools: { ...preferences().tools, [group]: chosen } });
    onChange({ tool: chosen, reach, tol: "" });
  };
  const toolOptions: readonly Option<ToolId>[] = toolsOf(group ?? "length").map((each) => ({
    value: each,
    name: said(toolWords[each].name),
    ...(said(toolWords[each].hint) && { hint: said(toolWords[each].hint) }),
  }));
  const reachOptions: readonly Option<Reach>[] = reaches.flatMap((each) => {
    const name = group ? reachWords[group][each] : undefined;
    return name ? [{ value: each, name }] : [];
  });

  return (
    <Disclosure
      summary={
        typed && !isMeasured
          ? messages.measuredWithOwn({ shown })
          : messages.measuredWith({ ofWhat, shown })
      }
    >
      {group && (
        <>
          <Choices
            legend={messages.whatDoYouMeasure}
            value={tool}
            onChange={chooseTool}
            options={toolOptions}
          />
          {reachOptions.length > 0 && (
            <Choices
              legend={messages.howWellCanYou}
              value={reach}
              onChange={(chosen) => onChange({ reach: chosen, tol: "" })}
              options={reachOptions}
            />
          )}
        </>
      )}
      {measured && (
        <Notice tone="info">
          <p>
            {messages.twoPeopleWhoTook({
              pairs: measured.pairs,
              share: shareText(measured.tol, kind, entry.unit),
            })}
          </p>
          {!isMeasured && (
            <div class="row">
              <Button onClick={() => onChange({ tol: entryText(measured.tol, kind, entry.unit) })}>
                {messages.useMeasured}
              </Button>
            </div>
          )}
        </Notice>
      )}
      {shares && !shares.ok && (
        <Notice tone="care" live>
          <p>{sentenceText(shares.fault.sentence, entry.unit === "in" ? "in" : "mm")}</p>
        </Notice>
      )}
      {tool && shares?.ok && !typed && (
        <p class="small soft">
          {messages.ofToolReadingIts({
            share: shareText(shares.value.halfWidth, kind, entry.unit),
            share2: shareText(shares.value.limit, kind, entry.unit),
            share3: shareText(shares.value.reading, kind, entry.unit),
            hasPlacing: shares.value.placing > 0,
            share4: shareText(shares.value.placing, kind, entry.unit),
            limitSource: limitSource(tool),
          })}
        </p>
      )}
      <NumberField
        label={messages.orYourOwn}
        hint={messages.howFarReadingMay}
        value={entry.tol}
        onInput={(tol) => onChange({ tol })}
        fractions={entry.unit === "in"}
        unit={/[a-z°"]/i.test(entry.tol) ? "" : kind === "angle" ? "°" : entry.unit}
        placeholder={typed ? "" : shown.replace(/^±|[a-z°]+$/g, "").trim()}
        {...(unreadable && {
          tone: "no" as const,
          message: messages.thisCantBeRead,
        })}
      />
    </Disclosure>
  );
}
