import { useMemo, useState } from "preact/hooks";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import {
  type MergeChoice,
  mergePacks,
  type PackDifference,
  packDifferences,
  usualChoice,
} from "../../records/pack/packMerge.ts";
import { packHref } from "../addresses.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { changePack } from "./packEdits.ts";
import { goAfter } from "./useItemDraft.ts";

const listWords: { readonly [List in PackDifference["list"]]: string } = {
  stop: "Stop",
  platform: "Vehicle",
  rules: "Requirements",
  pack: "Library",
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
    const result = await changePack(merged.value, `Merged with ${theirsName}`);
    setFaults(goAfter(result, packHref).map(({ sentence }) => sentenceText(sentence, unit)));
  };
  const clashes = differences.filter(({ kind }) => kind === "differs").length;
  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={packHref} icon="back" label="To the parts library" />
          <span class="screen-name">Merge two libraries</span>
        </>
      }
      actions={
        <>
          <ButtonLink href={packHref}>Leave both</ButtonLink>
          <Button look="main" icon="tick" onClick={merge}>
            Merge
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        Merge two libraries
      </h1>
      <dl class="pack-two">
        <div>
          <dt>Here</dt>
          <dd>{mine.name}</dd>
        </div>
        <div>
          <dt>Other</dt>
          <dd>{theirsName}</dd>
        </div>
      </dl>
      <p>
        {differences.length === 0
          ? "The two hold the same. There is nothing to merge."
          : `${differences.length} difference${differences.length === 1 ? "" : "s"}, ${clashes} of them in what both have. What only one has is taken over unless you leave it out.`}
      </p>
      {clashes > 1 && (
        <div class="row">
          <Button onClick={() => chooseAll("mine")}>Always the one here</Button>
          <Button onClick={() => chooseAll("theirs")}>Always the other</Button>
        </div>
      )}
      <ul class="check-list">
        {differences.map((difference) => (
          <li key={difference.key} class="card">
            <h2 class="pack-difference">
              <small>{listWords[difference.list]}</small> {difference.label}
            </h2>
            {difference.fields.length > 0 && (
              <table class="pack-differs">
                <caption class="unseen">{difference.label}: what differs</caption>
                <thead>
                  <tr>
                    <th scope="col">Field</th>
                    <th scope="col">Here</th>
                    <th scope="col">Other</th>
                  </tr>
                </thead>
                <tbody>
                  {difference.fields.map(({ path, name, mine: own, theirs: other }) => (
                    <tr key={path}>
                      <th scope="row">{name}</th>
                      <td>{own ?? "not given"}</td>
                      <td>{other ?? "not given"}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
            <Segmented
              legend={
                difference.kind === "onlyMine"
                  ? "Only here"
                  : difference.kind === "onlyTheirs"
                    ? "Only in the other"
                    : "Both have it, not the same"
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

function optionsOf({
  kind,
  list,
}: PackDifference): readonly { value: MergeChoice; name: string }[] {
  if (kind === "onlyMine") {
    return [
      { value: "mine", name: "Keep" },
      { value: "neither", name: "Leave out" },
    ];
  }
  if (kind === "onlyTheirs") {
    return [
      { value: "theirs", name: "Take it" },
      { value: "neither", name: "Leave out" },
    ];
  }
  return [
    { value: "mine", name: "Here" },
    { value: "theirs", name: "Other" },
    ...(list === "stop" || list === "platform" ? [{ value: "both" as const, name: "Both" }] : []),
  ];
}
