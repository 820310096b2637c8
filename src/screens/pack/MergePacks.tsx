import { useMemo, useState } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import type { FieldDifference } from "../../records/pack/packDifferences.ts";
import {
  type MergeChoice,
  mergePacks,
  type PackDifference,
  packDifferences,
  usualChoice,
} from "../../records/pack/packMerge.ts";
import { differenceTexts } from "../../saying/packValueText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { packHref } from "../addresses.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { changePack } from "./packEdits.ts";
import { goAfter } from "./useItemDraft.ts";

const listWords: { readonly [List in PackDifference["list"]]: string } = {
  stop: messages.stopWord,
  platform: messages.vehicle,
  rules: messages.requirements,
  pack: messages.library,
};

/** Two packs, what differs between them, and for each difference which one holds. */
export function MergePacks({
  mine,
  theirs,
  theirsName,
  unit,
}: {
  mine: Pack;
  theirs: Pack;
  theirsName: string;
  unit: LengthUnit;
}) {
  const heading = useHeadingFocus("merge");
  const differences = useMemo(() => packDifferences(mine, theirs), [mine, theirs]);
  const [choices, setChoices] = useState<{ readonly [key: string]: MergeChoice }>({});
  const [faults, setFaults] = useState<readonly string[]>([]);
  const chosen = (difference: PackDifference) => choices[difference.key] ?? usualChoice(difference);
  const chooseAll = (choice: "mine" | "theirs") =>
    setChoices(
      Object.fromEntries(
        differences
          .filter(({ kind }) => kind === "differs")
          .map(({ key }) => [key, choice] as const),
      ),
    );
  const merge = async () => {
    const merged = mergePacks(
      mine,
      theirs,
      Object.fromEntries(differences.map((each) => [each.key, chosen(each)])),
    );
    if (!merged.ok) {
      setFaults([sentenceText(merged.fault.sentence, unit)]);
      return;
    }
    const result = await changePack(merged.value, messages.mergedWith({ theirsName }));
    setFaults(goAfter(result, packHref).map(({ sentence }) => sentenceText(sentence, unit)));
  };
  const clashes = differences.filter(({ kind }) => kind === "differs").length;
  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={packHref} icon="back" label={messages.toPartsLibrary} />
          <span class="screen-name">{messages.mergeTwoLibraries}</span>
        </>
      }
      actions={
        <>
          <ButtonLink href={packHref}>{messages.leaveBoth}</ButtonLink>
          <Button look="main" icon="tick" onClick={merge}>
            {messages.merge}
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.mergeTwoLibraries}
      </h1>
      <dl class="pack-two">
        <div>
          <dt>{messages.here}</dt>
          <dd>{mine.name}</dd>
        </div>
        <div>
          <dt>{messages.other}</dt>
          <dd>{theirsName}</dd>
        </div>
      </dl>
      <p>
        {differences.length === 0
          ? messages.twoHoldSameThere
          : messages.differenceOfThemIn({
              differences: differences.length,
              differences2: differences.length === 1 ? "" : "s",
              clashes,
            })}
      </p>
      {clashes > 1 && (
        <div class="row">
          <Button onClick={() => chooseAll("mine")}>{messages.alwaysOneHere}</Button>
          <Button onClick={() => chooseAll("theirs")}>{messages.alwaysOther}</Button>
        </div>
      )}
      <ul class="check-list">
        {differences.map((difference) => (
          <li key={difference.key} class="card">
            <h2 class="pack-difference">
              <small>{listWords[difference.list]}</small> {said(difference.label)}
            </h2>
            {difference.fields.length > 0 && (
              <table class="pack-differs">
                <caption class="unseen">
                  {messages.whatDiffers({ label: said(difference.label) })}
                </caption>
                <thead>
                  <tr>
                    <th scope="col">{messages.field}</th>
                    <th scope="col">{messages.here}</th>
                    <th scope="col">{messages.other}</th>
                  </tr>
                </thead>
                <tbody>
                  {difference.fields.map((field) => (
                    <DifferenceRow key={field.path} field={field} />
                  ))}
                </tbody>
              </table>
            )}
            <Segmented
              legend={
                difference.kind === "onlyMine"
                  ? messages.onlyHere
                  : difference.kind === "onlyTheirs"
                    ? messages.onlyInOther
                    : messages.bothHaveItNot
              }
              value={chosen(difference)}
              onChange={(choice) =>
                setChoices((before) => ({ ...before, [difference.key]: choice }))
              }
              options={optionsOf(difference)}
            />
          </li>
        ))}
      </ul>
      {faults.length > 0 && (
        <Notice tone="no" live>
          {faults.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Notice>
      )}
    </Screen>
  );
}

function DifferenceRow({ field }: { field: FieldDifference }) {
  const { mine, theirs } = differenceTexts(field);
  return (
    <tr>
      <th scope="row">{said(field.name)}</th>
      <td>{mine ?? messages.notGiven}</td>
      <td>{theirs ?? messages.notGiven}</td>
    </tr>
  );
}

function optionsOf({
  kind,
  list,
}: PackDifference): readonly { value: MergeChoice; name: string }[] {
  if (kind === "onlyMine") {
    return [
      { value: "mine", name: messages.keep },
      { value: "neither", name: messages.leaveOut },
    ];
  }
  if (kind === "onlyTheirs") {
    return [
      { value: "theirs", name: messages.takeIt },
      { value: "neither", name: messages.leaveOut },
    ];
  }
  return [
    { value: "mine", name: messages.here },
    { value: "theirs", name: messages.other },
    ...(list === "stop" || list === "platform"
      ? [{ value: "both" as const, name: messages.both }]
      : []),
  ];
}
