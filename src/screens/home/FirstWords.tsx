/** What stands in the list while there is none. */
export function FirstWords() {
  return (
    <div class="card">
      <h2>Does this bump stop fit this vehicle?</h2>
      <p>
        You measure one axle with a tape, the vehicle on its wheels. Stopfit leads you from reading
        to reading and tells you whether the stop meets its pad at the right point of the travel, is
        fully compressed before hard contact, and has the right stiffness. It works without a
        signal.
      </p>
      <p>
        Start with “New check”, or look at the demo checks to see what comes out. Allow half an hour
        for a whole axle.
      </p>
    </div>
  );
}
