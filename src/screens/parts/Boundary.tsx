import { Component, type ComponentChildren } from "preact";
import * as messages from "../../words/compiled/screens/parts.ts";
import { ButtonLink } from "./Button.tsx";
import { Notice } from "./Notice.tsx";
import { Screen } from "./Screen.tsx";

interface Props {
  /** A new place to be: what went wrong at the last one is over. */
  readonly place: string;
  readonly children: ComponentChildren;
}

/** What stands in place of a screen that could not be shown. */
export class Boundary extends Component<Props, { broken: boolean }> {
  override state = { broken: false };

  static override getDerivedStateFromError() {
    return { broken: true };
  }

  override componentDidUpdate(before: Props) {
    if (before.place !== this.props.place && this.state.broken) {
      this.setState({ broken: false });
    }
  }

  override render({ children }: Props) {
    if (!this.state.broken) return children;
    return (
      <Screen
        top={<span class="screen-name brand">{messages.stopfit}</span>}
        actions={
          <ButtonLink look="main" href="#/">
            {messages.allChecks}
          </ButtonLink>
        }
      >
        <h1>{messages.thisScreenCantBe}</h1>
        <Notice tone="no" live>
          <p>{messages.somethingInStopfitWent}</p>
        </Notice>
      </Screen>
    );
  }
}
