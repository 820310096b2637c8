export function OneMoment() {
  return <p class="later-waiting">One moment …</p>;
}
