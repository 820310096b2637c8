/**
 * How far an arm has turned from where it stands at ride, outer end up positive, as cosine and sine:
 * every formula of the kinematics takes a turn in this form, so that inner loops need no inverse
 * trigonometric function. One is filled again and again; nothing is allocated.
 */
export class Turn {
  cos = 1;
  sin = 0;

  /** Turns on by a small angle, rad: 2·atan(angle/2), which is the angle to its third power. */
  by(angle: number): void {
    const half = angle / 2;
    const scale = 1 / (1 + half * half);
    const cosine = (1 - half * half) * scale;
    const sine = 2 * half * scale;
    const { cos, sin } = this;
    this.cos = cos * cosine - sin * sine;
    this.sin = sin * cosine + cos * sine;
  }

  /** @param angle rad */
  to(angle: number): void {
    this.cos = Math.cos(angle);
    this.sin = Math.sin(angle);
  }
}
