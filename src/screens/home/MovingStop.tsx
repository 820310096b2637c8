import * as messages from "../../words/compiled/screens/home.ts";
/** A wheel rises, the stop meets its pad and takes the end of the travel. Still for who wants less motion. */
export function MovingStop() {
  return (
    <svg
      class="moving-stop"
      viewBox="0 0 320 170"
      role="img"
      aria-label={messages.wheelRisesBumpStop}
    >
      <path class="frame" d="M8 20H190V46H48V124H8Z" />
      <g class="wheel">
        <rect x="240" y="34" width="54" height="130" rx="18" />
        <path d="M254 44V154M267 44V154M280 44V154" />
      </g>
      <g class="arm">
        <path class="bar" d="M30 112H238" />
        <path class="pad" d="M122 112V95H112V86H168V95H158V112Z" />
        <circle cx="30" cy="112" r="10" />
        <circle cx="236" cy="112" r="8" />
      </g>
      <path
        class="stop"
        d="M122 46H158Q164 52 156 56Q163 62 154 66Q152 70 149 70H131Q128 70 126 66Q117 62 124 56Q116 52 122 46Z"
      />
    </svg>
  );
}
