import { useEffect } from "preact/hooks";
import text from "../../physics/MODEL.md?raw";
import * as messages from "../../words/compiled/screens/howComputed.ts";
import { checksHref } from "../addresses.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { howComputedHref, howComputedName } from "./howComputedRoute.ts";
import { type ModelBlock, type ModelSection, modelSections } from "./modelSections.ts";
import "./howComputed.css";

const sections = modelSections(text);

/** What stands between asterisks is set apart. */
function Words({ of }: { of: string }) {
  return of.split(/\*([^*]+)\*/).map((part, index) => (index % 2 === 1 ? <em>{part}</em> : part));
}

function Block({ block }: { block: ModelBlock }) {
  switch (block.kind) {
    case "text":
      return (
        <p>
          <Words of={block.text} />
        </p>
      );
    case "formula":
      return <pre>{block.lines.join("\n")}</pre>;
    case "list":
      return (
        <ul>
          {block.items.map((item) => (
            <li key={item}>
              <Words of={item} />
            </li>
          ))}
        </ul>
      );
    case "table": {
      const [head = [], ...rows] = block.rows;
      return (
        <table>
          <thead>
            <tr>
              {head.map((cell) => (
                <th key={cell} scope="col">
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row[0]}>
                {row.map((cell) => (
                  <td key={cell}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      );
    }
  }
}

function Heading({ section: { id, title, level } }: { section: ModelSection }) {
  const Level = level === 2 ? "h2" : "h3";
  return (
    <Level id={id} tabIndex={-1}>
      {title}
    </Level>
  );
}

/** The computation in words and formulas, at one of its headings where one is asked for. */
export function HowComputedPlace({ passage }: { passage: string | null }) {
  const heading = useHeadingFocus(howComputedName);
  const [first, ...rest] = sections;
  useEffect(() => {
    const found = passage === null ? null : document.getElementById(passage);
    found?.scrollIntoView();
    found?.focus();
  }, [passage]);
  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
          <span class="screen-name">{howComputedName}</span>
        </>
      }
    >
      <article class="how">
        <h1 ref={heading} tabIndex={-1}>
          {howComputedName}
        </h1>
        {first?.blocks.map((block, index) => (
          <Block key={index} block={block} />
        ))}
        <nav aria-label={messages.passages}>
          <ul>
            {rest
              .filter(({ level }) => level === 2)
              .map(({ id, title }) => (
                <li key={id}>
                  <a href={`${howComputedHref}/${id}`}>{title}</a>
                </li>
              ))}
          </ul>
        </nav>
        {rest.map((section) => (
          <section key={section.id} aria-labelledby={section.id}>
            <Heading section={section} />
            {section.blocks.map((block, index) => (
              <Block key={index} block={block} />
            ))}
          </section>
        ))}
      </article>
    </Screen>
  );
}
