import type { ComponentChildren, Ref } from "preact";
import { Icon, type IconName } from "./Icon.tsx";

/** "link" stands as words alone. */
export type ButtonLook = "main" | "plain" | "quiet" | "danger" | "link";

interface Looks {
  readonly look?: ButtonLook;
  readonly wide?: boolean;
  readonly icon?: IconName;
  /** Read out instead of the words inside, where those alone would not say enough. */
  readonly label?: string;
  readonly children?: ComponentChildren;
}

function classesOf(look: ButtonLook, wide: boolean): string {
  return `button button-${look}${wide ? " button-wide" : ""}`;
}

export interface ButtonProps extends Looks {
  readonly onClick: () => void;
  readonly disabled?: boolean;
  /** It can be pressed, and then says what it waits for. */
  readonly waiting?: boolean;
  readonly pressed?: boolean;
  readonly expanded?: boolean;
  readonly describedBy?: string;
  readonly buttonRef?: Ref<HTMLButtonElement>;
}

export function Button({
  look = "plain",
  wide = false,
  icon,
  label,
  children,
  onClick,
  disabled = false,
  waiting = false,
  pressed,
  expanded,
  describedBy,
  buttonRef,
}: ButtonProps) {
  return (
    <button
      ref={buttonRef ?? null}
      type="button"
      class={classesOf(look, wide)}
      onClick={onClick}
      disabled={disabled}
      aria-disabled={waiting || undefined}
      aria-label={label}
      aria-pressed={pressed}
      aria-expanded={expanded}
      aria-describedby={describedBy}
    >
      {icon && <Icon name={icon} />}
      {children}
    </button>
  );
}

export interface ButtonLinkProps extends Looks {
  readonly href: string;
  readonly download?: string;
}

export function ButtonLink({
  look = "plain",
  wide = false,
  icon,
  label,
  children,
  href,
  download,
}: ButtonLinkProps) {
  return (
    <a class={classesOf(look, wide)} href={href} download={download} aria-label={label}>
      {icon && <Icon name={icon} />}
      {children}
    </a>
  );
}
