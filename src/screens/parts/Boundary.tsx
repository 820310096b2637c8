import { Component, type ComponentChildren } from "preact";
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
        top={<span class="screen-name brand">Stopfit</span>}
        actions={
          <ButtonLink look="main" href="#/">
            All checks
          </ButtonLink>
        }
      >
        <h1>This screen can't be shown</h1>
        <Notice tone="no" live>
          <p>
            Something in Stopfit went wrong here. What you typed before is saved on this phone. Go
            to all checks and open the check again.
          </p>
        </Notice>
      </Screen>
    );
  }
}
