import { Component, type ComponentChildren } from "preact";

interface Props {
  /** What stands in the row's place where it can't be shown. */
  readonly instead: ComponentChildren;
  readonly children: ComponentChildren;
}

/** Around one row of a list: a row that can't be shown does not end the list. */
export class RowBoundary extends Component<Props, { broken: boolean }> {
  override state = { broken: false };

  static override getDerivedStateFromError() {
    return { broken: true };
  }

  override render({ instead, children }: Props) {
    return this.state.broken ? instead : children;
  }
}
